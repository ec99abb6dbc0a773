package org.scarfwright.ledger;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/**
 * What became of the wood that was cut and scrapped, added up.
 *
 * <p>Input is what was taken from pieces: what stays under a piece's own code was not used and does not count. An entry that was
 * taken back counts as if it had never been; one that was made again counts on the day it was first made. A part that is written
 * off later stops being a part, and starts being spoilt, on the day it is written off. Wood that is sold as it is does not count.
 */
public interface Yield {
    /** How many weeks or months the moving median looks at. Choice of this program. */
    int MEDIAN_OF = 5;

    /** How many cuts the comparison with the plan holds, the newest ones. */
    int MOST_DOTS = 300;

    /** Rows on one page at most. */
    int LARGEST_PAGE = 500;

    /** What the lines are of. */
    enum By {
        WEEK("Week"),
        MONTH("Month"),
        WOOD("Wood"),
        LOT("Lot"),
        DESIGN("Design"),
        PERSON("Person");

        private final String title;

        By(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<By> ofWord(String word) {
            return Stream.of(values())
                    .filter(b -> b.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                    .findFirst();
        }
    }

    /**
     * @param from first day on the shop's clock; empty for all from the beginning
     * @param to last day; empty for all until now
     */
    record Question(
            By by, @Nullable LocalDate from, @Nullable LocalDate to) {}

    Report report(Question question);

    /**
     * Which rows.
     *
     * @param key of a line; empty for all lines
     * @param besidePlan only what a plan said something of, and with it what a plan said would become this figure and did not
     * @param entry only those of one entry; empty for all
     */
    record Wanted(
            Question question,
            @Nullable String key,
            YieldFigure figure,
            boolean besidePlan,
            @Nullable Long entry) {
        /** All rows behind a figure. */
        public Wanted(Question question, @Nullable String key, YieldFigure figure) {
            this(question, key, figure, false, null);
        }
    }

    /**
     * What a figure was added up from, the newest first.
     *
     * @param page counted from 1; a page past the end is the last one
     * @param size 1 to {@link #LARGEST_PAGE}
     */
    Rows rows(Wanted wanted, int page, int size);

    /** The same on one page, however long: handed on one by one, all as they were at one moment. */
    void each(Wanted wanted, Consumer<Row> taker);

    /**
     * @param lines weeks and months in their order, everything else by name
     * @param total of all lines
     * @param taken what pieces lost in the same entries, from their sizes and not from what they became
     * @param trend by week, or by month where the lines are months; periods without cuts are left out
     * @param dots cuts that had a plan, in their order
     * @param necks cost of wood by design
     */
    record Report(
            Question question,
            List<Line> lines,
            YieldSums total,
            Volume taken,
            List<Period> trend,
            List<Dot> dots,
            List<NeckCost> necks) {
        public Report {
            lines = List.copyOf(lines);
            trend = List.copyOf(trend);
            dots = List.copyOf(dots);
            necks = List.copyOf(necks);
        }

        public boolean closes() {
            return taken.equals(total.of(YieldFigure.INPUT));
        }
    }

    /** @param key names the line in addresses; empty for wood that is of no lot, or cut for no design */
    record Line(String key, String title, YieldSums sums) {}

    /**
     * @param place weeks or months since the first one, so that a gap in time is a gap in the drawing
     * @param median of the net yields of this period and those before it, at most {@link #MEDIAN_OF} that have one
     */
    record Period(String key, long place, OptionalDouble netYield, OptionalDouble median) {}

    /** A cut: waste the plan foresaw, and waste there was with what was unexplained. */
    record Dot(long entry, Volume planned, Volume real) {}

    /**
     * Cost of the wood of a design's necks of which both parts are cut, spoilt parts with them; a neck counts on the day its last
     * part was cut.
     *
     * @param necks that have a cost
     * @param unknown necks with wood of which nobody knows what it cost
     * @param mean rounded to the nearest hundredth; empty like the others when no neck has a cost
     */
    record NeckCost(
            String design,
            int necks,
            int unknown,
            Money sum,
            @Nullable Money mean,
            @Nullable Money least,
            @Nullable Money most) {}

    /**
     * @param title of the line; empty for all
     * @param sum over all pages: of what was asked for beside its plan, what was really recorded of it
     * @param planned what the plans said of it, over all pages
     */
    record Rows(Optional<String> title, List<Row> rows, Volume sum, Volume planned, Place place) {
        public Rows {
            rows = List.copyOf(rows);
        }

        /** Which of how many pages, and how many rows on all of them. */
        public record Place(int page, int pages, long total) {}

        public int page() {
            return place.page();
        }

        public int pages() {
            return place.pages();
        }

        public long total() {
            return place.total();
        }
    }

    /**
     * @param volume of the outcome
     * @param counted of it in this figure and line: less than the volume where several designs share it, nothing of a spoilt part
     *     that was planned to be one
     * @param planned of this figure and line; empty where no plan said anything
     */
    record Row(
            long entry,
            Instant at,
            String who,
            String piece,
            YieldFigure became,
            String of,
            Volume volume,
            Volume counted,
            @Nullable Volume planned) {}
}
