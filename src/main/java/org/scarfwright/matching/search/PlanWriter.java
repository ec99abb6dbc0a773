package org.scarfwright.matching.search;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.RackModel.Bundle;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.RackModel.Team;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;

/** Turns a {@link Choice} into layouts of real pieces and pairs of real parts; the first pieces of a bundle are used first. */
final class PlanWriter {
    private final RackModel model;
    private final List<Deque<Part>> parts = new ArrayList<>();
    private final List<Cut> cuts = new ArrayList<>();

    /** A piece being cut, with the needs on each segment of its preparation. */
    private record Cut(int piece, Prepared prepared, List<List<Integer>> needs) {}

    /** A part that was cut and waits for its neck. */
    private record Part(Cut cut, int segment) {}

    private PlanWriter(RackModel model) {
        this.model = model;
        for (int s = 0; s < model.supplies; s++) {
            parts.add(new ArrayDeque<>());
        }
    }

    /**
     * The plan a choice stands for.
     *
     * @throws IllegalStateException when the choice does not add up
     */
    static CutPlan write(RackModel model, Choice choice) {
        PlanWriter writer = new PlanWriter(model);
        writer.cut(choice);
        List<Pair> pairs = writer.pair(choice);
        List<Layout> layouts = new ArrayList<>();
        writer.cuts.sort(Comparator.comparingInt(Cut::piece));
        for (Cut cut : writer.cuts) {
            List<SegmentUse> uses = new ArrayList<>();
            for (int s = 0; s < cut.needs().size(); s++) {
                uses.add(CutPlan.groups(
                        model.problem,
                        writer.segments(cut.piece(), cut.prepared()).get(s),
                        cut.needs().get(s)));
            }
            layouts.add(new Layout(cut.piece(), cut.prepared().preparation(), uses));
        }
        return CutPlan.of(model.problem, layouts, ordered(pairs));
    }

    /** In order of lines, then pieces. */
    static List<Pair> ordered(List<Pair> pairs) {
        List<Pair> result = new ArrayList<>(pairs);
        result.sort(Comparator.comparingInt(Pair::line)
                .thenComparingInt(Pair::neckPiece)
                .thenComparingInt(Pair::headPiece)
                .thenComparingInt(Pair::option));
        return result;
    }

    private void cut(Choice choice) {
        List<List<SiteLayout>> bySite = new ArrayList<>();
        for (int s = 0; s < model.sites.size(); s++) {
            bySite.add(new ArrayList<>());
        }
        for (Map.Entry<SiteLayout, Integer> e : choice.layouts().entrySet()) {
            for (int i = 0; i < e.getValue(); i++) {
                bySite.get(e.getKey().site.index()).add(e.getKey());
            }
        }
        for (Bundle b : model.bundles) {
            int next = 0;
            for (Prepared r : b.preparations()) {
                int pieces = choice.prepared()[r.index()];
                if (next + pieces > b.count()) {
                    throw new IllegalStateException("More pieces are cut than there are");
                }
                List<Cut> here = new ArrayList<>();
                for (int i = 0; i < pieces; i++) {
                    here.add(start(b.pieces().get(next++), r));
                }
                int turn = 0;
                for (Site site : r.sites()) {
                    if (bySite.get(site.index()).size() > pieces) {
                        throw new IllegalStateException("A segment is cut more often than its piece");
                    }
                    for (SiteLayout layout : bySite.get(site.index())) {
                        lay(here.get(turn++ % pieces), layout);
                    }
                }
                if (turn < pieces) {
                    throw new IllegalStateException("A piece is cut for nothing");
                }
                cuts.addAll(here);
            }
        }
    }

    private Cut start(int piece, Prepared r) {
        List<List<Integer>> needs = new ArrayList<>();
        for (int s = segments(piece, r).size(); s > 0; s--) {
            needs.add(new ArrayList<>());
        }
        return new Cut(piece, r, needs);
    }

    private List<Segment> segments(int piece, Prepared r) {
        StockPiece wood = model.problem.pieces().get(piece);
        return wood.preparations().get(r.preparation()).segments();
    }

    private void lay(Cut cut, SiteLayout layout) {
        for (int i = 0; i < layout.at.length; i++) {
            int supply = layout.supply(i);
            for (int c = 0; c < layout.count[i]; c++) {
                parts.get(supply).add(new Part(cut, layout.site.segment()));
            }
        }
    }

    private List<Pair> pair(Choice choice) {
        List<Pair> pairs = new ArrayList<>();
        int[] made = new int[model.problem.lines().size()];
        for (int i = 0; i < choice.flows().length; i++) {
            Flow f = model.flows.get(i);
            for (int c = 0; c < choice.flows()[i]; c++) {
                int l = next(model.teams.get(f.team()), made);
                int option = option(model.problem.lines().get(l), f);
                Option o = model.problem.lines().get(l).options().get(option);
                int neck = take(f.neckSupply(), o.neck());
                int head = take(f.headSupply(), o.head());
                pairs.add(new Pair(l, option, neck, head));
                made[l]++;
            }
        }
        for (Deque<Part> left : parts) {
            if (!left.isEmpty()) {
                throw new IllegalStateException("A part is cut that no neck takes");
            }
        }
        return pairs;
    }

    /** The first line of a team that more is wanted of. */
    private int next(Team team, int[] made) {
        for (int l : team.lines()) {
            if (made[l] < model.problem.lines().get(l).quantity()) {
                return l;
            }
        }
        throw new IllegalStateException("More necks are made than were ordered");
    }

    /** The option of a line that takes parts of a flow's supplies. */
    private int option(Line line, Flow f) {
        for (int i = 0; i < line.options().size(); i++) {
            Option o = line.options().get(i);
            if (model.kindOfNeed[o.neck()] == model.kindOfSupply[f.neckSupply()]
                    && model.kindOfNeed[o.head()] == model.kindOfSupply[f.headSupply()]) {
                return i;
            }
        }
        throw new IllegalStateException("A neck is made that its line has no option for");
    }

    private int take(int supply, int need) {
        Part part = parts.get(supply).poll();
        if (part == null) {
            throw new IllegalStateException("A neck takes a part that was not cut");
        }
        part.cut().needs().get(part.segment()).add(need);
        return part.cut().piece();
    }
}
