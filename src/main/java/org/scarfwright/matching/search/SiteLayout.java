package org.scarfwright.matching.search;

import java.util.Arrays;
import org.scarfwright.matching.search.RackModel.Site;

/**
 * How many parts of each kind lie on one segment: a column of the master program. Two layouts are equal when they put the same
 * counts on the same site.
 */
final class SiteLayout {
    final Site site;
    /** Positions in the site's kinds, ascending. */
    final int[] at;
    /** How many parts of each, at least 1. */
    final int[] count;
    /** Value of the whole segment as a rest less the value of the rest that is left. */
    final long lossCents;

    final long planedMm3;
    /** Distinct set-ups of the bevels. */
    final int[] setUps;

    SiteLayout(Site site, int[] at, int[] count) {
        this.site = site;
        this.at = at;
        this.count = count;
        long used = 0;
        long parts = 0;
        int[] uses = new int[at.length];
        int distinct = 0;
        for (int i = 0; i < at.length; i++) {
            used += count[i] * site.menu().shortUm()[at[i]];
            parts += count[i];
            if (i + 1 == at.length
                    || site.menu().run()[at[i + 1]] != site.menu().run()[at[i]]) {
                used += (site.menu().alone()[at[i]] ? parts : (parts + 1) / 2) * site.cutUm(at[i]);
                parts = 0;
                int setUp = site.preparation().setUp()[site.menu().angle()[at[i]]];
                if (Arrays.stream(uses, 0, distinct).noneMatch(u -> u == setUp)) {
                    uses[distinct++] = setUp;
                }
            }
        }
        long rest = site.rule().restUm(used);
        lossCents = site.rule().restCents(site.lengthUm()) - site.rule().restCents(rest);
        planedMm3 = site.preparation().planedMm3(site.lengthUm() - rest);
        setUps = Arrays.copyOf(uses, distinct);
    }

    int kind(int i) {
        return site.menu().kinds()[at[i]];
    }

    int supply(int i) {
        return site.menu().supply()[at[i]];
    }

    boolean uses(int setUp) {
        for (int u : setUps) {
            if (u == setUp) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SiteLayout o
                && site.index() == o.site.index()
                && Arrays.equals(at, o.at)
                && Arrays.equals(count, o.count);
    }

    @Override
    public int hashCode() {
        return (site.index() * 31 + Arrays.hashCode(at)) * 31 + Arrays.hashCode(count);
    }
}
