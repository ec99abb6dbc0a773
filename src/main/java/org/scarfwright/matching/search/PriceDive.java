package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.scarfwright.matching.search.PriceBound.Offer;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.RackModel.Team;

/**
 * A plan made from prices. Pieces are offered with their cheapest layout of the parts still wanted; the cheapest few are cut,
 * and all others are offered again. A part either completes a neck whose other part is there, or begins a neck of a team that
 * still wants one; beginning a neck that the prices find too dear costs what it is too dear by. Necks that stay without their
 * other part are given up at the end.
 *
 * <p>Source: derived here; a dive guided by the multipliers of the relaxation.
 */
final class PriceDive {
    /** One in so many of the parts that are missing is cut before the rest is priced anew. */
    private static final int ONE_IN = 12;

    private static final int AT_LEAST = 4;

    private final RackModel model;
    private final PriceBound pricing;
    /** By supply: flows that take a part of it as a neck, and as a head. */
    private final List<List<Integer>> asNeck = new ArrayList<>();

    private final List<List<Integer>> asHead = new ArrayList<>();

    private final int[] wanted;
    private final int[] left;
    private final long[] dear;
    private final List<List<Part>> openNecks = new ArrayList<>();
    private final List<List<Part>> openHeads = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final IdentityHashMap<Part, Part> partner = new IdentityHashMap<>();
    private int missing;
    private int cuts;

    /** A part that is cut. */
    private static final class Part {
        private final int cut;
        private final Site site;
        private final int at;
        private int team;
        private boolean neck;
        /** Number of the flow once both parts are there. */
        private int flow = -1;

        Part(int cut, Site site, int at) {
            this.cut = cut;
            this.site = site;
            this.at = at;
        }

        int supply() {
            return site.menu().supply()[at];
        }
    }

    /** @param among bundles that may be cut */
    PriceDive(RackModel model, PriceBound pricing, BitSet among) {
        this.model = model;
        this.pricing = pricing;
        for (int s = 0; s < model.supplies; s++) {
            asNeck.add(new ArrayList<>());
            asHead.add(new ArrayList<>());
            openNecks.add(new ArrayList<>());
            openHeads.add(new ArrayList<>());
        }
        for (int i = 0; i < model.flows.size(); i++) {
            asNeck.get(model.flows.get(i).neckSupply()).add(i);
            asHead.get(model.flows.get(i).headSupply()).add(i);
        }
        wanted = new int[model.teams.size()];
        for (Team t : model.teams) {
            wanted[t.index()] = t.quantity();
            missing += 2 * t.quantity();
        }
        dear = new long[model.flows.size()];
        left = new int[model.bundles.size()];
        model.bundles.forEach(b -> left[b.index()] = among.get(b.index()) ? b.count() : 0);
    }

    /**
     * The plan that prices lead to; it may fill less than could be filled. To be asked for once.
     *
     * @param begin cut before anything else where their parts are wanted, those of one piece together
     */
    CutPlan plan(Prices prices, List<SiteLayout> begin, SearchClock clock) {
        for (int i = 0; i < dear.length; i++) {
            Flow f = model.flows.get(i);
            dear[i] = Math.max(
                    0,
                    prices.supply()[f.neckSupply()]
                            + prices.supply()[f.headSupply()]
                            - model.teams.get(f.team()).weight() * prices.filled());
        }
        Map<Integer, List<SiteLayout>> byPrepared = new LinkedHashMap<>();
        begin.forEach(x -> byPrepared
                .computeIfAbsent(x.site.prepared(), k -> new ArrayList<>())
                .add(x));
        byPrepared.forEach((r, layouts) -> take(new Offer(model.prepared.get(r), onePerSegment(layouts), 0)));
        boolean goesOn = true;
        while (goesOn && missing > 0 && !clock.over()) {
            int[] limit = new int[model.supplies];
            Prices now = new Prices(prices.level(), values(prices, limit), 0);
            List<Offer> offers = pricing.offers(now, limit, left);
            int quota = Math.max(AT_LEAST, missing / ONE_IN);
            goesOn = false;
            for (int i = 0; i < offers.size() && quota > 0; i++) {
                int cut = take(offers.get(i));
                quota -= cut;
                goesOn |= cut > 0;
            }
        }
        return write();
    }

    private static List<SiteLayout> onePerSegment(List<SiteLayout> layouts) {
        Map<Integer, SiteLayout> bySite = new LinkedHashMap<>();
        layouts.forEach(x -> bySite.putIfAbsent(x.site.index(), x));
        return List.copyOf(bySite.values());
    }

    /** What a part of each supply is worth now, and how many can be used. */
    private long[] values(Prices prices, int[] limit) {
        long[] value = new long[model.supplies];
        Arrays.fill(value, Long.MIN_VALUE);
        for (int i = 0; i < dear.length; i++) {
            Flow f = model.flows.get(i);
            see(value, limit, f.neckSupply(), openHeads.get(f.headSupply()), i);
            see(value, limit, f.headSupply(), openNecks.get(f.neckSupply()), i);
        }
        for (int s = 0; s < value.length; s++) {
            value[s] = limit[s] == 0 ? 0 : Math.max(1, prices.supply()[s] + value[s]);
        }
        return value;
    }

    private void see(long[] value, int[] limit, int supply, List<Part> others, int flow) {
        int team = model.flows.get(flow).team();
        int closes = 0;
        for (Part p : others) {
            closes += p.team == team ? 1 : 0;
        }
        if (closes > 0) {
            value[supply] = 0;
        } else if (wanted[team] > 0) {
            value[supply] = Math.max(value[supply], -dear[flow]);
        }
        limit[supply] += closes + wanted[team];
    }

    /** Cuts what is offered when all its parts can be used; how many these are. */
    private int take(Offer offer) {
        if (left[offer.prepared().bundle()] == 0) {
            return 0;
        }
        List<Part> taken = new ArrayList<>();
        for (SiteLayout x : offer.layouts()) {
            for (int i = 0; i < x.at.length; i++) {
                for (int c = 0; c < x.count[i]; c++) {
                    Part part = new Part(cuts, x.site, x.at[i]);
                    if (!close(part) && !begin(part)) {
                        undo(taken);
                        return 0;
                    }
                    taken.add(part);
                }
            }
        }
        parts.addAll(taken);
        left[offer.prepared().bundle()]--;
        cuts++;
        missing -= taken.size();
        return taken.size();
    }

    private boolean close(Part part) {
        for (int i : asHead.get(part.supply())) {
            Flow f = model.flows.get(i);
            if (pairUp(openNecks.get(f.neckSupply()), f.team(), part, i)) {
                part.neck = false;
                return true;
            }
        }
        for (int i : asNeck.get(part.supply())) {
            Flow f = model.flows.get(i);
            if (pairUp(openHeads.get(f.headSupply()), f.team(), part, i)) {
                part.neck = true;
                return true;
            }
        }
        return false;
    }

    private boolean pairUp(List<Part> waiting, int team, Part part, int flow) {
        for (int k = 0; k < waiting.size(); k++) {
            Part other = waiting.get(k);
            if (other.team == team) {
                waiting.remove(k);
                other.flow = flow;
                part.flow = flow;
                part.team = team;
                partner.put(part, other);
                return true;
            }
        }
        return false;
    }

    private boolean begin(Part part) {
        int best = -1;
        for (List<Integer> flows : List.of(asNeck.get(part.supply()), asHead.get(part.supply()))) {
            for (int i : flows) {
                if (wanted[model.flows.get(i).team()] > 0 && (best < 0 || dear[i] < dear[best])) {
                    best = i;
                }
            }
        }
        if (best < 0) {
            return false;
        }
        Flow f = model.flows.get(best);
        part.team = f.team();
        part.neck = f.neckSupply() == part.supply();
        wanted[part.team]--;
        (part.neck ? openNecks : openHeads).get(part.supply()).add(part);
        return true;
    }

    private void undo(List<Part> taken) {
        for (int k = taken.size() - 1; k >= 0; k--) {
            Part part = taken.get(k);
            Part other = partner.remove(part);
            if (other == null) {
                (part.neck ? openNecks : openHeads).get(part.supply()).remove(part);
                wanted[part.team]++;
            } else {
                other.flow = -1;
                (other.neck ? openNecks : openHeads).get(other.supply()).add(other);
            }
        }
    }

    private CutPlan write() {
        int[] flows = new int[model.flows.size()];
        // By cut, then segment: counts by position in the segment's menu.
        Map<Integer, Map<Site, TreeMap<Integer, Integer>>> byCut = new LinkedHashMap<>();
        for (Part p : parts) {
            if (p.flow < 0) {
                continue;
            }
            if (p.neck) {
                flows[p.flow]++;
            }
            byCut.computeIfAbsent(p.cut, k -> new LinkedHashMap<>())
                    .computeIfAbsent(p.site, k -> new TreeMap<>())
                    .merge(p.at, 1, Integer::sum);
        }
        Map<SiteLayout, Integer> layouts = new LinkedHashMap<>();
        int[] prepared = new int[model.prepared.size()];
        for (Map<Site, TreeMap<Integer, Integer>> cut : byCut.values()) {
            cut.forEach((site, counts) -> layouts.merge(
                    new SiteLayout(
                            site,
                            counts.keySet().stream().mapToInt(Integer::intValue).toArray(),
                            counts.values().stream().mapToInt(Integer::intValue).toArray()),
                    1,
                    Integer::sum));
            prepared[cut.keySet().iterator().next().prepared()]++;
        }
        return PlanWriter.write(model, new Choice(layouts, prepared, flows));
    }
}
