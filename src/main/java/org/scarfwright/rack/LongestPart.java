package org.scarfwright.rack;

import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/**
 * The longest part of one thickness a piece can still give, out of one clear stretch.
 *
 * @param length rounded down to a micrometre; zero when it gives none
 * @param limit what keeps it from being longer
 */
public record LongestPart(Length length, Limit limit) {
    private static final Length STEP = Length.ofUm(1);

    /** What keeps a part from being longer. */
    public enum Limit {
        /** The clear stretch between trims and structural defects ends. */
        CLEAR_STRETCH,
        /** A longer part would be too thin once it is flat and planed. */
        THICKNESS,
        /** A longer part would be too far out of straight before planing. */
        STRAIGHTNESS
    }

    /** Farther than any piece is out. */
    private static final Length ANY = Length.ofMm(6000);

    /**
     * What a part must be.
     *
     * @param thickness once it is flat and planed
     * @param planingPerFace see {@link UsableSize#thickness}
     * @param straightness how far it may be out of straight before planing
     * @param width to which the piece is ripped before it is flattened; empty when it keeps its whole width, as plans reckon
     */
    public record Wanted(
            Length thickness,
            Length planingPerFace,
            Length straightness,
            @Nullable Length width) {
        /** Over the piece's whole width. */
        public Wanted(Length thickness, Length planingPerFace, Length straightness) {
            this(thickness, planingPerFace, straightness, null);
        }

        /** Over the piece's whole width, however far it is out of straight: a head. */
        public static Wanted head(Length thickness, Length planingPerFace) {
            return new Wanted(thickness, planingPerFace, ANY);
        }

        /** The same from a piece that is ripped first; null keeps its whole width. */
        public Wanted rippedTo(@Nullable Length width) {
            return new Wanted(thickness, planingPerFace, straightness, width);
        }
    }

    /** The longest part that is no farther out of straight, however thick. */
    public static LongestPart straight(Piece piece, Length straightness) {
        return of(piece, new Wanted(ANY.times(-1), Length.ZERO, straightness));
    }

    /** Both laws only get worse with length, so the longest part is found by halving. */
    public static LongestPart of(Piece piece, Wanted wanted) {
        Length clear = UsableSize.zones(piece).stream().map(Zone::length).reduce(Length.ZERO, Length::max);
        if (clear.um() == 0 || fits(piece, clear, wanted)) {
            return new LongestPart(clear, Limit.CLEAR_STRETCH);
        }
        long fits = 0;
        long fails = clear.um();
        while (fails - fits > STEP.um()) {
            long middle = fits + (fails - fits) / 2;
            if (fits(piece, Length.ofUm(middle), wanted)) {
                fits = middle;
            } else {
                fails = middle;
            }
        }
        boolean thick = thickEnough(piece, Length.ofUm(fails), wanted);
        return new LongestPart(Length.ofUm(fits), thick ? Limit.STRAIGHTNESS : Limit.THICKNESS);
    }

    private static boolean fits(Piece piece, Length length, Wanted wanted) {
        return thickEnough(piece, length, wanted)
                && !UsableSize.straightness(piece, length).isLongerThan(wanted.straightness());
    }

    private static boolean thickEnough(Piece piece, Length length, Wanted wanted) {
        Length width = wanted.width() == null ? piece.width().length() : wanted.width();
        return !UsableSize.thickness(piece, length, width, wanted.planingPerFace())
                .isShorterThan(wanted.thickness());
    }
}
