package org.scarfwright.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Ledger.Spot;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.Yield.Row;
import org.scarfwright.ledger.Yield.Rows;
import org.scarfwright.ledger.Yield.Wanted;
import org.scarfwright.ledger.YieldKept.What;
import org.scarfwright.ledger.YieldMonths.Days;
import org.scarfwright.ledger.YieldMonths.Months;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Rows behind the figures, the newest first. How many there are and what they add up to stands in the sums of their days and
 * months, so that a page loads only the days or months it lies in.
 */
@Repository
class YieldRowTable {
    private static final int AT_ONCE = 1000;

    private final JdbcClient jdbc;
    private final YieldMonths months;

    YieldRowTable(JdbcClient jdbc, YieldMonths months) {
        this.jdbc = jdbc;
        this.months = months;
    }

    /** Days of which it is known how many rows they have and what those add up to. */
    private record Stretch(Days days, long count, Volume counted, Volume planned) {}

    /** The column a line of a report is named in. */
    static String column(By by) {
        return switch (by) {
            case WOOD -> "wood_key";
            case LOT -> "lot_code";
            case DESIGN -> "design_code";
            case PERSON -> "who";
            case WEEK, MONTH -> throw new IllegalArgumentException("A " + by.word() + " is some days.");
        };
    }

    Rows page(Wanted wanted, Optional<String> title, int page, int size) {
        List<Stretch> stretches = stretches(wanted);
        long total = stretches.stream().mapToLong(Stretch::count).sum();
        int pages = (int) Math.max(1, (total - 1) / size + 1);
        int shown = Math.max(1, Math.min(page, pages));
        long skip = (long) (shown - 1) * size;
        List<Row> rows = new ArrayList<>();
        for (Stretch stretch : stretches) {
            if (skip >= stretch.count()) {
                skip -= stretch.count();
            } else if (rows.size() < size) {
                load(wanted, stretch.days(), skip, size - rows.size(), rows::add);
                skip = 0;
            }
        }
        return new Rows(
                title,
                rows,
                stretches.stream().map(Stretch::counted).reduce(Volume.ZERO, Volume::plus),
                stretches.stream().map(Stretch::planned).reduce(Volume.ZERO, Volume::plus),
                new Rows.Place(shown, pages, total));
    }

    /** All of them, a month or a day at once in memory. */
    void each(Wanted wanted, Consumer<Row> taker) {
        for (Stretch stretch : stretches(wanted)) {
            load(wanted, stretch.days(), 0, stretch.count(), taker);
        }
    }

    private static What what(Wanted wanted) {
        By by = wanted.question().by();
        return wanted.key() == null && by != By.DESIGN ? What.DAY : What.of(by);
    }

    /** The newest first. An outcome that designs share is a row of each of them, so their own sums say how many there are. */
    private List<Stretch> stretches(Wanted wanted) {
        What what = what(wanted);
        Days asked = Days.of(wanted.question());
        List<Stretch> stretches = new ArrayList<>();
        if (wanted.entry() != null) {
            stretches.addAll(ofEntry(wanted, asked));
        } else if (what == What.DAY) {
            stretches.addAll(kept(wanted, asked));
        } else {
            Months in = months.in(asked);
            stretches.addAll(kept(wanted, in.whole()));
            in.parts().forEach(days -> stretches.add(counted(wanted, days)));
        }
        if (what == What.DAY && wanted.key() != null) {
            By by = wanted.question().by();
            stretches.removeIf(
                    s -> !wanted.key().equals(YieldCounting.period(by, s.days().first())));
        }
        stretches.sort(Comparator.comparing((Stretch s) -> s.days().first()).reversed());
        return stretches;
    }

    /** Nothing's name is in it where none fits, because no list may be empty in SQL. */
    private static List<String> became(Predicate<YieldFigure> which) {
        List<String> names = YieldFigure.became().stream()
                .filter(which)
                .map(YieldFigure::name)
                .toList();
        return names.isEmpty() ? List.of("") : names;
    }

    /** What wood became that is shown. Beside its plan, a part that was spoilt stands where it was planned too. */
    private static List<String> shown(Wanted wanted) {
        YieldFigure figure = wanted.figure();
        return became(b -> figure.holds(b, true) || (wanted.besidePlan() && figure.holds(b.planned(), true)));
    }

    private List<Stretch> kept(Wanted wanted, Days days) {
        What what = what(wanted);
        List<YieldFigure> figures = wanted.figure().parts();
        List<YieldFigure> counted = wanted.figure() == YieldFigure.RESCUED
                ? figures
                : shown(wanted).stream().map(YieldFigure::valueOf).toList();
        String outcomes = "sum("
                + YieldKept.together(counted, wanted.besidePlan() ? YieldKept.WITH_PLAN : YieldKept.OUTCOMES) + ")";
        return jdbc.sql("select begins, " + outcomes + " as outcomes, sum("
                        + YieldKept.together(figures, wanted.besidePlan() ? YieldKept.COMPARABLE : YieldKept.REAL)
                        + ") as counted_um3, sum(" + YieldKept.together(figures, YieldKept.PLANNED)
                        + ") as planned_um3 from yield_sum where by_what = :what and begins between :first and :last"
                        + (what == What.DAY || wanted.key() == null ? "" : " and line_key = :key")
                        + " group by begins having " + outcomes + " > 0 order by begins desc")
                .param("what", what.name())
                .param("first", days.first())
                .param("last", days.last())
                .param("key", wanted.key())
                .query((rs, n) -> {
                    LocalDate begins = rs.getObject("begins", LocalDate.class);
                    return stretch(
                            rs,
                            what == What.DAY
                                    ? new Days(begins, begins)
                                    : new Days(begins, begins.with(TemporalAdjusters.lastDayOfMonth())));
                })
                .list();
    }

    private List<Stretch> ofEntry(Wanted wanted, Days asked) {
        return jdbc
                .sql("select distinct counted_on from yield_row where entry_id = :entry"
                        + " and counted_on between :first and :last order by counted_on")
                .param("entry", wanted.entry())
                .param("first", asked.first())
                .param("last", asked.last())
                .query(LocalDate.class)
                .list()
                .stream()
                .map(day -> counted(wanted, new Days(day, day)))
                .toList();
    }

    private Stretch counted(Wanted wanted, Days days) {
        return jdbc.sql("select count(*) as outcomes, coalesce(sum(r.counted_um3), 0) as counted_um3,"
                        + " coalesce(sum(r.planned_um3), 0) as planned_um3 from (" + rows(wanted) + ") r")
                .params(values(wanted, days))
                .query((rs, n) -> stretch(rs, days))
                .single();
    }

    private static Stretch stretch(ResultSet rs, Days days) throws SQLException {
        return new Stretch(
                days, rs.getLong("outcomes"), YieldKept.volume(rs, "counted_um3"), YieldKept.volume(rs, "planned_um3"));
    }

    private static Map<String, Object> values(Wanted wanted, Days days) {
        Map<String, Object> values = new HashMap<>(Map.of(
                "first",
                days.first(),
                "last",
                days.last(),
                "shown",
                shown(wanted),
                "counted",
                became(b -> wanted.figure().holds(b, true)),
                "planned",
                became(b -> wanted.figure().holds(b.planned(), true))));
        if (wanted.key() != null) {
            values.put("key", wanted.key());
        }
        if (wanted.entry() != null) {
            values.put("entry", wanted.entry());
        }
        return values;
    }

    /** Outcomes that designs share are put together but where the lines are designs. */
    private static String rows(Wanted wanted) {
        By by = wanted.question().by();
        String group = "entry_id, position, figure, acted_at, who" + (by == By.DESIGN ? ", design_code" : "");
        return "select " + group + ", sum(case when figure in (:counted) then counted_um3 else 0 end) as counted_um3,"
                + " sum(case when figure in (:planned) or planned_um3 is null then planned_um3 else 0 end) as planned_um3"
                + " from yield_row where counted_on between :first and :last and figure in (:shown)"
                + (wanted.figure() == YieldFigure.RESCUED ? " and rescued" : "")
                + (wanted.besidePlan() ? " and planned_um3 is not null" : "")
                + (wanted.entry() == null ? "" : " and entry_id = :entry")
                + (what(wanted) == What.DAY || wanted.key() == null ? "" : " and " + column(by) + " = :key")
                + " group by " + group;
    }

    /** A row before it is known what the ledger wrote of it. */
    private record Counted(
            Spot spot,
            YieldFigure became,
            Instant at,
            String who,
            Volume volume,
            @Nullable Volume planned) {}

    private void load(Wanted wanted, Days days, long skip, long most, Consumer<Row> taker) {
        // A clock that was set back must not put a day on two pages.
        List<Counted> counted = jdbc.sql(rows(wanted) + " order by acted_at desc, entry_id desc, position desc"
                        + (wanted.question().by() == By.DESIGN ? ", design_code desc" : "")
                        + " limit :most offset :skip")
                .params(values(wanted, days))
                .param("most", most)
                .param("skip", skip)
                .query((rs, n) -> new Counted(
                        new Spot(rs.getLong("entry_id"), rs.getInt("position")),
                        YieldFigure.valueOf(rs.getString("figure")),
                        EntryTable.moment(rs),
                        rs.getString("who"),
                        YieldKept.volume(rs, "counted_um3"),
                        rs.getBigDecimal("planned_um3") == null ? null : YieldKept.volume(rs, "planned_um3")))
                .list();
        for (int i = 0; i < counted.size(); i += AT_ONCE) {
            List<Counted> some = counted.subList(i, Math.min(counted.size(), i + AT_ONCE));
            Map<Spot, Outcome> outcomes = outcomes(some);
            some.forEach(c -> taker.accept(row(c, Objects.requireNonNull(outcomes.get(c.spot())))));
        }
    }

    private Map<Spot, Outcome> outcomes(List<Counted> some) {
        Map<Spot, Outcome> outcomes = new HashMap<>();
        jdbc.sql("select * from outcome where entry_id in (:entries) order by entry_id, position")
                .param(
                        "entries",
                        some.stream().map(c -> c.spot().entry()).distinct().toList())
                .query(rs -> {
                    outcomes.put(new Spot(rs.getLong("entry_id"), rs.getInt("position")), EntryTable.outcome(rs));
                });
        return outcomes;
    }

    private static Row row(Counted counted, Outcome outcome) {
        String of =
                outcome.neck() != null ? outcome.neck().title() : outcome.toPiece() != null ? outcome.toPiece() : "";
        return new Row(
                counted.spot().entry(),
                counted.at(),
                counted.who(),
                outcome.fromPiece(),
                counted.became(),
                of,
                outcome.volume(),
                counted.volume(),
                counted.planned());
    }
}
