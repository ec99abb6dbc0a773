package org.scarfwright.rack;

import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.PieceTable.Text;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/**
 * What people look for pieces by, kept in memory: no index of a database finds a word inside a text, and a hundred thousand texts take
 * it half a second. Nothing changes a piece without an entry in the ledger, so the ledger tells which pieces to read anew, and its
 * last hash whether this is still the ledger they were read by. Belongs into its caller's transaction.
 */
@Component
class PieceTexts {
    private static final int MOST_WORDS = 8;

    /** Where more were touched, reading all of them takes no longer. */
    private static final int MOST_ANEW = 5_000;

    private final PieceTable table;
    private final SpeciesCatalog woods;
    private final ObjectProvider<PieceHistory> history;
    private final Map<String, Text> texts = new HashMap<>();
    private PieceHistory.@Nullable Stamp read;

    /** The ledger is asked for late: it knows the rack. */
    PieceTexts(PieceTable table, SpeciesCatalog woods, ObjectProvider<PieceHistory> history) {
        this.table = table;
        this.woods = woods;
        this.history = history;
    }

    /** Ids of the pieces the filter lets through, in order; what they can be is not looked at. */
    synchronized List<Long> found(PieceFilter filter, PieceFilter.Sort sort) {
        bringUpToDate();
        Predicate<Text> wanted = wanted(filter);
        return texts.values().stream()
                .filter(wanted)
                .sorted(order(sort))
                .map(Text::id)
                .toList();
    }

    /** Codes a person may mean; see {@link SpokenCodes}. */
    synchronized List<String> meant(String said) {
        bringUpToDate();
        Set<String> alike = SpokenCodes.alike(said);
        return SpokenCodes.meant(
                said,
                texts.values().stream()
                        .filter(t -> alike.contains(t.alike()))
                        .map(Text::code)
                        .sorted()
                        .toList());
    }

    /** Codes by ids, of all pieces the rack ever had. */
    synchronized Map<Long, String> codes() {
        bringUpToDate();
        Map<Long, String> codes = new HashMap<>(texts.size() * 2);
        texts.values().forEach(t -> codes.put(t.id(), t.code()));
        return codes;
    }

    private void bringUpToDate() {
        PieceHistory ledger = history.getObject();
        PieceHistory.Stamp now = ledger.stamp();
        if (now.equals(read)) {
            return;
        }
        Optional<Set<String>> touched = read == null ? Optional.empty() : ledger.touchedSince(read);
        // Were reading to fail half-way, all would have to be read again.
        read = null;
        if (touched.filter(codes -> codes.size() <= MOST_ANEW).isPresent()) {
            texts.keySet().removeAll(touched.get());
            keep(table.texts(touched.get()));
        } else {
            texts.clear();
            keep(table.texts());
        }
        read = now;
    }

    private void keep(Collection<Text> anew) {
        anew.forEach(t -> texts.put(t.code(), t));
    }

    private Predicate<Text> wanted(PieceFilter filter) {
        Predicate<Text> wanted = t -> atLeast(t.length(), filter.length())
                && atLeast(t.width(), filter.width())
                && atLeast(t.thickness(), filter.thickness());
        if (filter.state() != null) {
            wanted = wanted.and(t -> t.state() == filter.state());
        }
        if (filter.place() != null) {
            String place = PieceTable.key(filter.place());
            wanted = wanted.and(t -> t.place().equals(place));
        }
        String wood = filter.wood();
        if (wood != null) {
            wanted = wanted.and(t -> t.woods().contains(wood));
        }
        int words = 0;
        for (String word : filter.words().strip().split("\\s+", -1)) {
            if (!word.isEmpty() && words++ < MOST_WORDS) {
                wanted = wanted.and(holding(word.toUpperCase(Locale.ROOT)));
            }
        }
        return wanted;
    }

    private static boolean atLeast(long um, @Nullable Length least) {
        return least == null || um >= least.um();
    }

    private Predicate<Text> holding(String word) {
        Set<String> named = new HashSet<>();
        for (Species wood : woods.all()) {
            if (wood.commonName().toUpperCase(Locale.ROOT).contains(word)) {
                named.add(wood.id());
            }
        }
        return t -> t.words().contains(word) || (!named.isEmpty() && !Collections.disjoint(named, t.woods()));
    }

    private static Comparator<Text> order(PieceFilter.Sort sort) {
        Comparator<Text> byCode = Comparator.comparing(Text::order);
        return switch (sort) {
            case CODE -> byCode;
            case LONGEST -> Comparator.comparing(Text::length).reversed().thenComparing(byCode);
            case WIDEST -> Comparator.comparing(Text::width).reversed().thenComparing(byCode);
            case THICKEST -> Comparator.comparing(Text::thickness).reversed().thenComparing(byCode);
            case NEWEST -> Comparator.comparing(Text::since).reversed().thenComparing(byCode);
            case OLDEST -> Comparator.comparing(Text::since).thenComparing(byCode);
        };
    }
}
