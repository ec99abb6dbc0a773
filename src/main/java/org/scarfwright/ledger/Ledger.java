package org.scarfwright.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
     * The newest acts.
     *
     * @param pieceCode only acts on this piece; empty for all
     * @param size acts at most, 1 to {@link #LARGEST_PAGE}
     */
    ActList newest(@Nullable String pieceCode, int size);

    /**
     * Acts that stand next to one of them, so that a page deep in a long ledger is found as fast as the first.
     *
     * @param pieceCode only acts on this piece; empty for all
     * @param from where to go from; where nothing newer fills a page, the newest are given
     * @param size acts at most, 1 to {@link #LARGEST_PAGE}
     */
    ActList acts(@Nullable String pieceCode, From from, int size);

    /** The place from which a day and everything before it is older; empty when nothing came after that day. */
    Optional<Spot> after(LocalDate day);

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

    /** Where an act stands: number of its entry and its place in it; written 57.2, or 57 for the first of its entry. */
    record Spot(long entry, int position) {
        private static final Pattern FORM = Pattern.compile("([1-9]\\d{0,17})(?:\\.([1-9]\\d{0,8}))?");

        public static Optional<Spot> read(String text) {
            Matcher m = FORM.matcher(text.strip());
            return m.matches()
                    ? Optional.of(
                            new Spot(Long.parseLong(m.group(1)), m.group(2) == null ? 1 : Integer.parseInt(m.group(2))))
                    : Optional.empty();
        }

        @Override
        public String toString() {
            return position == 1 ? String.valueOf(entry) : entry + "." + position;
        }
    }

    /** @param older away from now; else toward it */
    record From(Spot spot, boolean older) {}

    /**
     * Some acts, the newest first.
     *
     * @param total acts there are, shown or not
     * @param newer where newer ones begin; empty when there are none
     * @param older where older ones begin; empty when there are none
     */
    record ActList(
            List<Act> acts,
            long total,
            @Nullable Spot newer,
            @Nullable Spot older) {
        public ActList {
            acts = List.copyOf(acts);
        }
    }
}
