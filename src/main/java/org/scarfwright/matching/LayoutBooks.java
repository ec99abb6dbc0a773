package org.scarfwright.matching;

import java.math.BigInteger;
import java.util.List;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Piece;

/**
 * Where the wood of one piece goes, in whole cubic micrometres that close.
 *
 * <p>Each figure is computed from its own shape and none as what is left over, so that the sum is a proof:
 *
 * <ul>
 *   <li>trim: outside the clear stretches, at full width and thickness;
 *   <li>square cuts: kerf × full width × full thickness, made before the sections are flattened;
 *   <li>rests: not planed, full width and thickness;
 *   <li>planing: section × full width × (thickness − sawn thickness);
 *   <li>bevel kerf: kerf run × sawn thickness × full width;
 *   <li>bevel: the wedge s²·cot a / 2 × full width where the bevel is not shared;
 *   <li>parts: (short + long) / 2 × sawn thickness × width of the part;
 *   <li>edge: the same side view × what is ripped off the width.
 * </ul>
 *
 * <p>Halves of a cubic micrometre: a part is rounded down, a wedge rounded up, and the edge of their section takes the
 * difference, which is below one unit for each part.
 */
final class LayoutBooks {
    private final Length width;
    private final Length thickness;
    private final Length sawn;
    private final boolean rescue;
    private Books books;

    LayoutBooks(Piece piece, Length sawn, boolean rescue) {
        this(
                new Plan.Stretch(
                        1, Length.ZERO, piece.length().length(), piece.width().length(), true),
                piece.thickness().length(),
                sawn,
                rescue);
    }

    /** Of a stretch of a piece that is laid out already. */
    LayoutBooks(Plan.PieceLayout layout, Length stretch) {
        this(
                new Plan.Stretch(1, Length.ZERO, stretch, layout.width(), true),
                layout.thickness(),
                layout.sawnThickness(),
                !layout.books().rescued().isZero());
    }

    private LayoutBooks(Plan.Stretch wood, Length thickness, Length sawn, boolean rescue) {
        this.width = wood.width();
        this.thickness = thickness;
        this.sawn = sawn;
        this.rescue = rescue;
        this.books = new Books(
                Volume.of(wood.to(), wood.width(), thickness),
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO);
    }

    /** What one part of a section is: its short side and its width. */
    record SectionPart(Length shortSide, Length width) {}

    Books books() {
        return books;
    }

    void trim(Length length) {
        add(new Figures().trim(block(length, thickness)));
    }

    void squareCut(Length kerf) {
        add(new Figures().kerf(block(kerf, thickness)));
    }

    void rest(Length length, boolean usable) {
        Volume volume = block(length, thickness);
        add(usable ? new Figures().usableRest(volume) : new Figures().unusableRest(volume));
    }

    /**
     * A section: one part, or two that share their bevel.
     *
     * @param run of the bevel
     * @param kerfRun what the saw takes along the piece
     */
    void section(List<SectionPart> parts, Length run, Length kerfRun) {
        Length length = run.plus(kerfRun);
        for (SectionPart part : parts) {
            length = length.plus(part.shortSide());
        }
        Figures f = new Figures();
        f.planing(block(length, thickness.minus(sawn)));
        f.kerf(block(kerfRun, sawn));

        BigInteger partsUm3 = BigInteger.ZERO;
        BigInteger twice = BigInteger.ZERO;
        for (SectionPart part : parts) {
            BigInteger side = big(part.shortSide().times(2).plus(run)).multiply(big(sawn));
            partsUm3 = partsUm3.add(side.multiply(big(part.width())).shiftRight(1));
            twice = twice.add(side.multiply(big(width)));
        }
        BigInteger wedge = BigInteger.ZERO;
        if (parts.size() == 1) {
            BigInteger twiceWedge = big(run).multiply(big(sawn)).multiply(big(width));
            wedge = twiceWedge.add(BigInteger.ONE).shiftRight(1);
            twice = twice.add(twiceWedge);
        }
        // Twice the whole section is even: it is the run of a wedge and of a part, or of two parts, and whole short
        // sides.
        BigInteger edge = twice.shiftRight(1).subtract(partsUm3).subtract(wedge);
        f.parts(new Volume(partsUm3));
        f.bevel(new Volume(wedge));
        f.edge(new Volume(edge));
        if (rescue) {
            f.rescued(new Volume(partsUm3));
        }
        add(f);
    }

    private Volume block(Length length, Length thickness) {
        return Volume.of(length, width, thickness);
    }

    private static BigInteger big(Length length) {
        return BigInteger.valueOf(length.um());
    }

    private void add(Figures f) {
        books = books.plus(new Books(
                Volume.ZERO,
                f.parts,
                f.kerf,
                f.bevel,
                f.edge,
                f.trim,
                f.planing,
                f.usableRest,
                f.unusableRest,
                f.rescued));
    }

    /** Figures by name, so that no volume lands in its neighbour's place. */
    private static final class Figures {
        private Volume parts = Volume.ZERO;
        private Volume kerf = Volume.ZERO;
        private Volume bevel = Volume.ZERO;
        private Volume edge = Volume.ZERO;
        private Volume trim = Volume.ZERO;
        private Volume planing = Volume.ZERO;
        private Volume usableRest = Volume.ZERO;
        private Volume unusableRest = Volume.ZERO;
        private Volume rescued = Volume.ZERO;

        Figures parts(Volume v) {
            parts = v;
            return this;
        }

        Figures kerf(Volume v) {
            kerf = v;
            return this;
        }

        Figures bevel(Volume v) {
            bevel = v;
            return this;
        }

        Figures edge(Volume v) {
            edge = v;
            return this;
        }

        Figures trim(Volume v) {
            trim = v;
            return this;
        }

        Figures planing(Volume v) {
            planing = v;
            return this;
        }

        Figures usableRest(Volume v) {
            usableRest = v;
            return this;
        }

        Figures unusableRest(Volume v) {
            unusableRest = v;
            return this;
        }

        Figures rescued(Volume v) {
            rescued = v;
            return this;
        }
    }
}
