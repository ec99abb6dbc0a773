package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/**
 * What became of some of the wood of a piece.
 *
 * <p>What an entry takes from a piece, its acts' loss of volume, equals the sum of its outcomes but for those of kind
 * {@link Kind#REST}, whose wood stands with the piece it became.
 *
 * @param cause of waste; empty for everything else
 * @param volume negative where an earlier outcome is taken back
 * @param planned what the plan said; empty when there was none
 * @param toPiece code of the piece a rest became
 * @param cost its share of what the piece cost; empty when nobody knows what that was
 * @param neck which part of which neck it is, for parts
 * @param size long side, width and thickness of a part, or the size of a rest
 */
public record Outcome(
        Kind kind,
        @Nullable Cause cause,
        String fromPiece,
        @Nullable String toPiece,
        Volume volume,
        @Nullable Volume planned,
        @Nullable Money cost,
        @Nullable NeckPart neck,
        @Nullable Size size) {

    /** What it became. */
    public enum Kind {
        PART,
        REST,
        WASTE,
        /** What does not add up: the piece less everything that is named. Negative when more came out than went in. */
        UNEXPLAINED,
        SOLD
    }

    /** Why wood was lost. */
    public enum Cause {
        KERF,
        /** The wedge beside a bevel that no other part shares. */
        BEVEL,
        /** Ripped off the width. */
        EDGE,
        /** End checks and defects. */
        TRIM,
        PLANING,
        /** A rest too small to keep. */
        REST,
        /** A whole piece that is no good any more. */
        SCRAPPED,
        /** A part that was spoilt after it was made. */
        SPOILT
    }

    /** A part of a neck. */
    public record NeckPart(long plan, String order, int number, String design, boolean head) {
        /** A-101 no. 2, head. */
        public String title() {
            return order + " no. " + number + (head ? ", head" : ", neck");
        }
    }

    /** Along, across and through. */
    public record Size(Length length, Length width, Length thickness) {}

    public static Outcome part(String from, NeckPart neck, Size size, Volume volume, @Nullable Volume planned) {
        return new Outcome(Kind.PART, null, from, null, volume, planned, null, neck, size);
    }

    public static Outcome rest(String from, String to, Size size, Volume volume, @Nullable Volume planned) {
        return new Outcome(Kind.REST, null, from, to, volume, planned, null, null, size);
    }

    public static Outcome waste(String from, Cause cause, Volume volume, @Nullable Volume planned) {
        return new Outcome(Kind.WASTE, cause, from, null, volume, planned, null, null, null);
    }

    /** A part that was spoilt while it was made, or afterwards. */
    public static Outcome spoilt(String from, NeckPart neck, Size size, Volume volume, @Nullable Volume planned) {
        return new Outcome(Kind.WASTE, Cause.SPOILT, from, null, volume, planned, null, neck, size);
    }

    public static Outcome unexplained(String from, Volume volume) {
        return new Outcome(Kind.UNEXPLAINED, null, from, null, volume, null, null, null, null);
    }

    Outcome withCost(@Nullable Money share) {
        return new Outcome(kind, cause, fromPiece, toPiece, volume, planned, share, neck, size);
    }

    /** The same taken back. */
    public Outcome reversed() {
        return new Outcome(
                kind,
                cause,
                fromPiece,
                toPiece,
                Volume.ZERO.minus(volume),
                planned == null ? null : Volume.ZERO.minus(planned),
                cost == null ? null : Money.ZERO.minus(cost),
                neck,
                size);
    }
}
