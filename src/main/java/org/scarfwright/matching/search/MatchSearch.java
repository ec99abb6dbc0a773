package org.scarfwright.matching.search;

import java.time.Duration;
import java.util.function.BooleanSupplier;

/** Finds the best plan. An implementation is deterministic for the same problem unless time runs out. */
public interface MatchSearch {
    /**
     * @param limit wall time after which the best plan so far is returned with its bound
     * @param cancelled asked often; true stops the search, which keeps the best so far
     */
    SearchResult solve(SearchProblem problem, Duration limit, BooleanSupplier cancelled);
}
