package org.scarfwright.matching.search;

import java.util.Arrays;
import org.scarfwright.matching.search.RackModel.Menu;
import org.scarfwright.matching.search.RackModel.Site;

/**
 * The layouts worth having on segments that offer the same parts under the same cuts, whatever their lengths: those no other
 * beats by taking no more length for no less worth. One list then prices every such segment of a rack, because what is left of
 * a segment is never worth less when less of it is used.
 *
 * <p>Parts are added one by one, kind after kind, each kind as often as the orders can take; kinds that share a bevel pay for a
 * cut with every first of two. Two lists are kept meanwhile, for an even and an odd number of parts of the angle. Lengths are
 * exact. That kinds of one line also share a limit is not looked at: the best found is therefore never too dear, and
 * {@link #keepsLimits} tells whether a layout may really be cut.
 *
 * <p>A kind is left out where other kinds of its angle, no longer and worth no less, may together be cut as often as parts fit
 * at all: in any layout one of them can take its place.
 *
 * <p>Source: lists of undominated states after Nemhauser and Ullmann, 1969 (cited from memory).
 */
final class LayoutFrontier {
    /** Index of the layout without parts. */
    static final int NOTHING = 0;

    private final RackModel model;
    private Menu menu;
    private int[] limit = new int[0];
    private int nodes;
    private long[] used = new long[1024];
    private long[] worth = new long[1024];
    private int[] before = new int[1024];
    private int[] part = new int[1024];

    private States done = new States();
    private States even = new States();
    private States odd = new States();
    private States spare = new States();
    private States other = new States();

    /** States in ascending order of length and of worth. */
    private static final class States {
        private int[] at = new int[256];
        private int size;

        void add(int node) {
            if (size == at.length) {
                at = Arrays.copyOf(at, 2 * size);
            }
            at[size++] = node;
        }
    }

    LayoutFrontier(RackModel model) {
        this.model = model;
        menu = new Menu(-1, new int[0], new int[0], new int[0], new long[0], new int[0], new boolean[0]);
    }

    /**
     * Makes the list.
     *
     * @param like a segment of the sort
     * @param roomUm length and a square cut of the longest such segment
     * @param most by supply: most parts of it worth cutting
     */
    void make(Site like, long roomUm, Prices prices, int[] most) {
        menu = like.menu();
        limit = most;
        nodes = 0;
        done.size = 0;
        done.add(node(0, 0, -1, -1));
        int n = menu.size();
        for (int from = 0; from < n; ) {
            int to = from + 1;
            while (to < n && menu.run()[to] == menu.run()[from]) {
                to++;
            }
            run(like, from, to, roomUm, prices);
            from = to;
        }
    }

    private void run(Site like, int from, int to, long roomUm, Prices prices) {
        boolean alone = menu.alone()[from];
        long cut = like.cutUm(from);
        even.size = 0;
        for (int i = 0; i < done.size; i++) {
            even.add(done.at[i]);
        }
        odd.size = 0;
        for (int i = from; i < to; i++) {
            long value = prices.supply()[menu.supply()[i]];
            int most = value <= 0 || beaten(i, from, to, roomUm, prices) ? 0 : fitting(i, cut, roomUm);
            for (int c = 0; c < most; c++) {
                if (alone) {
                    merge(even, even, i, menu.shortUm()[i] + cut, roomUm, value, spare);
                    States s = even;
                    even = spare;
                    spare = s;
                    continue;
                }
                merge(even, odd, i, menu.shortUm()[i], roomUm, value, spare);
                merge(odd, even, i, menu.shortUm()[i] + cut, roomUm, value, other);
                States e = even;
                States o = odd;
                even = spare;
                odd = other;
                spare = e;
                other = o;
            }
        }
        merge(even, odd, -1, 0, roomUm, 0, done);
    }

    private int fitting(int i, long cut, long roomUm) {
        int count = 0;
        long length = 0;
        while (count < limit[menu.supply()[i]]) {
            length += menu.shortUm()[i] + (menu.alone()[i] || count % 2 == 0 ? cut : 0);
            if (length > roomUm) {
                break;
            }
            count++;
        }
        return count;
    }

    /** Kinds of the run, no longer and worth no less, leave no layout that needs this one. */
    private boolean beaten(int i, int from, int to, long roomUm, Prices prices) {
        long value = prices.supply()[menu.supply()[i]];
        long length = menu.shortUm()[i];
        long most = 0;
        long shortest = length;
        for (int j = from; j < to; j++) {
            long v = prices.supply()[menu.supply()[j]];
            long l = menu.shortUm()[j];
            boolean same = v == value && l == length;
            if (j != i && l <= length && v >= value && (!same || j < i)) {
                most += limit[menu.supply()[j]];
                shortest = Math.min(shortest, l);
            }
        }
        return most > 0 && most >= roomUm / Math.max(1, shortest);
    }

    /** States of one list, and those of another with one part more. */
    private void merge(States stay, States go, int item, long length, long roomUm, long value, States into) {
        into.size = 0;
        long bestWorth = Long.MIN_VALUE;
        int a = 0;
        int b = 0;
        while (true) {
            int goes = b < go.size ? go.at[b] : -1;
            if (goes >= 0 && used[goes] + length > roomUm) {
                goes = -1;
            }
            int stays = a < stay.size ? stay.at[a] : -1;
            if (goes < 0 && stays < 0) {
                return;
            }
            boolean first = goes < 0
                    || (stays >= 0
                            && (used[stays] < used[goes] + length
                                    || (used[stays] == used[goes] + length && worth[stays] >= worth[goes] + value)));
            if (first) {
                a++;
                if (worth[stays] > bestWorth) {
                    bestWorth = worth[stays];
                    into.add(stays);
                }
            } else {
                b++;
                if (worth[goes] + value > bestWorth) {
                    bestWorth = worth[goes] + value;
                    into.add(item < 0 ? goes : node(used[goes] + length, bestWorth, goes, item));
                }
            }
        }
    }

    private int node(long length, long value, int from, int item) {
        if (nodes == used.length) {
            int size = 2 * nodes;
            used = Arrays.copyOf(used, size);
            worth = Arrays.copyOf(worth, size);
            before = Arrays.copyOf(before, size);
            part = Arrays.copyOf(part, size);
        }
        used[nodes] = length;
        worth[nodes] = value;
        before[nodes] = from;
        part[nodes] = item;
        return nodes++;
    }

    int size() {
        return done.size;
    }

    /** Length the layout takes, its last square cut included. */
    long usedUm(int index) {
        return used[done.at[index]];
    }

    /** What its parts are worth. */
    long worth(int index) {
        return worth[done.at[index]];
    }

    /** No line is asked for more parts than it can take. */
    boolean keepsLimits(int index) {
        int[] counts = counts(index);
        for (int i = 0; i < counts.length; i++) {
            int role = model.kindRole[menu.kinds()[i]];
            int sum = 0;
            for (int j = 0; counts[i] > 0 && j < counts.length; j++) {
                sum += model.kindRole[menu.kinds()[j]] == role ? counts[j] : 0;
            }
            if (sum > model.roleLimit[role]) {
                return false;
            }
        }
        return true;
    }

    private int[] counts(int index) {
        int[] counts = new int[menu.size()];
        for (int n = done.at[index]; part[n] >= 0; n = before[n]) {
            counts[part[n]]++;
        }
        return counts;
    }

    /** The layout on a segment of the sort; the segment may offer fewer of the parts, but those of the layout. */
    SiteLayout on(Site site, int index) {
        int[] counts = counts(index);
        int distinct = 0;
        int[] at = new int[counts.length];
        int[] count = new int[counts.length];
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                at[distinct] = i;
                count[distinct++] = counts[i];
            }
        }
        return new SiteLayout(site, Arrays.copyOf(at, distinct), Arrays.copyOf(count, distinct));
    }
}
