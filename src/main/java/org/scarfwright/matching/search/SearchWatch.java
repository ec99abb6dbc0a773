package org.scarfwright.matching.search;

/** Who looks after a search: may stop it and is told how far it has come. Both are called often and return at once. */
@FunctionalInterface
public interface SearchWatch {
    /** True stops the search, which keeps the best so far. Never goes back to false. */
    boolean stopped();

    /** Something better was found, or something was proved; called on the thread of the search. */
    default void progress(SearchProgress progress) {}
}
