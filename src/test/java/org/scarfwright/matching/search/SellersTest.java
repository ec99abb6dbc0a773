package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Group;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Measure;
import org.scarfwright.matching.search.SearchResult.Pair;
import org.scarfwright.matching.search.SearchResult.SegmentUse;

class SellersTest {
    private static final int CASES = 60;

    /** Against cutting every single neck there is and counting what it costs with the plan's own check. */
    @Test
    void noNeckCostsLessThanItsTwoPartsWhereTheyAreCheapest() {
        int tight = 0;
        for (long seed = 0; seed < CASES; seed++) {
            SearchProblem problem = SmallCases.problem(seed);
            RackModel model = new RackModel(problem);
            long[] cheapest = cheapest(model);
            for (int l = 0; l < problem.lines().size(); l++) {
                for (int o = 0; o < problem.lines().get(l).options().size(); o++) {
                    Option option = problem.lines().get(l).options().get(o);
                    for (Layout neck : alone(problem, option.neck())) {
                        for (Layout head : alone(problem, option.head())) {
                            if (neck.piece() == head.piece()
                                    || !problem.lines().get(l).pairing().allows(neck.piece(), head.piece())) {
                                continue;
                            }
                            CutPlan plan = CutPlan.of(
                                    problem, List.of(neck, head), List.of(new Pair(l, o, neck.piece(), head.piece())));
                            long least = cheapest[model.kindOfNeed[option.neck()]]
                                    + cheapest[model.kindOfNeed[option.head()]];
                            assertThat(least).as("seed %d", seed).isLessThanOrEqualTo(plan.value(Measure.BOOK_VALUE));
                            tight += least == plan.value(Measure.BOOK_VALUE) ? 1 : 0;
                        }
                    }
                }
            }
        }
        assertThat(tight).as("necks that cost just that").isGreaterThan(CASES);
    }

    @Test
    void theShortListFillsARackOfPlenty() {
        SearchProblem problem = RackGenerator.problem(new RackGenerator.Size(400, 10, true), 3);
        RackModel model = new RackModel(problem);
        BitSet among = new BitSet();
        new Sellers(model)
                .bundles().stream().forEach(b -> model.bundles.get(b).pieces().forEach(among::set));
        assertThat(among.cardinality()).isLessThan(problem.pieces().size());
        Improver improver = new Improver(problem, among);
        improver.fill(new SearchClock(Duration.ofMinutes(1), () -> false));
        CutPlan plan = improver.plan();
        assertThat(plan.value(Measure.FILLED)).isEqualTo(model.fillableWeight());
        assertThat(plan.layouts()).allMatch(x -> among.get(x.piece()));
    }

    private static long[] cheapest(RackModel model) {
        long[] cheapest = new long[model.kinds];
        Arrays.fill(cheapest, Long.MAX_VALUE / 4);
        for (SiteLayout x : new Sellers(model).lone(1)) {
            long cost = x.lossCents + model.prepared.get(x.site.prepared()).baseCents();
            cheapest[x.kind(0)] = Math.min(cheapest[x.kind(0)], cost);
        }
        return cheapest;
    }

    /** Every way to cut one part and nothing else. */
    private static List<Layout> alone(SearchProblem problem, int need) {
        List<Layout> result = new ArrayList<>();
        Need part = problem.needs().get(need);
        for (int p = 0; p < problem.pieces().size(); p++) {
            StockPiece piece = problem.pieces().get(p);
            for (int r = 0; r < piece.preparations().size(); r++) {
                Preparation way = piece.preparations().get(r);
                for (int s = 0; s < way.segments().size(); s++) {
                    Segment segment = way.segments().get(s);
                    boolean listed = Arrays.binarySearch(segment.needs(), need) >= 0
                            || Arrays.binarySearch(segment.alone(), need) >= 0;
                    long bevel = way.bevelUm()[part.angle()];
                    if (listed && bevel >= 0 && part.shortUm() + bevel <= segment.lengthUm()) {
                        List<SegmentUse> uses = new ArrayList<>();
                        for (int t = 0; t < way.segments().size(); t++) {
                            uses.add(new SegmentUse(t == s ? List.of(new Group(List.of(need))) : List.<Group>of()));
                        }
                        result.add(new Layout(p, r, uses));
                    }
                }
            }
        }
        return result;
    }
}
