package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.scarfwright.matching.search.RackModel.Site;

/**
 * Where one part by itself is cut cheapest: for every supply the few segments that give one of it for the least book value, when
 * nothing else is cut from the piece. On a rack of many thousand pieces most are never a good choice for anything; these are the
 * ones to begin with.
 *
 * <p>Source: derived here.
 */
final class Sellers {
    /** Segments remembered for one supply. */
    private static final int KEPT = 40;
    /** Every supply has so many pieces on the short list, and every kind so many for each part the orders can take, and more. */
    private static final int OF_A_SUPPLY = 3;

    private static final int FOR_A_PART = 3;
    private static final int AT_LEAST = 20;

    private final RackModel model;
    /** By supply: triples of cost, segment and position in its menu, cheapest first. */
    private final List<long[]> cheapest = new ArrayList<>();

    private final int[] size;

    Sellers(RackModel model) {
        this.model = model;
        size = new int[model.supplies];
        for (int s = 0; s < size.length; s++) {
            cheapest.add(new long[3 * 4]);
        }
        for (Site site : model.sites) {
            long base = model.prepared.get(site.prepared()).baseCents()
                    + site.rule().restCents(site.lengthUm());
            for (int i = 0; i < site.menu().size(); i++) {
                long rest = site.rule().restUm(site.menu().shortUm()[i] + site.cutUm(i));
                offer(site.menu().supply()[i], base - site.rule().restCents(rest), site.index(), i);
            }
        }
    }

    private void offer(int supply, long cents, int site, int at) {
        long[] of = cheapest.get(supply);
        int n = size[supply];
        if (n == KEPT && cents >= of[3 * (n - 1)]) {
            return;
        }
        if (n < KEPT) {
            if (3 * n == of.length) {
                of = Arrays.copyOf(of, 2 * of.length);
                cheapest.set(supply, of);
            }
            size[supply] = ++n;
        }
        int to = n - 1;
        for (; to > 0 && of[3 * (to - 1)] > cents; to--) {
            System.arraycopy(of, 3 * (to - 1), of, 3 * to, 3);
        }
        of[3 * to] = cents;
        of[3 * to + 1] = site;
        of[3 * to + 2] = at;
    }

    /** For every supply the layouts of one part where it is cheapest, so many at most. */
    List<SiteLayout> lone(int most) {
        List<SiteLayout> result = new ArrayList<>();
        for (int s = 0; s < size.length; s++) {
            long[] of = cheapest.get(s);
            for (int i = 0; i < Math.min(most, size[s]); i++) {
                Site site = model.sites.get((int) of[3 * i + 1]);
                result.add(new SiteLayout(site, new int[] {(int) of[3 * i + 2]}, new int[] {1}));
            }
        }
        return result;
    }

    /** By kind: the supplies' sellers together, cheapest first, as pairs of cost and segment. */
    private List<List<long[]>> byKind() {
        List<List<long[]>> result = new ArrayList<>();
        for (int k = 0; k < model.kinds; k++) {
            result.add(new ArrayList<>());
        }
        for (int s = 0; s < size.length; s++) {
            long[] of = cheapest.get(s);
            for (int i = 0; i < size[s]; i++) {
                result.get(model.kindOfSupply[s]).add(new long[] {of[3 * i], of[3 * i + 1]});
            }
        }
        result.forEach(of -> of.sort(Arrays::compare));
        return result;
    }

    /**
     * By supply: twice what a part of the kind costs by itself on the last of some dozen segments; where there are fewer, twice
     * what the dearest part of all costs.
     */
    long[] prices() {
        List<List<long[]>> byKind = byKind();
        long dearest = 1;
        for (List<long[]> of : byKind) {
            dearest = Math.max(dearest, of.isEmpty() ? 1 : of.get(of.size() - 1)[0]);
        }
        long[] prices = new long[size.length];
        for (int s = 0; s < prices.length; s++) {
            List<long[]> of = byKind.get(model.kindOfSupply[s]);
            prices[s] = of.size() < KEPT ? 2 * dearest : Math.max(1, 2 * of.get(KEPT - 1)[0]);
        }
        return prices;
    }

    /** Bundles to begin with: enough for everything ordered, unless pieces that lend themselves to it are few. */
    BitSet bundles() {
        BitSet result = new BitSet();
        for (int s = 0; s < size.length; s++) {
            for (int i = 0; i < Math.min(OF_A_SUPPLY, size[s]); i++) {
                result.set(model.sites.get((int) cheapest.get(s)[3 * i + 1]).bundle());
            }
        }
        List<List<long[]>> byKind = byKind();
        for (int k = 0; k < byKind.size(); k++) {
            int most = FOR_A_PART * model.kindLimit[k] + AT_LEAST;
            BitSet own = new BitSet();
            int pieces = 0;
            for (long[] of : byKind.get(k)) {
                int b = model.sites.get((int) of[1]).bundle();
                if (pieces < most && !own.get(b)) {
                    own.set(b);
                    pieces += model.bundles.get(b).count();
                }
            }
            result.or(own);
        }
        return result;
    }
}
