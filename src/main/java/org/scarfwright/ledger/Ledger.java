package org.scarfwright.ledger;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.NotFoundException;

/** What happened, to be read. It grows by what the rooms do, and by taking back; nothing changes or removes an entry. */
public interface Ledger {
    /** How many acts a page holds at most. */
    int LARGEST_PAGE = 500;

    /** How many of the entries a person made last can be taken back. */
    int UNDOABLE = 50;

    /**
     * @param pieceCode only acts on this piece; empty for all
     * @param page counted from 1; a page past the end is the last one
     * @param size acts on a page, 1 to {@link #LARGEST_PAGE}
     */
    ActList acts(@Nullable String pieceCode, int page, int size);

    Optional<Entry> entry(long id);

    /** What the acts of each kind brought in and took out, in the order of the kinds; kept with every entry. */
    List<Balance.Line> lines();

    /** The same beside the pieces that are there: every piece is looked at, which takes a moment for a large rack. */
    Balance balance();

    /** Why an entry cannot be taken back now, as a sentence; empty when it can. */
    Optional<String> refusal(long id);

    /**
     * Takes an entry back, as an entry of its own: its pieces are put back to what they were before it, and pieces it brought
     * to the rack are taken away. Taking back a taking back does the thing again.
     *
     * @param who empty: whoever is signed in, or the shop
     * @param why in the person's own words; may be empty
     * @return the new entry
     * @throws NotFoundException when there is no such entry
     * @throws ConflictException when later entries build on it, or another reason stands against it
     */
    Entry undo(long id, String who, String why);

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
