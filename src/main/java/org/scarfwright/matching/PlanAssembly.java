package org.scarfwright.matching;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.joint.Bevel;
import org.scarfwright.matching.Plan.Cut;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Stretch;
import org.scarfwright.matching.search.SearchProblem;
import org.scarfwright.matching.search.SearchResult;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Zone;
import org.scarfwright.shop.Saw;

/**
 * Lays what the search found on the pieces, in lengths from each piece's left end.
 *
 * <p>In every clear stretch the groups lie from the left, each followed by a square cut. A group is one part with its square end
 * at the left, or two that share a bevel and point at each other. The cut that takes off an end trim or a flaw runs in the wood
 * that is lost anyway.
 */
final class PlanAssembly {
    private static final int LANE = 1;

    private final MatchModel model;
    private final SearchResult result;
    private final List<PieceLayout> layouts = new ArrayList<>();
    private final Map<PartOnPiece, Deque<Part>> laid = new HashMap<>();

    /** Parts of one need on one piece are like each other; which neck gets which does not matter. */
    private record PartOnPiece(int need, int piece) {}

    /** One neck as the search chose it, with its parts where they lie. */
    record Made(int line, Way way, Piece neckPiece, Piece headPiece, Part neck, Part head) {
        /** The same neck, made for another line. */
        Made of(int other) {
            return new Made(other, way, neckPiece, headPiece, neck, head);
        }
    }

    PlanAssembly(MatchModel model, SearchResult result) {
        this.model = model;
        this.result = result;
        result.layouts().forEach(this::layOut);
        layouts.sort(Comparator.comparing(PieceLayout::piece));
    }

    /** In order of the pieces' codes. */
    List<PieceLayout> layouts() {
        return List.copyOf(layouts);
    }

    /** In order of lines. */
    List<Made> made() {
        List<Made> made = new ArrayList<>();
        for (SearchResult.Pair pair : result.pairs()) {
            SearchProblem.Option option =
                    model.problem().lines().get(pair.line()).options().get(pair.option());
            made.add(new Made(
                    pair.line(),
                    model.way(pair.line(), pair.option()),
                    model.piece(pair.neckPiece()),
                    model.piece(pair.headPiece()),
                    take(option.neck(), pair.neckPiece()),
                    take(option.head(), pair.headPiece())));
        }
        if (laid.values().stream().anyMatch(parts -> !parts.isEmpty())) {
            throw new IllegalStateException("the search laid a part that belongs to no neck");
        }
        return made;
    }

    private Part take(int need, int piece) {
        Deque<Part> parts = laid.get(new PartOnPiece(need, piece));
        if (parts == null || parts.isEmpty()) {
            throw new IllegalStateException("the search paired a part that lies nowhere");
        }
        return parts.removeFirst();
    }

    private void layOut(SearchResult.Layout layout) {
        Piece piece = model.piece(layout.piece());
        Preparations.Prepared prepared = model.prepared(layout.piece(), layout.preparation());
        boolean rescue = model.standards().isRescue(piece, model.shop());
        OnPiece on = new OnPiece(layout.piece(), piece, prepared, new LayoutBooks(piece, prepared.sawn(), rescue));
        Length at = Length.ZERO;
        for (int s = 0; s < prepared.stretches().size(); s++) {
            Zone zone = prepared.stretches().get(s).zone();
            on.trim(at, zone.from());
            on.segment(zone, layout.segments().get(s));
            at = zone.to();
        }
        on.trim(at, piece.length().length());
        layouts.add(new PieceLayout(
                piece.code(),
                piece.version(),
                piece.length().length(),
                piece.width().length(),
                piece.thickness().length(),
                prepared.sawn(),
                prepared.saw().code(),
                on.cuts,
                on.rests,
                on.trims,
                on.books.books()));
    }

    /** One piece while it is being laid out. */
    private final class OnPiece {
        private final int index;
        private final Piece piece;
        private final Length sawn;
        private final Saw saw;
        private final LayoutBooks books;
        private final List<Cut> cuts = new ArrayList<>();
        private final List<Stretch> rests = new ArrayList<>();
        private final List<Stretch> trims = new ArrayList<>();

        OnPiece(int index, Piece piece, Preparations.Prepared prepared, LayoutBooks books) {
            this.index = index;
            this.piece = piece;
            this.sawn = prepared.sawn();
            this.saw = prepared.saw();
            this.books = books;
        }

        void trim(Length from, Length to) {
            if (to.isLongerThan(from)) {
                trims.add(new Stretch(LANE, from, to, piece.width().length(), false));
                books.trim(to.minus(from));
            }
        }

        void segment(Zone zone, SearchResult.SegmentUse use) {
            Length at = zone.from();
            for (SearchResult.Group group : use.groups()) {
                if (at.isLongerThan(zone.from())) {
                    at = squareCut(at);
                }
                at = group(at, group);
            }
            if (at.isLongerThan(zone.from()) && !zone.to().minus(at).isShorterThan(saw.kerf())) {
                at = squareCut(at);
            }
            // Without that last cut the rest is a sliver thinner than the saw: it stays on the last section as waste.
            rest(at, zone.to());
        }

        private Length squareCut(Length at) {
            Length end = at.plus(saw.kerf());
            cuts.add(new Cut(LANE, at, end, null, false));
            books.squareCut(saw.kerf());
            return end;
        }

        private void rest(Length from, Length to) {
            if (!to.isLongerThan(from)) {
                return;
            }
            Length length = to.minus(from);
            boolean usable = !length.isShorterThan(model.input().settings().usableRestLength())
                    && !piece.width()
                            .length()
                            .isShorterThan(model.input().settings().usableRestWidth());
            rests.add(new Stretch(LANE, from, to, piece.width().length(), usable));
            books.rest(length, usable);
        }

        private Length group(Length from, SearchResult.Group group) {
            PartNeed first = model.part(group.needs().get(0));
            Length run = Bevel.run(sawn, first.angle());
            Length kerfRun = Bevel.kerfRun(saw.kerf(), first.angle());
            Length section = run.plus(kerfRun);
            for (int need : group.needs()) {
                section = section.plus(model.part(need).shortSide(saw));
            }
            Length to = from.plus(section);
            Length wide =
                    UsableSize.width(piece, section, model.input().settings().edgeAllowance());

            Length firstShort = first.shortSide(saw);
            List<LayoutBooks.SectionPart> parts = new ArrayList<>();
            Length width = width(first, wide);
            parts.add(new LayoutBooks.SectionPart(firstShort, width));
            lay(
                    group.needs().get(0),
                    new Part(
                            piece.code(),
                            LANE,
                            from,
                            from.plus(firstShort).plus(run),
                            false,
                            firstShort,
                            firstShort.plus(run),
                            width,
                            sawn));
            boolean shared = group.needs().size() == 2;
            if (shared) {
                PartNeed second = model.part(group.needs().get(1));
                Length secondShort = second.shortSide(saw);
                Length secondWidth = width(second, wide);
                parts.add(new LayoutBooks.SectionPart(secondShort, secondWidth));
                lay(
                        group.needs().get(1),
                        new Part(
                                piece.code(),
                                LANE,
                                to.minus(secondShort).minus(run),
                                to,
                                true,
                                secondShort,
                                secondShort.plus(run),
                                secondWidth,
                                sawn));
            }
            Length bevel = from.plus(firstShort);
            cuts.add(new Cut(LANE, bevel, bevel.plus(run).plus(kerfRun), first.angle(), shared));
            books.section(parts, run, kerfRun);
            return to;
        }

        /** As wide as needs no wings where the section gives it; else as wide as it must be. */
        private Length width(PartNeed need, Length wide) {
            return need.widthWithoutWings().isLongerThan(wide) ? need.width() : need.widthWithoutWings();
        }

        private void lay(int need, Part part) {
            laid.computeIfAbsent(new PartOnPiece(need, index), k -> new ArrayDeque<>())
                    .add(part);
        }
    }
}
