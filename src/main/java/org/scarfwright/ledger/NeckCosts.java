package org.scarfwright.ledger;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Money;

/** Necks of which both parts are cut, one by one: the rows behind the cost of wood in a neck. */
public interface NeckCosts {
    /** Necks on one page at most. */
    int LARGEST_PAGE = 500;

    /** Which necks, by whether it is known what their wood cost. */
    enum Cost {
        ALL,
        KNOWN,
        UNKNOWN;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Cost> ofWord(String word) {
            return Stream.of(values())
                    .filter(c -> c.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                    .findFirst();
        }
    }

    /** Which come first. Necks of unknown cost come after the others where the cost decides. */
    enum First {
        NEWEST,
        LEAST,
        MOST;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<First> ofWord(String word) {
            return Stream.of(values())
                    .filter(f -> f.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                    .findFirst();
        }
    }

    /**
     * Which necks.
     *
     * @param design code of their design; empty for all designs
     * @param from first day their last part was cut on; empty for all from the beginning
     * @param to last day; empty for all until now
     */
    record Wanted(
            @Nullable String design,
            @Nullable LocalDate from,
            @Nullable LocalDate to,
            Cost cost,
            First first) {}

    /**
     * One page of them.
     *
     * @param page counted from 1; a page past the end is the last one
     * @param size 1 to {@link #LARGEST_PAGE}
     */
    Necks necks(Wanted wanted, int page, int size);

    /** All of them, handed on one by one, as they were at one moment. */
    void each(Wanted wanted, Consumer<Neck> taker);

    /**
     * A neck.
     *
     * @param cutOn the day its last part was cut on
     * @param cost of its wood, spoilt parts with it; empty where nobody knows what some of the wood cost
     */
    record Neck(
            Losses.Neck name,
            String design,
            LocalDate cutOn,
            @Nullable Money cost) {}

    /** @param sum of the known costs, over all pages */
    record Necks(List<Neck> necks, Money sum, int page, int pages, long total) {
        public Necks {
            necks = List.copyOf(necks);
        }
    }
}
