package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.scarfwright.ledger.YieldKept.What;
import org.scarfwright.ledger.YieldMonths.Days;
import org.scarfwright.ledger.YieldMonths.Months;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.WoodOrigins;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * Reads what {@link YieldBook} keeps: days for weeks and months, whole months for everything else. Only the days of a month that is
 * asked for in part are added up from what each outcome counts as.
 */
@Service
class YieldService implements Yield {
    private final YieldSnapshot snapshot;
    private final YieldMonths months;
    private final YieldRowTable rows;
    private final WoodOrigins origins;
    private final JdbcClient jdbc;

    YieldService(YieldSnapshot snapshot, YieldMonths months, YieldRowTable rows, WoodOrigins origins, JdbcClient jdbc) {
        this.snapshot = snapshot;
        this.months = months;
        this.rows = rows;
        this.origins = origins;
        this.jdbc = jdbc;
    }

    @Override
    public Report report(Question question) {
        return snapshot.read(() -> reported(question));
    }

    private Report reported(Question question) {
        Days asked = Days.of(question);
        By periods = question.by() == By.MONTH ? By.MONTH : By.WEEK;
        Map<String, YieldSums.Adder> byPeriod = new TreeMap<>();
        Map<String, LocalDate> first = new HashMap<>();
        Volume[] taken = {Volume.ZERO};
        jdbc.sql("select begins, taken_um3, " + YieldKept.volumeColumns(false) + " from yield_sum"
                        + " where by_what = 'DAY' and begins between :first and :last order by begins")
                .param("first", asked.first())
                .param("last", asked.last())
                .query(rs -> {
                    taken[0] = taken[0].plus(YieldKept.volume(rs, "taken_um3"));
                    LocalDate day = rs.getObject("begins", LocalDate.class);
                    String period = YieldCounting.period(periods, day);
                    first.putIfAbsent(period, day);
                    YieldKept.volumes(rs, byPeriod.computeIfAbsent(period, k -> new YieldSums.Adder()));
                });
        YieldSums.Adder total = new YieldSums.Adder();
        byPeriod.values().forEach(total::add);
        List<Line> named = new ArrayList<>();
        if (question.by() == periods) {
            byPeriod.forEach((key, adder) -> named.add(new Line(key, key, adder.sums())));
        } else {
            Map<String, YieldSums.Adder> lines = lines(question.by(), asked);
            Map<String, String> titles = titles(question.by(), lines.keySet());
            lines.forEach((key, adder) -> named.add(new Line(key, titles.getOrDefault(key, key), adder.sums())));
            named.sort(Comparator.comparing(Line::title, String.CASE_INSENSITIVE_ORDER)
                    .thenComparing(Line::key));
        }
        return new Report(
                question,
                named,
                total.sums(),
                taken[0],
                trend(question.by(), byPeriod, first),
                dots(asked),
                costs(asked));
    }

    private Map<String, YieldSums.Adder> lines(By by, Days asked) {
        Map<String, YieldSums.Adder> lines = new TreeMap<>();
        Months in = months.in(asked);
        jdbc.sql("select line_key, " + YieldKept.volumeColumns(!in.all()) + " from yield_sum where by_what = :what and "
                        + (in.all() ? "begins = :ever" : "begins between :first and :last group by line_key")
                        + " order by line_key")
                .param("what", What.of(by).name())
                .param("ever", YieldKept.EVER)
                .param("first", in.whole().first())
                .param("last", in.whole().last())
                .query(rs -> {
                    YieldKept.volumes(rs, lines.computeIfAbsent(rs.getString("line_key"), k -> new YieldSums.Adder()));
                });
        for (Days part : in.all() ? List.<Days>of() : in.parts()) {
            jdbc.sql("select " + YieldRowTable.column(by)
                            + " as line_key, figure, rescued, sum(counted_um3) as real_um3,"
                            + " coalesce(sum(planned_um3), 0) as planned_um3,"
                            + " sum(case when planned_um3 is null then 0 else counted_um3 end) as comparable_um3"
                            + " from yield_row where counted_on between :first and :last group by "
                            + YieldRowTable.column(by) + ", figure, rescued order by line_key, figure, rescued")
                    .param("first", part.first())
                    .param("last", part.last())
                    .query(rs -> {
                        lines.computeIfAbsent(rs.getString("line_key"), k -> new YieldSums.Adder())
                                .add(
                                        YieldFigure.valueOf(rs.getString("figure")),
                                        rs.getBoolean("rescued"),
                                        new YieldSums.Kept(
                                                YieldKept.volume(rs, "real_um3"),
                                                YieldKept.volume(rs, "planned_um3"),
                                                YieldKept.volume(rs, "comparable_um3")));
                    });
        }
        return lines;
    }

    /** Titles of lines whose keys are not what people read. */
    private Map<String, String> titles(By by, Collection<String> keys) {
        Map<String, String> titles = new HashMap<>();
        if (by == By.WOOD) {
            titles.putAll(origins.names(keys.stream().filter(k -> !k.isEmpty()).toList()));
        }
        titles.put(
                "",
                switch (by) {
                    case LOT -> "in no lot";
                    case DESIGN -> "for no neck";
                    case WOOD -> "pieces that are not there any more";
                    case WEEK, MONTH, PERSON -> "";
                });
        return titles;
    }

    /** Cuts beside their plans, the last of them. */
    private List<Dot> dots(Days asked) {
        List<Dot> dots = new ArrayList<>(jdbc.sql(
                        "select entry_id, planned_um3, real_um3 from yield_cut where cut_on between :first and :last"
                                + " order by cut_on desc, entry_id desc limit :most")
                .param("first", asked.first())
                .param("last", asked.last())
                .param("most", MOST_DOTS)
                .query((rs, n) -> new Dot(
                        rs.getLong("entry_id"), YieldKept.volume(rs, "planned_um3"), YieldKept.volume(rs, "real_um3")))
                .list());
        Collections.reverse(dots);
        return dots;
    }

    private static List<Period> trend(By by, Map<String, YieldSums.Adder> byPeriod, Map<String, LocalDate> days) {
        List<Period> trend = new ArrayList<>();
        Deque<Double> last = new ArrayDeque<>();
        LocalDate first = null;
        for (Map.Entry<String, YieldSums.Adder> entry : byPeriod.entrySet()) {
            LocalDate day = days.getOrDefault(entry.getKey(), LocalDate.EPOCH);
            LocalDate begins = by == By.MONTH ? day.withDayOfMonth(1) : day.with(DayOfWeek.MONDAY);
            first = first == null ? begins : first;
            OptionalDouble net = entry.getValue().sums().netYield();
            if (net.isPresent()) {
                last.addLast(net.getAsDouble());
                if (last.size() > MEDIAN_OF) {
                    last.removeFirst();
                }
                trend.add(new Period(
                        entry.getKey(),
                        by == By.MONTH
                                ? ChronoUnit.MONTHS.between(first, begins)
                                : ChronoUnit.WEEKS.between(first, begins),
                        net,
                        OptionalDouble.of(median(last))));
            }
        }
        return trend;
    }

    /**
     * The middle one, or the mean of the middle two.
     *
     * <p><b>Source:</b> NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1, from memory.
     */
    static double median(Collection<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(half) : (sorted.get(half - 1) + sorted.get(half)) / 2;
    }

    private List<NeckCost> costs(Days asked) {
        return jdbc.sql("select design_code, count(cost_cents) as known, count(*) as necks,"
                        + " coalesce(sum(cost_cents), 0) as cost_cents, min(cost_cents) as least_cents,"
                        + " max(cost_cents) as most_cents from yield_neck where cut_on between :first and :last"
                        + " group by design_code order by design_code")
                .param("first", asked.first())
                .param("last", asked.last())
                .query((rs, n) -> {
                    int known = rs.getInt("known");
                    Money sum = new Money(rs.getBigDecimal("cost_cents").longValueExact());
                    return new NeckCost(
                            rs.getString("design_code"),
                            known,
                            rs.getInt("necks") - known,
                            sum,
                            known == 0 ? null : mean(sum, known),
                            known == 0 ? null : new Money(rs.getLong("least_cents")),
                            known == 0 ? null : new Money(rs.getLong("most_cents")));
                })
                .list();
    }

    private static Money mean(Money sum, int count) {
        return new Money(sum.toDecimal()
                .divide(BigDecimal.valueOf(count), 2, RoundingMode.HALF_UP)
                .movePointRight(2)
                .longValueExact());
    }

    @Override
    public Rows rows(Wanted wanted, int page, int size) {
        if (size < 1 || size > LARGEST_PAGE) {
            throw new IllegalArgumentException("size " + size + " is not between 1 and " + LARGEST_PAGE);
        }
        return snapshot.read(() -> rows.page(wanted, title(wanted), page, size));
    }

    @Override
    public void each(Wanted wanted, Consumer<Row> taker) {
        snapshot.read(() -> {
            rows.each(wanted, taker);
            return true;
        });
    }

    private Optional<String> title(Wanted wanted) {
        return Optional.ofNullable(wanted.key())
                .map(key -> titles(wanted.question().by(), List.of(key)).getOrDefault(key, key));
    }
}
