package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.scarfwright.matching.search.RackModel.Bundle;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.RackModel.Team;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * What prices prove about a level, in whole numbers.
 *
 * <p>Let x count layouts, f flows. The rows {@code sum(a x) - sum(f) = 0} of the supplies, with multipliers v, and (on the
 * level of book value) {@code sum(w f) >= F}, with multiplier p >= 0, are moved into the objective. What is left falls apart
 * into pieces and teams, each solved by itself, so for every choice of v and p
 * <pre>
 *   optimum >= p F + sum over bundles of count * min(0, cheapest way to cut one at these prices)
 *                  + sum over teams of quantity * min(0, cheapest flow: v(neck) + v(head) - w p)
 * </pre>
 * A plan that uses a layout whose piece is g dearer than the cheapest costs at least this bound plus g: which is why layouts
 * with g above (best plan - bound) need not be looked at. Lagrangian duality; derived here. No floating-point number enters.
 */
final class PriceBound {
    private final RackModel model;
    private final LayoutSpace.Desk desk;
    private final long[] siteBest;
    private final long[] bundleBest;
    private Prices prices;
    private long scaled;

    PriceBound(RackModel model) {
        this.model = model;
        desk = new LayoutSpace.Desk(model);
        siteBest = new long[model.sites.size()];
        bundleBest = new long[model.bundles.size()];
        prices = new Prices(Measure.BOOK_VALUE, new long[model.supplies], 0);
    }

    /**
     * Prices every segment.
     *
     * @param needed weight that must be filled; not used on the first level
     * @param into takes, for every segment, the cheapest layout when using it would lower the relaxed optimum
     * @return the bound times {@link Prices#ONE}
     */
    long price(Prices with, long needed, List<SiteLayout> into) {
        prices = with;
        scaled = with.level() == Measure.BOOK_VALUE ? Math.multiplyExact(with.filled(), needed) : 0;
        for (Bundle b : model.bundles) {
            long best = Long.MAX_VALUE;
            for (Prepared r : b.preparations()) {
                best = Math.min(best, priceOne(r, into));
            }
            bundleBest[b.index()] = Math.min(0, best);
            scaled = Math.addExact(scaled, Math.multiplyExact(bundleBest[b.index()], (long) b.count()));
        }
        long[] teamBest = new long[model.teams.size()];
        for (Flow f : model.flows) {
            teamBest[f.team()] = Math.min(teamBest[f.team()], reduced(f));
        }
        for (Team t : model.teams) {
            scaled = Math.addExact(scaled, Math.multiplyExact(teamBest[t.index()], (long) t.quantity()));
        }
        return scaled;
    }

    private long reduced(Flow f) {
        long gain = prices.level() == Measure.FILLED ? Prices.ONE : prices.filled();
        return prices.supply()[f.neckSupply()]
                + prices.supply()[f.headSupply()]
                - model.teams.get(f.team()).weight() * gain;
    }

    private long priceOne(Prepared r, List<SiteLayout> into) {
        long base = base(r);
        long sum = base;
        long least = Long.MAX_VALUE;
        for (Site s : r.sites()) {
            LayoutSpace space = priced(s);
            long best = space.cheapest(r.single() ? -base : 0, into);
            siteBest[s.index()] = best;
            least = Math.min(least, best);
            sum += Math.min(0, best);
        }
        return least < 0 ? sum : base + least;
    }

    private LayoutSpace priced(Site site) {
        LayoutSpace space = new LayoutSpace(model, site, desk);
        space.price(prices);
        return space;
    }

    private long base(Prepared r) {
        return prices.cent() * r.baseCents();
    }

    /**
     * Every layout that a plan no more than {@code gap} above the bound can use.
     *
     * @param gap in units of {@link Prices#ONE}
     * @param limit most layouts in all
     * @return nothing when there are more than the limit: an incomplete list proves nothing
     */
    Optional<List<SiteLayout>> within(long gap, int limit) {
        List<SiteLayout> result = new ArrayList<>();
        for (Prepared r : model.prepared) {
            long others = 0;
            for (Site s : r.sites()) {
                others += Math.min(0, siteBest[s.index()]);
            }
            for (Site s : r.sites()) {
                long rest = base(r) + others - Math.min(0, siteBest[s.index()]) - bundleBest[r.bundle()];
                // The cheapest is known: where even that is too dear nothing is listed.
                if (siteBest[s.index()] <= gap - rest && !priced(s).all(gap - rest, limit - result.size(), result)) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(result);
    }
}
