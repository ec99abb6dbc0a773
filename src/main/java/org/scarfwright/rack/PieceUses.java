package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * What the shop's designs and orders would make of a piece. The matching room provides it by the rules plans are made by,
 * because it knows the rack and not the other way round.
 */
public interface PieceUses {
    /** How many weeks {@link #coming} looks at, this week among them. */
    int WEEKS = 4;

    /**
     * Necks that are still to be made in the coming weeks, and whether a free piece could be part of them; earliest week
     * first, then in the order plans fill them. Each week's work starts on its Monday, or today when that is later.
     */
    List<Use> coming(Piece piece);

    /**
     * What each design on file asks for its neck and its head, and whether the wood would do, whatever its moisture, its lot
     * and whoever holds it; in order of the designs' codes, neck before head.
     */
    List<DesignPart> designs(Piece piece);

    /** The same question for many pieces. */
    Standard standard();

    /**
     * One design in one week.
     *
     * @param week such as 2026-W49
     */
    record Use(String week, String design, List<Asked> orders, Answer neck, Answer head) {
        public Use {
            orders = List.copyOf(orders);
        }

        /** It could be one part of them or the other. */
        public boolean serves() {
            return neck.fits() || head.fits();
        }
    }

    /**
     * An order.
     *
     * @param necks how many no accepted plan has yet
     */
    record Asked(String order, LocalDate due, int necks) {}

    /**
     * What the rules say.
     *
     * @param words how it fits, or the first reason why it does not in the arrangement and at the angle that come closest;
     *     reads on from the piece, without a full stop
     * @param shortBy by how much it falls short, when the reason is a length
     */
    record Answer(boolean fits, String words, @Nullable Length shortBy) {}

    /**
     * What a design asks for one part.
     *
     * @param thickness finished, once flat and planed
     * @param width with the side allowance, in the arrangement that takes least
     * @param needs what it takes of a piece in each arrangement that can be, at the angle that takes least
     */
    record DesignPart(String design, boolean neck, Length thickness, Length width, List<Needed> needs, Answer answer) {
        public DesignPart {
            needs = List.copyOf(needs);
        }
    }

    /**
     * @param arrangement underlaid or overlaid
     * @param length with allowances, bevel and the saw's kerf
     */
    record Needed(String arrangement, Length length) {}

    /** The designs on file, read once. */
    interface Standard {
        /** Differs whenever an answer could: at most 64 signs. */
        String key();

        /** Whether some design on file could have its neck, or its head, from this wood. */
        Fitness of(Piece piece);
    }

    /** What a piece can be. */
    record Fitness(boolean neck, boolean head) {}
}
