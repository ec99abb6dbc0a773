package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem.Role;

/**
 * Two orders for necks that are alike may trade them; what a plan does otherwise should not be hidden among such trades. So
 * every order is given what it has in the plan there is, where that is possible without changing any piece.
 */
final class Trades {
    private Trades() {}

    static List<PlanAssembly.Made> like(Plan plan, PlanMaker.Found found) {
        MatchInput input = found.model().input();
        List<PlanAssembly.Made> free = new ArrayList<>(found.made());
        List<PlanAssembly.Made> given = new ArrayList<>();
        List<Plan.Pairing> open = new ArrayList<>();
        for (Plan.Pairing p : plan.pairings()) {
            PlanAssembly.Made own = first(free, m -> order(input, m).equals(p.order()) && alike(m, p));
            if (own == null) {
                open.add(p);
            } else {
                free.remove(own);
                given.add(own);
            }
        }
        for (Plan.Pairing p : open) {
            // A trade made for another order may have brought it here already.
            PlanAssembly.Made own =
                    first(free, m -> alike(m, p) && order(input, m).equals(p.order()));
            if (own != null) {
                free.remove(own);
                given.add(own);
                continue;
            }
            for (PlanAssembly.Made other : List.copyOf(free)) {
                PlanAssembly.Made mine = alike(other, p)
                        ? first(free, m -> order(input, m).equals(p.order()) && mayTrade(found.model(), m, other))
                        : null;
                if (mine != null) {
                    free.remove(other);
                    given.add(other.of(mine.line()));
                    free.set(free.indexOf(mine), mine.of(other.line()));
                    break;
                }
            }
        }
        given.addAll(free);
        given.sort(Comparator.comparingInt(PlanAssembly.Made::line));
        return given;
    }

    private static PlanAssembly.@Nullable Made first(List<PlanAssembly.Made> all, Predicate<PlanAssembly.Made> wanted) {
        return all.stream().filter(wanted).findFirst().orElse(null);
    }

    private static String order(MatchInput input, PlanAssembly.Made m) {
        return input.lines().get(m.line()).order();
    }

    private static boolean alike(PlanAssembly.Made m, Plan.Pairing p) {
        return m.way().arrangement() == p.arrangement()
                && m.way().angle().equals(p.angle())
                && m.neckPiece().code().equals(p.neck().piece())
                && m.headPiece().code().equals(p.head().piece());
    }

    private static boolean mayTrade(MatchModel model, PlanAssembly.Made a, PlanAssembly.Made b) {
        MatchInput.Line one = model.input().lines().get(a.line());
        MatchInput.Line other = model.input().lines().get(b.line());
        return one.design().equals(other.design())
                && one.pin() == null
                && other.pin() == null
                && mayHave(model, one, b)
                && mayHave(model, other, a);
    }

    private static boolean mayHave(MatchModel model, MatchInput.Line line, PlanAssembly.Made m) {
        return model.byHand().allows(line, Role.NECK, m.neckPiece().code())
                && model.byHand().allows(line, Role.HEAD, m.headPiece().code());
    }
}
