package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.matching.Plan.Cut;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Stretch;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;

/**
 * How a plan cuts one piece, section by section, so that some of it can be cut today and the rest another day.
 *
 * <p>The books of a piece are the sum of those of its sections, its square cuts, its trims and its rests; each figure is what
 * {@link LayoutBooks} says of that stretch alone.
 *
 * @param sections in order from the left end
 */
public record PlannedCut(PieceLayout layout, List<Section> sections) {
    public PlannedCut {
        sections = List.copyOf(sections);
    }

    /**
     * A stretch that is cut out in one go.
     *
     * @param parts one, or two that share their bevel
     * @param books of this stretch alone; its input is the whole stretch
     */
    public record Section(Length from, Length to, List<SectionPart> parts, Books books) {
        public Section {
            parts = List.copyOf(parts);
        }
    }

    /** A part of a neck, and its volume as {@link LayoutBooks} has it. */
    public record SectionPart(Plan.Pairing neck, boolean head, Part part, Volume volume) {}

    /** How the plan cuts this piece; empty when it does not cut it. */
    public static Optional<PlannedCut> of(Plan plan, String piece) {
        return plan.layouts().stream()
                .filter(l -> l.piece().equals(piece))
                .findFirst()
                .map(layout -> new PlannedCut(layout, sections(plan, layout)));
    }

    private static List<Section> sections(Plan plan, PieceLayout layout) {
        List<SectionPart> parts = new ArrayList<>();
        for (Plan.Pairing neck : plan.pairings()) {
            if (neck.neck().piece().equals(layout.piece())) {
                parts.add(part(neck, false, neck.neck()));
            }
            if (neck.head().piece().equals(layout.piece())) {
                parts.add(part(neck, true, neck.head()));
            }
        }
        List<Section> sections = new ArrayList<>();
        for (Cut cut : layout.cuts()) {
            if (cut.angle() != null) {
                sections.add(section(layout, cut, parts));
            }
        }
        sections.sort(Comparator.comparing(Section::from));
        return sections;
    }

    private static SectionPart part(Plan.Pairing neck, boolean head, Part part) {
        return new SectionPart(
                neck,
                head,
                part,
                Volume.of(part.shortSide().plus(part.longSide()), part.thickness(), part.width())
                        .halfDown());
    }

    /** The parts whose bevel is this cut: each ends, or begins, inside it. */
    private static Section section(PieceLayout layout, Cut cut, List<SectionPart> all) {
        List<SectionPart> parts = all.stream()
                .filter(p -> p.part().lane() == cut.lane())
                .filter(p -> p.part().bevelAtLeft()
                        ? isIn(cut, p.part().from())
                        : isIn(cut, p.part().to()))
                .sorted(Comparator.comparing(p -> p.part().from()))
                .toList();
        Length from = parts.get(0).part().from();
        Length to = parts.get(parts.size() - 1).part().to().max(cut.to());
        Length run = parts.get(0).part().longSide().minus(parts.get(0).part().shortSide());
        LayoutBooks books = new LayoutBooks(layout, to.minus(from));
        books.section(
                parts.stream()
                        .map(p -> new LayoutBooks.SectionPart(
                                p.part().shortSide(), p.part().width()))
                        .toList(),
                run,
                cut.to().minus(cut.from()).minus(run));
        return new Section(from, to, parts, books.books());
    }

    private static boolean isIn(Cut cut, Length end) {
        return !end.isShorterThan(cut.from()) && !end.isLongerThan(cut.to());
    }

    /**
     * What cutting some sections takes from the piece: the sections, every square cut and trim between them and the ends they lead
     * to, and, once no section is left, all the rest.
     *
     * @param taken indexes of sections that are cut already
     * @param now indexes of sections that are cut now
     */
    public Share share(List<Integer> taken, List<Integer> now) {
        List<Integer> done = new ArrayList<>(taken);
        done.addAll(now);
        Share before = upTo(taken);
        Share after = upTo(done);
        return after.less(before);
    }

    /** What is gone, and what has come back, once these sections are cut. */
    private Share upTo(List<Integer> cut) {
        if (cut.size() == sections.size()) {
            return new Share(layout.books(), layout.length(), layout.rests());
        }
        Books books = Books.NOTHING;
        Length gone = Length.ZERO;
        for (int i : cut) {
            books = books.plus(sections.get(i).books());
            gone = gone.plus(sections.get(i).to().minus(sections.get(i).from()));
        }
        for (Cut square : layout.cuts()) {
            if (square.angle() == null && cut.stream().anyMatch(i -> touches(sections.get(i), square))) {
                LayoutBooks kerf = new LayoutBooks(layout, square.to().minus(square.from()));
                kerf.squareCut(square.to().minus(square.from()));
                books = books.plus(kerf.books());
                gone = gone.plus(square.to().minus(square.from()));
            }
        }
        return new Share(books, gone, List.of());
    }

    private static boolean touches(Section section, Cut square) {
        return square.from().equals(section.to()) || square.to().equals(section.from());
    }

    /**
     * What a cut takes from a piece.
     *
     * @param length of the piece that is gone
     * @param rests that come off, usable or not
     */
    public record Share(Books books, Length length, List<Stretch> rests) {
        public Share {
            rests = List.copyOf(rests);
        }

        private Share less(Share other) {
            return new Share(books.minus(other.books), length.minus(other.length), rests);
        }
    }
}
