package org.scarfwright.matching.search;

import java.util.Map;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * How far a search has come.
 *
 * @param level the level it works on
 * @param necks necks the best plan so far makes
 * @param best what that plan is worth on every level; see {@link SearchResult.Level}
 * @param bounds what is proved so far, by level; a level nothing is known of is left out
 * @param seconds wall time since the search began
 */
public record SearchProgress(
        Measure level, int necks, Map<Measure, Long> best, Map<Measure, Long> bounds, double seconds) {
    public SearchProgress {
        best = Map.copyOf(best);
        bounds = Map.copyOf(bounds);
    }
}
