package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
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
    /** With more places for kinds than this, segments of one sort are priced together. */
    private static final int MANY_PLACES = 30_000;

    private static final int MOST_OF_A_SORT = 4;
    /** Fractions of a price are kept to one part in so many. */
    private static final long FINE = 1L << 10;

    private final RackModel model;
    private final int oneIn;
    private final LayoutSpace.Desk desk;
    private final LayoutFrontier frontier;
    /** Segments by sort, the longest of each first; empty on racks small enough to price each segment by itself. */
    private final List<List<Site>> sorts;

    private final int[] sortOfSite;
    private final int[] supplyLimit;
    private final @Nullable SiteLayout[] siteCheapest;
    private final long[] siteBest;
    private final long[] bundleBest;
    private Prices prices;
    private long scaled;

    PriceBound(RackModel model) {
        this(model, large(model));
    }

    /** Too large to price every segment by itself, and to be proved best. */
    static boolean large(RackModel model) {
        return model.sites.stream().mapToLong(s -> s.menu().size()).sum() > MANY_PLACES;
    }

    /** No plan is worth less than this, whatever is cut. */
    static long lowest(RackModel model) {
        long sum = 0;
        for (Prepared r : model.prepared) {
            sum += Math.min(0, r.baseCents()) * model.bundles.get(r.bundle()).count();
        }
        return sum;
    }

    /** @param together segments of one sort are priced together */
    PriceBound(RackModel model, boolean together) {
        this(model, together, 1);
    }

    /** @param oneIn only one bundle in so many is looked at, and stands for as many: a bound of such a rack and no other */
    PriceBound(RackModel model, boolean together, int oneIn) {
        this.model = model;
        this.oneIn = oneIn;
        desk = new LayoutSpace.Desk(model);
        frontier = new LayoutFrontier(model);
        sortOfSite = new int[together ? model.sites.size() : 0];
        sorts = together ? sorts() : List.of();
        siteCheapest = new @Nullable SiteLayout[together ? model.sites.size() : 0];
        supplyLimit = new int[model.supplies];
        for (int i = 0; i < supplyLimit.length; i++) {
            supplyLimit[i] = model.kindLimit[model.kindOfSupply[i]];
        }
        siteBest = new long[model.sites.size()];
        bundleBest = new long[model.bundles.size()];
        prices = new Prices(Measure.BOOK_VALUE, new long[model.supplies], 0);
    }

    RackModel model() {
        return model;
    }

    private record Sort(int menu, List<Long> cuts) {}

    private List<List<Site>> sorts() {
        Map<Sort, List<Site>> bySort = new LinkedHashMap<>();
        for (Site s : model.sites) {
            if (s.bundle() % oneIn != 0) {
                continue;
            }
            List<Long> cuts = new ArrayList<>();
            cuts.add(s.preparation().squareKerfUm());
            for (int i = 0; i < s.menu().size(); i++) {
                if (i == 0 || s.menu().angle()[i] != s.menu().angle()[i - 1]) {
                    cuts.add(s.cutUm(i));
                }
            }
            bySort.computeIfAbsent(new Sort(s.menu().index(), cuts), k -> new ArrayList<>())
                    .add(s);
        }
        List<List<Site>> result = new ArrayList<>(bySort.values());
        for (int i = 0; i < result.size(); i++) {
            result.get(i)
                    .sort(Comparator.comparingLong((Site s) -> -s.lengthUm()).thenComparingInt(Site::index));
            for (Site s : result.get(i)) {
                sortOfSite[s.index()] = i;
            }
        }
        return result;
    }

    /**
     * Prices every segment.
     *
     * @param needed weight that must be filled; not used on the first level
     * @param into takes, for every segment, the cheapest layout when using it would lower the relaxed optimum
     * @return the bound times {@link Prices#ONE}
     */
    long price(Prices with, long needed, List<SiteLayout> into) {
        return price(with, needed, Set.of(), into);
    }

    /** @param known layouts that need not be told of again */
    long price(Prices with, long needed, Set<SiteLayout> known, List<SiteLayout> into) {
        prices = with;
        scaled = with.level() == Measure.BOOK_VALUE ? Math.multiplyExact(with.filled(), needed) : 0;
        if (sorts.isEmpty()) {
            for (Bundle b : model.bundles) {
                long best = 0;
                for (Prepared r : b.preparations()) {
                    best = Math.min(best, priceOne(r, into));
                }
                bundleBest[b.index()] = best;
            }
        } else {
            priceTogether(known, into);
        }
        for (Bundle b : model.bundles) {
            scaled = Math.addExact(scaled, Math.multiplyExact(bundleBest[b.index()], (long) b.count() * oneIn));
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
        for (Site s : r.sites()) {
            siteBest[s.index()] = priced(s).cheapest(r.single() ? -base(r) : 0, into);
        }
        return cheapest(r);
    }

    /** The cheapest way to cut a piece so prepared, from what its segments' cheapest layouts cost. */
    private long cheapest(Prepared r) {
        long sum = base(r);
        long least = Long.MAX_VALUE;
        for (Site s : r.sites()) {
            least = Math.min(least, siteBest[s.index()]);
            sum += Math.min(0, siteBest[s.index()]);
        }
        // A segment's table may find no layout worth a part: then the piece is not cut.
        return least < 0 ? sum : least == Long.MAX_VALUE ? least : base(r) + least;
    }

    /**
     * What a piece would cost under the cheapest layouts.
     *
     * @param layouts at least one, each on a segment of its own
     * @param reduced see {@link #price}
     */
    record Offer(Prepared prepared, List<SiteLayout> layouts, long reduced) {}

    /**
     * The cheapest layout of every piece that is left, cheapest first; what is proved stays as it was.
     *
     * @param limit by supply: most parts of it on a piece
     * @param left by bundle: pieces still there
     */
    List<Offer> offers(Prices with, int[] limit, int[] left) {
        prices = with;
        for (List<Site> sort : sorts) {
            Site longest = null;
            for (Site s : sort) {
                if (left[s.bundle()] == 0) {
                    continue;
                }
                if (longest == null) {
                    longest = s;
                    frontier.make(s, s.lengthUm() + s.preparation().squareKerfUm(), prices, limit);
                }
                siteBest[s.index()] = Long.MAX_VALUE;
                if (frontier.size() > 1) {
                    priceAmong(s, true);
                }
            }
        }
        List<Offer> result = new ArrayList<>();
        for (Bundle b : model.bundles) {
            Offer best = null;
            for (Prepared r : left[b.index()] > 0 ? b.preparations() : List.<Prepared>of()) {
                long here = cheapest(r);
                if (here < Long.MAX_VALUE && (best == null || here < best.reduced())) {
                    best = new Offer(r, layouts(r), here);
                }
            }
            if (best != null) {
                result.add(best);
            }
        }
        result.sort(Comparator.comparingLong(Offer::reduced)
                .thenComparingInt(o -> o.prepared().index()));
        return result;
    }

    private List<SiteLayout> layouts(Prepared r) {
        Site least = r.sites().get(0);
        for (Site s : r.sites()) {
            least = siteBest[s.index()] < siteBest[least.index()] ? s : least;
        }
        List<SiteLayout> result = new ArrayList<>();
        for (Site s : r.sites()) {
            SiteLayout x = siteCheapest[s.index()];
            if (x != null && (s.index() == least.index() || siteBest[s.index()] < 0)) {
                result.add(x);
            }
        }
        return result;
    }

    private void priceTogether(Set<SiteLayout> known, List<SiteLayout> into) {
        boolean[] wanted = wanted();
        for (List<Site> sort : sorts) {
            Site longest = null;
            for (Site s : sort) {
                siteCheapest[s.index()] = null;
                if (!wanted[s.prepared()]) {
                    continue;
                }
                if (longest == null) {
                    longest = s;
                    frontier.make(s, s.lengthUm() + s.preparation().squareKerfUm(), prices, supplyLimit);
                }
                priceAmong(s, false);
            }
        }
        List<Prepared> welcome = new ArrayList<>();
        for (Bundle b : model.bundles) {
            bundleBest[b.index()] = 0;
            Prepared best = null;
            for (Prepared r : b.preparations()) {
                if (!wanted[r.index()]) {
                    continue;
                }
                long here = cheapest(r);
                if (here < bundleBest[b.index()]) {
                    bundleBest[b.index()] = here;
                    best = r;
                }
            }
            if (best != null) {
                welcome.add(best);
            }
        }
        // Pieces of one sort ask for the same parts: the cheapest few tell as much as all of them.
        welcome.sort(
                Comparator.comparingLong((Prepared r) -> bundleBest[r.bundle()]).thenComparingInt(Prepared::index));
        int[] taken = new int[sorts.size()];
        for (Prepared r : welcome) {
            for (Site s : r.sites()) {
                SiteLayout x = siteCheapest[s.index()];
                if (x != null && !known.contains(x) && taken[sortOfSite[s.index()]]++ < MOST_OF_A_SORT) {
                    into.add(x);
                }
            }
        }
    }

    /**
     * By preparation: whether cutting a piece so can be worth more than it costs. {@link #siteBest} is set to what no layout is
     * cheaper than.
     */
    private boolean[] wanted() {
        long[] cheapest = new long[model.prepared.size()];
        Arrays.fill(cheapest, Long.MAX_VALUE);
        boolean[] wanted = new boolean[cheapest.length];
        long[] sum = new long[cheapest.length];
        for (List<Site> sort : sorts) {
            Site first = sort.get(0);
            long shortest2 = Long.MAX_VALUE;
            long most = 0;
            for (int i = 0; i < first.menu().size(); i++) {
                long cut = first.cutUm(i);
                long length2 = 2 * first.menu().shortUm()[i] + (first.menu().alone()[i] ? 2 * cut : cut);
                long value = prices.supply()[first.menu().supply()[i]];
                shortest2 = Math.min(shortest2, length2);
                most = Math.max(most, value <= 0 ? 0 : ceiling(Math.multiplyExact(value, FINE), length2));
            }
            for (Site s : sort) {
                long least = lowest(s, shortest2, most);
                siteBest[s.index()] = least;
                cheapest[s.prepared()] = Math.min(cheapest[s.prepared()], least);
                sum[s.prepared()] += Math.min(0, least);
            }
        }
        for (Prepared r : model.prepared) {
            if (cheapest[r.index()] < Long.MAX_VALUE) {
                wanted[r.index()] = base(r) + Math.min(cheapest[r.index()], sum[r.index()]) < 0;
            }
        }
        return wanted;
    }

    /**
     * What no layout of a segment costs less than. Parts take at least their short sides and half their cuts, and are worth no
     * more by length than the best of them; what is left is worth no more by length than a rest as long as the segment.
     *
     * @param shortest2 doubled length of the shortest part
     * @param most worth by doubled length, times {@link #FINE}
     */
    private long lowest(Site s, long shortest2, long most) {
        long room2 = 2 * (s.lengthUm() + s.preparation().squareKerfUm());
        long rest = 0;
        for (SearchProblem.RestValue v : s.rule().rests()) {
            if (v.fromUm() <= s.lengthUm()) {
                rest = ceiling(Math.multiplyExact(prices.cent() * FINE, v.centsPerKm()), 2 * 1_000_000_000L);
            }
        }
        long one = rest * Math.max(0, 2 * s.lengthUm() - shortest2) + most * shortest2;
        long all = most * room2;
        return prices.cent() * s.rule().restCents(s.lengthUm()) - ceiling(Math.max(one, all), FINE);
    }

    private static long ceiling(long a, long b) {
        return -Math.floorDiv(-a, b);
    }

    /** @param offer a layout is wanted however dear, and limits of roles do not matter */
    private void priceAmong(Site site, boolean offer) {
        long kerf = site.preparation().squareKerfUm();
        long whole = site.rule().restCents(site.lengthUm());
        long best = Long.MAX_VALUE;
        long found = offer ? Long.MAX_VALUE : 0;
        int at = -1;
        for (int i = 1; i < frontier.size() && frontier.usedUm(i) - kerf <= site.lengthUm(); i++) {
            long loss = prices.cent() == 0
                    ? 0
                    : prices.cent() * (whole - site.rule().restCents(site.rule().restUm(frontier.usedUm(i))));
            long reduced = loss - frontier.worth(i);
            if (reduced < best) {
                best = reduced;
            }
            if (reduced < found && (offer || frontier.keepsLimits(i))) {
                found = reduced;
                at = i;
            }
        }
        siteBest[site.index()] = best;
        Prepared r = model.prepared.get(site.prepared());
        siteCheapest[site.index()] =
                at < 0 || (!offer && r.single() && found >= -base(r)) ? null : frontier.on(site, at);
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
