package org.scarfwright.ledger;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What happened, to be read. Nothing here changes it: it grows by what the rooms do. */
public interface Ledger {
    /** How many acts a page holds at most. */
    int LARGEST_PAGE = 500;

    /**
     * @param pieceCode only acts on this piece; empty for all
     * @param page counted from 1; a page past the end is the last one
     * @param size acts on a page, 1 to {@link #LARGEST_PAGE}
     */
    ActList acts(@Nullable String pieceCode, int page, int size);

    Balance balance();

    /**
     * One page of acts, the newest first.
     *
     * @param page counted from 1
     * @param pages at least 1
     * @param total acts on all pages
     */
    record ActList(List<Act> acts, int page, int pages, long total) {
        public ActList {
            acts = List.copyOf(acts);
        }
    }
}
