package org.scarfwright.matching.search;

import java.time.Duration;

/** Finds the best plan. An implementation is deterministic for the same problem unless time runs out. */
public interface MatchSearch {
    /**
     * @param limit wall time after which the best plan so far is returned with its bound
     * @param watch stops the search, which then keeps the best so far, and is told how it goes
     */
    SearchResult solve(SearchProblem problem, Duration limit, SearchWatch watch);
}
