package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.YieldBook.What;
import org.scarfwright.ledger.YieldCounting.Attribution;
import org.scarfwright.ledger.YieldSums.Counted;
import org.scarfwright.ledger.YieldTable.Cut;
import org.scarfwright.ledger.YieldTable.Only;
import org.scarfwright.ledger.YieldTable.Span;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.WoodOrigins;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Reads what {@link YieldBook} keeps: days for weeks and months, whole months for everything else. Only the days of a month that is
 * asked for in part are added up from their outcomes.
 */
@Service
class YieldService implements Yield {
    private static final int AT_ONCE = 1000;
    private static final Days EVER = new Days(LocalDate.of(1, 1, 1), LocalDate.of(9999, 12, 31));

    private final YieldTable table;
    private final YieldBook book;
    private final WoodOrigins origins;
    private final ObjectProvider<Plans> plans;
    private final JdbcClient jdbc;
    private final TransactionTemplate snapshot;
    private final ZoneId zone;

    YieldService(
            YieldTable table,
            YieldBook book,
            WoodOrigins origins,
            ObjectProvider<Plans> plans,
            JdbcClient jdbc,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.table = table;
        this.book = book;
        this.origins = origins;
        this.plans = plans;
        this.jdbc = jdbc;
        this.snapshot = new TransactionTemplate(transactions);
        snapshot.setReadOnly(true);
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.zone = clock.getZone();
    }

    private <T> T read(Supplier<T> reading) {
        book.bringUpToDate();
        return Objects.requireNonNull(snapshot.execute(status -> reading.get()));
    }

    /** Days from one to another, both with them. */
    private record Days(LocalDate first, LocalDate last) {
        boolean isEmpty() {
            return first.isAfter(last);
        }
    }

    /** Whole months, and the days beside them. */
    private record Months(Days whole, List<Days> parts) {}

    private static Days days(Question question) {
        return new Days(
                Objects.requireNonNullElse(question.from(), EVER.first()),
                Objects.requireNonNullElse(question.to(), EVER.last()));
    }

    private Span span(Days days) {
        return new Span(
                days.first().equals(EVER.first())
                        ? null
                        : days.first().atStartOfDay(zone).toInstant(),
                days.last().equals(EVER.last())
                        ? null
                        : days.last().plusDays(1).atStartOfDay(zone).toInstant());
    }

    /** A month of which nothing was cut outside the days asked for is a whole one. */
    private Months months(Days days) {
        Optional<LocalDate> earliest = end("begins");
        if (earliest.isEmpty()) {
            return new Months(days, List.of());
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
                        .toList());
    }

    private Optional<LocalDate> end(String order) {
        return jdbc.sql("select begins from yield_sum where by_what = 'DAY' order by " + order + " limit 1")
                .query(LocalDate.class)
                .optional();
    }

    @Override
    public Report report(Question question) {
        return read(() -> reported(question));
    }

    private Report reported(Question question) {
        Days asked = days(question);
        By periods = question.by() == By.MONTH ? By.MONTH : By.WEEK;
        Map<String, YieldSums.Adder> byPeriod = new TreeMap<>();
        Map<String, LocalDate> first = new HashMap<>();
        YieldSums.Adder total = new YieldSums.Adder();
        Volume[] taken = {Volume.ZERO};
        jdbc.sql("select begins, figure, real_um3, planned_um3, comparable_um3 from yield_sum"
                        + " where by_what = 'DAY' and begins between :first and :last order by begins, figure")
                .param("first", asked.first())
                .param("last", asked.last())
                .query(rs -> {
                    if (rs.getString("figure").equals(YieldBook.TAKEN)) {
                        taken[0] = taken[0].plus(volume(rs, "real_um3"));
                        return;
                    }
                    LocalDate day = rs.getObject("begins", LocalDate.class);
                    String period = YieldCounting.period(periods, day);
                    first.putIfAbsent(period, day);
                    add(byPeriod.computeIfAbsent(period, k -> new YieldSums.Adder()), rs);
                    add(total, rs);
                });
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

    private static void add(YieldSums.Adder adder, ResultSet rs) throws SQLException {
        adder.add(
                YieldFigure.valueOf(rs.getString("figure")),
                volume(rs, "real_um3"),
                volume(rs, "planned_um3"),
                volume(rs, "comparable_um3"));
    }

    private static Volume volume(ResultSet rs, String column) throws SQLException {
        return new Volume(rs.getBigDecimal(column).toBigIntegerExact());
    }

    private Map<String, YieldSums.Adder> lines(By by, Days asked) {
        Map<String, YieldSums.Adder> lines = new TreeMap<>();
        Months months = months(asked);
        jdbc.sql("select line_key, figure, sum(real_um3) as real_um3, sum(planned_um3) as planned_um3,"
                        + " sum(comparable_um3) as comparable_um3 from yield_sum"
                        + " where by_what = :what and begins between :first and :last"
                        + " group by line_key, figure order by line_key, figure")
                .param("what", What.of(by).name())
                .param("first", months.whole().first())
                .param("last", months.whole().last())
                .query(rs -> {
                    add(lines.computeIfAbsent(rs.getString("line_key"), k -> new YieldSums.Adder()), rs);
                });
        for (Days part : months.parts()) {
            List<Cut> cuts = new ArrayList<>();
            table.each(span(part), cuts::add);
            YieldCounting counting = counting(by, cuts);
            cuts.forEach(cut -> cut.outcomes()
                    .forEach(o -> counting.of(by, cut, o)
                            .forEach(c -> lines.computeIfAbsent(c.key(), k -> new YieldSums.Adder())
                                    .add(c))));
        }
        return lines;
    }

    private YieldCounting counting(By by, List<Cut> cuts) {
        YieldCounting counting = new YieldCounting(plans, zone);
        if (by == By.WOOD || by == By.LOT) {
            Set<String> pieces = new HashSet<>();
            cuts.forEach(c -> c.outcomes().forEach(o -> pieces.add(o.fromPiece())));
            List<String> all = pieces.stream().sorted().toList();
            for (int i = 0; i < all.size(); i += AT_ONCE) {
                jdbc.sql("select piece_code, wood_key, lot_code from yield_wood where piece_code in (:codes)"
                                + " order by piece_code")
                        .param("codes", all.subList(i, Math.min(all.size(), i + AT_ONCE)))
                        .query(rs -> {
                            counting.attribute(
                                    rs.getString("piece_code"),
                                    new Attribution(rs.getString("wood_key"), rs.getString("lot_code")));
                        });
            }
        }
        return counting;
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
                .query((rs, n) -> new Dot(rs.getLong("entry_id"), volume(rs, "planned_um3"), volume(rs, "real_um3")))
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
    public Rows rows(Question question, @Nullable String key, YieldFigure figure, int page, int size) {
        if (size < 1 || size > LARGEST_PAGE) {
            throw new IllegalArgumentException("size " + size + " is not between 1 and " + LARGEST_PAGE);
        }
        return read(() -> gathered(new Wanted(question, key, figure), page, size));
    }

    @Override
    public Rows all(Question question, @Nullable String key, YieldFigure figure) {
        return read(() -> {
            Wanted wanted = new Wanted(question, key, figure);
            List<Row> all = loaded(wanted, days(question));
            return new Rows(title(wanted), all, sum(all), 1, 1, all.size());
        });
    }

    /** Which rows. */
    private record Wanted(Question question, @Nullable String key, YieldFigure figure) {}

    /**
     * Days of which it is known how many rows they have.
     *
     * @param rows the newest first; empty when they are not loaded yet
     */
    private record Stretch(Days days, long count, Volume sum, Optional<List<Row>> rows) {}

    /** Only the days of the page are loaded; of the others it is known how many rows they have. */
    private Rows gathered(Wanted wanted, int page, int size) {
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
                List<Row> here = stretch.rows().orElseGet(() -> loaded(wanted, stretch.days()));
                here.stream().skip(skip).limit(size - rows.size()).forEach(rows::add);
                skip = 0;
            }
        }
        return new Rows(
                title(wanted),
                rows,
                stretches.stream().map(Stretch::sum).reduce(Volume.ZERO, Volume::plus),
                shown,
                pages,
                total);
    }

    private Optional<String> title(Wanted wanted) {
        return Optional.ofNullable(wanted.key())
                .map(key -> titles(wanted.question().by(), List.of(key)).getOrDefault(key, key));
    }

    private static Volume sum(List<Row> rows) {
        return rows.stream().map(Row::counted).reduce(Volume.ZERO, Volume::plus);
    }

    /** The newest first. An outcome that designs share is a row of each of them, so their own sums say how many there are. */
    private List<Stretch> stretches(Wanted wanted) {
        By by = wanted.question().by();
        Days asked = days(wanted.question());
        What what = wanted.key() == null && by != By.DESIGN ? What.DAY : What.of(by);
        if (what == What.DAY) {
            return kept(wanted, what, asked).stream()
                    .filter(s -> wanted.key() == null
                            || wanted.key()
                                    .equals(YieldCounting.period(by, s.days().first())))
                    .toList();
        }
        Months months = months(asked);
        List<Stretch> stretches = new ArrayList<>(kept(wanted, what, months.whole()));
        for (Days part : months.parts()) {
            List<Row> rows = loaded(wanted, part);
            stretches.add(new Stretch(part, rows.size(), sum(rows), Optional.of(rows)));
        }
        stretches.sort(Comparator.comparing((Stretch s) -> s.days().first()).reversed());
        return stretches;
    }

    private List<Stretch> kept(Wanted wanted, What what, Days days) {
        String key = wanted.key();
        return jdbc.sql("select begins, sum(outcomes) as outcomes, sum(real_um3) as real_um3 from yield_sum"
                        + " where by_what = :what and begins between :first and :last and figure in (:figures)"
                        + (what == What.DAY || key == null ? "" : " and line_key = :key")
                        + " group by begins having sum(outcomes) > 0 order by begins desc")
                .param("what", what.name())
                .param("first", days.first())
                .param("last", days.last())
                .param("figures", wanted.figure().parts())
                .param("key", key)
                .query((rs, n) -> {
                    LocalDate begins = rs.getObject("begins", LocalDate.class);
                    return new Stretch(
                            what == What.DAY
                                    ? new Days(begins, begins)
                                    : new Days(begins, begins.with(TemporalAdjusters.lastDayOfMonth())),
                            rs.getLong("outcomes"),
                            volume(rs, "real_um3"),
                            Optional.empty());
                })
                .list();
    }

    /** The newest first. */
    private List<Row> loaded(Wanted wanted, Days days) {
        By by = wanted.question().by();
        List<Cut> cuts = new ArrayList<>();
        table.each(span(days), only(by, wanted.key()), cuts::add);
        YieldCounting counting = counting(by, cuts);
        List<Row> rows = new ArrayList<>();
        for (Cut cut : cuts) {
            for (Outcome outcome : cut.outcomes()) {
                for (Counted counted : counting.of(by, cut, outcome)) {
                    if ((wanted.key() == null || wanted.key().equals(counted.key()))
                            && wanted.figure().holds(counted.became(), counted.rescued())) {
                        rows.add(row(cut, outcome, counted));
                    }
                }
            }
        }
        Collections.reverse(rows);
        // A clock that was set back must not put a day on two pages.
        rows.sort(Comparator.comparing(Row::at).reversed());
        return rows;
    }

    /** Leaves out what can be told from the rows themselves to be of another line. */
    private static Only only(By by, @Nullable String key) {
        if (key == null) {
            return Only.ALL;
        }
        return switch (by) {
            case PERSON -> new Only(" and e.who = :key", Map.of("key", key));
            case WOOD ->
                new Only(
                        " and exists (select 1 from yield_wood w where w.piece_code = o.from_piece and w.wood_key = :key)",
                        Map.of("key", key));
            case LOT ->
                new Only(
                        " and exists (select 1 from yield_wood w where w.piece_code = o.from_piece and w.lot_code = :key)",
                        Map.of("key", key));
            case WEEK, MONTH, DESIGN -> Only.ALL;
        };
    }

    private static Row row(Cut cut, Outcome outcome, Counted counted) {
        String of =
                outcome.neck() != null ? outcome.neck().title() : outcome.toPiece() != null ? outcome.toPiece() : "";
        return new Row(
                cut.entry(),
                cut.at(),
                cut.who(),
                outcome.fromPiece(),
                counted.became(),
                of,
                outcome.volume(),
                counted.counted(),
                counted.planned());
    }
}
