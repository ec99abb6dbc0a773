package org.scarfwright.matching;

import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;

/** One thing a person decided about a week, which the search leaves as it is. Pieces and orders are named by their codes. */
public sealed interface Hand {
    /** As a sentence. */
    String words();

    /** One neck of this order is made from these two pieces; from one when they are the same. */
    record Pin(String order, String neck, String head) implements Hand {
        @Override
        public String words() {
            return neck.equals(head)
                    ? "Pinned by hand: " + order + " takes neck and head from " + neck + "."
                    : "Pinned by hand: " + order + " takes its neck from " + neck + " and its head from " + head + ".";
        }
    }

    /**
     * The piece is not cut this week.
     *
     * @param order not cut for this order only; empty means for none
     */
    record Forbid(String piece, @Nullable String order) implements Hand {
        @Override
        public String words() {
            return piece + " is left alone by hand" + (order == null ? "." : " where " + order + " is concerned.");
        }
    }

    /** No neck is made from these two pieces together. */
    record ForbidPair(String neck, String head) implements Hand {
        @Override
        public String words() {
            return neck.equals(head)
                    ? "By hand, no neck takes both its parts from " + neck + "."
                    : "By hand, no neck takes its neck from " + neck + " and its head from " + head + ".";
        }
    }

    /** Only this order may cut the piece, which need not. */
    record Keep(String piece, String order) implements Hand {
        @Override
        public String words() {
            return piece + " is kept for " + order + " by hand.";
        }
    }

    /** The order is made this way; at least one of the two is given. */
    record Arrange(
            String order,
            @Nullable Arrangement arrangement,
            @Nullable Angle angle) implements Hand {
        @Override
        public String words() {
            return "By hand, " + order + " is made" + (arrangement == null ? "" : " " + arrangement.word())
                    + (angle == null ? "" : " at " + angle) + ".";
        }
    }

    /** The order is not matched. */
    record LeaveOut(String order) implements Hand {
        @Override
        public String words() {
            return order + " is left out by hand.";
        }
    }
}
