package org.scarfwright.matching.search;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.RackModel.Site;

/**
 * Every layout of one segment, and among them those that are cheap under given {@link Prices}.
 *
 * <p><b>Reduced cost.</b> A layout with counts c of kinds worth v, that leaves the rest r of a segment of length L, costs
 * {@code g = value(L) - value(r) - sum(c * v)} (times {@link Prices#ONE}; without the values of rests on the first level).
 *
 * <p><b>Bound.</b> Lengths are doubled so that half a cut is whole. A part is charged its short side and half of its cut (the
 * bevel and the square cut of its group); when an angle is left behind with an odd number of parts, the other half is charged
 * too. The table {@code most[i][b]} holds the highest worth of kinds i, i+1, … and the rest in b units of length, where parts
 * are charged whole units rounded down and the rest is taken at the unit's upper end: never too low. The walk over layouts
 * (kinds in ascending order, each repeated as often as it may) drops a branch when even this cannot reach the threshold, so
 * nothing below the threshold is lost, and what is visited is checked in exact lengths.
 *
 * <p>Source: derived here; knapsack pricing of cutting patterns after Gilmore and Gomory, 1961 (cited from memory).
 */
final class LayoutSpace {
    private static final int UNITS = 400;

    /** Says what to do with a layout that was found. */
    interface Visitor {
        /**
         * @param reduced its reduced cost
         * @return the threshold from here on
         */
        long visit(long reduced);
    }

    private final RackModel model;
    final Site site;
    private final int kinds;
    /** Doubled length of a part with half its cut, or the whole of it where it shares none. */
    private final long[] length2;
    /** Length of a cut, which is half of it doubled; 0 where it is not shared. */
    private final long[] half2;

    private final long unit2;
    private final long room2;

    private final int units;
    private final long[][] most;
    private final long[] worth;
    private long cent;

    private final int[] counts;
    private final int[] roleCounts;
    private int depth;
    private final int[] chosen;
    private long threshold;
    private @Nullable Visitor visitor;

    /** Room to reckon in, used by one segment after the other: a rack of thousands has no place for a table each. */
    static final class Desk {
        private long[][] most = new long[0][];
        private final int[] roleCounts;

        Desk(RackModel model) {
            roleCounts = new int[model.roleLimit.length];
        }

        private long[][] most(int rows, int length) {
            if (most.length < rows || most[0].length < length) {
                most = new long[Math.max(rows, most.length)][Math.max(length, 2 * UNITS)];
            }
            return most;
        }
    }

    /** @param desk used until the next segment takes it */
    LayoutSpace(RackModel model, Site site, Desk desk) {
        this.model = model;
        this.site = site;
        kinds = site.menu().size();
        length2 = new long[kinds];
        half2 = new long[kinds];
        for (int i = 0; i < kinds; i++) {
            half2[i] = site.menu().alone()[i] ? 0 : site.cutUm(i);
            length2[i] = 2 * site.menu().shortUm()[i] + (site.menu().alone()[i] ? 2 * site.cutUm(i) : half2[i]);
        }
        room2 = 2 * (site.lengthUm() + site.preparation().squareKerfUm());
        unit2 = Math.max(1, room2 / UNITS);
        units = (int) (room2 / unit2) + 1;
        most = desk.most(kinds + 1, units);
        worth = new long[kinds];
        counts = new int[kinds];
        roleCounts = desk.roleCounts;
        long shortest = Long.MAX_VALUE;
        for (long l : length2) {
            shortest = Math.min(shortest, l);
        }
        chosen = new int[(int) (room2 / Math.max(1, shortest)) + 1];
    }

    /** Sets what parts are worth and fills the table. */
    void price(Prices prices) {
        cent = prices.cent();
        for (int i = 0; i < kinds; i++) {
            worth[i] = prices.supply()[site.menu().supply()[i]];
        }
        long whole = site.rule().restCents(site.lengthUm());
        long kerf = site.preparation().squareKerfUm();
        for (int b = 0; b < units; b++) {
            long restUm = Math.min(site.lengthUm(), Math.max(0, ((b + 1) * unit2 - 1) / 2 - kerf));
            most[kinds][b] = cent == 0 ? 0 : cent * (site.rule().restCents(restUm) - whole);
        }
        for (int i = kinds - 1; i >= 0; i--) {
            fill(most[i], most[i + 1], i);
        }
    }

    private void fill(long[] row, long[] next, int i) {
        if (worth[i] <= 0) {
            System.arraycopy(next, 0, row, 0, units);
            return;
        }
        int step = (int) (length2[i] / unit2);
        int limit = model.kindLimit[site.menu().kinds()[i]];
        for (int b = 0; b < units; b++) {
            long best = next[b];
            int from = b - step;
            for (int c = 1; c <= limit && from >= 0; c++, from -= step) {
                best = Math.max(best, next[from] + c * worth[i]);
            }
            row[b] = best;
        }
    }

    /** The lowest reduced cost of a layout with at least one part; adds the layout that has it when it is below the limit. */
    long cheapest(long below, List<SiteLayout> into) {
        long[] best = {Long.MAX_VALUE};
        SiteLayout[] found = new SiteLayout[1];
        walk(Long.MAX_VALUE, reduced -> {
            best[0] = reduced;
            found[0] = current();
            return reduced - 1;
        });
        if (found[0] != null && best[0] < below) {
            into.add(found[0]);
        }
        return best[0];
    }

    /**
     * Adds every layout whose reduced cost is not above the threshold.
     *
     * @param limit most layouts to add
     * @return false when there are more, and the list is then no longer of use
     */
    boolean all(long upTo, int limit, List<SiteLayout> into) {
        int before = into.size();
        walk(upTo, reduced -> {
            into.add(current());
            return into.size() - before > limit ? Long.MIN_VALUE : upTo;
        });
        return into.size() - before <= limit;
    }

    private void walk(long upTo, Visitor v) {
        threshold = upTo;
        visitor = v;
        Arrays.fill(counts, 0);
        Arrays.fill(roleCounts, 0);
        depth = 0;
        step(0, room2, false, 0);
    }

    private boolean hopeless(int i, long left2, long value) {
        return left2 < 0 || (threshold != Long.MAX_VALUE && -(value + most[i][(int) (left2 / unit2)]) > threshold);
    }

    /**
     * Everything that can be added from kind {@code from} on.
     *
     * @param left2 doubled length left, half a cut charged for each part of the angle of {@code from}
     * @param odd that angle has an odd number of parts
     */
    private void step(int from, long left2, boolean odd, long value) {
        if (depth > 0) {
            long left = (left2 - (odd ? half2[from] : 0)) / 2;
            long rest = Math.max(0, left - site.preparation().squareKerfUm());
            long loss = cent == 0
                    ? 0
                    : cent
                            * (site.rule().restCents(site.lengthUm())
                                    - site.rule().restCents(rest));
            long reduced = loss - value;
            if (reduced <= threshold && visitor != null) {
                threshold = visitor.visit(reduced);
            }
        }
        long room = left2;
        boolean openOdd = odd;
        for (int i = from; i < kinds; i++) {
            if (i > from && site.menu().run()[i] != site.menu().run()[i - 1]) {
                if (openOdd) {
                    room -= half2[i - 1];
                }
                openOdd = false;
            }
            if (hopeless(i, room, value)) {
                return;
            }
            int kind = site.menu().kinds()[i];
            int role = model.kindRole[kind];
            if (counts[i] >= model.kindLimit[kind] || roleCounts[role] >= model.roleLimit[role]) {
                continue;
            }
            long after = room - length2[i];
            if (after - (openOdd ? 0 : half2[i]) < 0 || hopeless(i, after, value + worth[i])) {
                continue;
            }
            counts[i]++;
            roleCounts[role]++;
            chosen[depth++] = i;
            step(i, after, !openOdd, value + worth[i]);
            depth--;
            roleCounts[role]--;
            counts[i]--;
        }
    }

    private SiteLayout current() {
        int distinct = 0;
        int[] at = new int[depth];
        int[] count = new int[depth];
        for (int d = 0; d < depth; d++) {
            if (distinct > 0 && at[distinct - 1] == chosen[d]) {
                count[distinct - 1]++;
            } else {
                at[distinct] = chosen[d];
                count[distinct++] = 1;
            }
        }
        return new SiteLayout(site, Arrays.copyOf(at, distinct), Arrays.copyOf(count, distinct));
    }
}
