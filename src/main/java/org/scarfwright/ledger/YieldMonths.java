package org.scarfwright.ledger;

import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.scarfwright.ledger.Yield.Question;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Takes days apart into whole months, of which sums are kept, and the days beside them. */
@Repository
class YieldMonths {
    private static final LocalDate FIRST = LocalDate.of(1, 1, 1);
    private static final LocalDate LAST = LocalDate.of(9999, 12, 31);

    private final JdbcClient jdbc;

    YieldMonths(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Days from one to another, both with them. */
    record Days(LocalDate first, LocalDate last) {
        static Days of(Question question) {
            return new Days(
                    Objects.requireNonNullElse(question.from(), FIRST),
                    Objects.requireNonNullElse(question.to(), LAST));
        }

        boolean isEmpty() {
            return first.isAfter(last);
        }
    }

    /**
     * Whole months, and the days beside them.
     *
     * @param all nothing was ever cut outside of them
     */
    record Months(Days whole, List<Days> parts, boolean all) {}

    /** A month of which nothing was cut outside the days asked for is a whole one. */
    Months in(Days days) {
        Optional<LocalDate> earliest = end("begins");
        if (earliest.isEmpty()) {
            return new Months(days, List.of(), true);
        }
        LocalDate latest = end("begins desc").orElse(earliest.get());
        LocalDate from = days.first().isAfter(earliest.get())
                ? days.first().minusDays(1).with(TemporalAdjusters.firstDayOfNextMonth())
                : earliest.get().withDayOfMonth(1);
        LocalDate to = days.last().isBefore(latest)
                ? days.last()
                        .plusDays(1)
                        .with(TemporalAdjusters.firstDayOfMonth())
                        .minusDays(1)
                : latest.with(TemporalAdjusters.lastDayOfMonth());
        Days whole = new Days(from, to);
        List<Days> parts = whole.isEmpty()
                ? List.of(days)
                : List.of(new Days(days.first(), from.minusDays(1)), new Days(to.plusDays(1), days.last()));
        return new Months(
                whole,
                parts.stream()
                        .filter(d -> !d.isEmpty()
                                && !d.first().isAfter(latest)
                                && !d.last().isBefore(earliest.get()))
                        .toList(),
                !days.first().isAfter(earliest.get()) && !days.last().isBefore(latest));
    }

    private Optional<LocalDate> end(String order) {
        return jdbc.sql("select begins from yield_sum where by_what = 'DAY' order by " + order + " limit 1")
                .query(LocalDate.class)
                .optional();
    }
}
