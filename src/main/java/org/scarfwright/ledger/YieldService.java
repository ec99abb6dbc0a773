package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.time.temporal.IsoFields;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.YieldSums.Counted;
import org.scarfwright.ledger.YieldTable.Cut;
import org.scarfwright.ledger.YieldTable.Span;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.WoodOrigins;
import org.scarfwright.rack.WoodOrigins.Origin;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

@Service
class YieldService implements Yield {
    private final YieldTable table;
    private final WoodOrigins origins;
    private final Plans plans;
    private final ZoneId zone;

    YieldService(YieldTable table, WoodOrigins origins, Plans plans, Clock clock) {
        this.table = table;
        this.origins = origins;
        this.plans = plans;
        this.zone = clock.getZone();
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Report report(Question question) {
        Span span = span(question);
        List<Cut> cuts = cuts(span);
        Counting counting = new Counting(question.by(), cuts);
        Counting periods = new Counting(question.by() == By.MONTH ? By.MONTH : By.WEEK, cuts);
        Map<String, YieldSums.Adder> lines = new TreeMap<>();
        Map<String, YieldSums.Adder> byPeriod = new TreeMap<>();
        Map<String, LocalDate> days = new HashMap<>();
        YieldSums.Adder total = new YieldSums.Adder();
        Deque<Dot> dots = new ArrayDeque<>();
        for (Cut cut : cuts) {
            for (Outcome outcome : cut.outcomes()) {
                for (Counted counted : counting.of(cut, outcome)) {
                    lines.computeIfAbsent(counted.key(), k -> new YieldSums.Adder())
                            .add(counted);
                    total.add(counted);
                }
                for (Counted counted : periods.of(cut, outcome)) {
                    byPeriod.computeIfAbsent(counted.key(), k -> new YieldSums.Adder())
                            .add(counted);
                    days.putIfAbsent(counted.key(), day(cut.at()));
                }
            }
            dot(cut).ifPresent(dots::add);
            if (dots.size() > MOST_DOTS) {
                dots.removeFirst();
            }
        }
        List<Line> named = new ArrayList<>();
        lines.forEach((key, adder) -> named.add(new Line(key, counting.title(key), adder.sums())));
        if (question.by() != By.WEEK && question.by() != By.MONTH) {
            named.sort(Comparator.comparing(Line::title, String.CASE_INSENSITIVE_ORDER)
                    .thenComparing(Line::key));
        }
        return new Report(
                question,
                named,
                total.sums(),
                table.taken(span),
                trend(question.by(), byPeriod, days),
                List.copyOf(dots),
                costs(table.necks(span)));
    }

    private Span span(Question question) {
        LocalDate to = question.to();
        return new Span(
                question.from() == null
                        ? null
                        : question.from().atStartOfDay(zone).toInstant(),
                to == null ? null : to.plusDays(1).atStartOfDay(zone).toInstant());
    }

    private List<Cut> cuts(Span span) {
        List<Cut> cuts = new ArrayList<>();
        table.each(span, cuts::add);
        return cuts;
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, zone);
    }

    /** Where outcomes count. */
    private final class Counting {
        private final By by;
        private final Map<String, Origin> woods;
        private final Map<Long, Set<String>> rescued = new HashMap<>();
        private final Map<String, String> titles = new HashMap<>();

        Counting(By by, List<Cut> cuts) {
            this.by = by;
            Set<String> pieces = new HashSet<>();
            if (by == By.WOOD || by == By.LOT) {
                cuts.forEach(c -> c.outcomes().forEach(o -> pieces.add(o.fromPiece())));
            }
            this.woods = origins.of(pieces);
        }

        String title(String key) {
            return key.isEmpty()
                    ? switch (by) {
                        case LOT -> "in no lot";
                        case DESIGN -> "for no neck";
                        case WOOD -> "pieces that are not there any more";
                        case WEEK, MONTH, PERSON -> "";
                    }
                    : titles.getOrDefault(key, key);
        }

        List<Counted> of(Cut cut, Outcome outcome) {
            Optional<YieldFigure> became = YieldFigure.of(outcome);
            if (became.isEmpty()) {
                return List.of();
            }
            Volume planned = planned(cut, outcome);
            if (by == By.DESIGN && outcome.neck() == null) {
                return shared(cut, outcome, became.get(), planned);
            }
            return List.of(new Counted(key(cut, outcome), became.get(), isRescued(outcome), outcome.volume(), planned));
        }

        /** No plan has an unexplained difference: where there is a plan, none was planned. */
        private static @Nullable Volume planned(Cut cut, Outcome outcome) {
            return outcome.kind() == Outcome.Kind.UNEXPLAINED
                            && cut.outcomes().stream()
                                    .anyMatch(o ->
                                            o.planned() != null && o.fromPiece().equals(outcome.fromPiece()))
                    ? Volume.ZERO
                    : outcome.planned();
        }

        private String key(Cut cut, Outcome outcome) {
            return switch (by) {
                case WEEK -> week(day(cut.at()));
                case MONTH -> YearMonth.from(day(cut.at())).toString();
                case PERSON -> cut.who();
                case DESIGN -> outcome.neck() == null ? "" : outcome.neck().design();
                case WOOD -> {
                    Origin origin = woods.get(outcome.fromPiece());
                    if (origin == null) {
                        yield "";
                    }
                    titles.put(origin.woodKey(), origin.woodName());
                    yield origin.woodKey();
                }
                case LOT -> {
                    Origin origin = woods.get(outcome.fromPiece());
                    yield origin == null || origin.lot() == null ? "" : origin.lot();
                }
            };
        }

        /** What was lost beside parts of several designs belongs to each by the volume of its parts. */
        private List<Counted> shared(Cut cut, Outcome outcome, YieldFigure became, @Nullable Volume foreseen) {
            Map<String, BigInteger> designs = new TreeMap<>();
            for (Outcome o : cut.outcomes()) {
                if (o.neck() != null && o.volume().signum() > 0 && o.fromPiece().equals(outcome.fromPiece())) {
                    designs.merge(o.neck().design(), o.volume().um3(), BigInteger::add);
                }
            }
            if (designs.isEmpty()) {
                return List.of(new Counted("", became, false, outcome.volume(), foreseen));
            }
            List<String> keys = List.copyOf(designs.keySet());
            List<BigInteger> weights = List.copyOf(designs.values());
            List<BigInteger> volumes = Apportionment.of(outcome.volume().um3(), weights);
            List<BigInteger> planned = foreseen == null ? List.of() : Apportionment.of(foreseen.um3(), weights);
            List<Counted> counted = new ArrayList<>();
            for (int i = 0; i < keys.size(); i++) {
                counted.add(new Counted(
                        keys.get(i),
                        became,
                        false,
                        new Volume(volumes.get(i)),
                        planned.isEmpty() ? null : new Volume(planned.get(i))));
            }
            return counted;
        }

        /** Which pieces are a rescue is what the plan said of them: they were set aside, short or narrow. */
        private boolean isRescued(Outcome outcome) {
            Outcome.NeckPart neck = outcome.neck();
            return neck != null
                    && outcome.kind() == Outcome.Kind.PART
                    && rescued.computeIfAbsent(neck.plan(), this::rescuedPieces).contains(outcome.fromPiece());
        }

        private Set<String> rescuedPieces(long plan) {
            Set<String> pieces = new HashSet<>();
            plans.find(plan)
                    .ifPresent(p -> p.layouts().stream()
                            .filter(l -> !l.books().rescued().isZero())
                            .map(Plan.PieceLayout::piece)
                            .forEach(pieces::add));
            return pieces;
        }
    }

    private static String week(LocalDate day) {
        return String.format(
                Locale.ROOT,
                "%04d-W%02d",
                day.get(IsoFields.WEEK_BASED_YEAR),
                day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    private static Optional<Dot> dot(Cut cut) {
        Volume planned = Volume.ZERO;
        Volume real = Volume.ZERO;
        boolean hadPlan = false;
        for (Outcome o : cut.outcomes()) {
            hadPlan |= o.planned() != null && o.planned().signum() > 0;
            if (YieldFigure.of(o).filter(f -> YieldFigure.WASTE.holds(f, false)).isPresent()) {
                real = real.plus(o.volume());
                // A part that was spoilt was no waste by the plan.
                if (o.planned() != null && o.neck() == null) {
                    planned = planned.plus(o.planned());
                }
            }
        }
        return hadPlan ? Optional.of(new Dot(cut.entry(), planned, real)) : Optional.empty();
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

    private static List<NeckCost> costs(List<YieldTable.Neck> necks) {
        Map<String, List<YieldTable.Neck>> designs = new TreeMap<>();
        necks.forEach(
                n -> designs.computeIfAbsent(n.design(), d -> new ArrayList<>()).add(n));
        List<NeckCost> costs = new ArrayList<>();
        designs.forEach((design, all) -> {
            List<Money> known = new ArrayList<>();
            all.forEach(n -> {
                if (n.cost() != null) {
                    known.add(n.cost());
                }
            });
            known.sort(null);
            Money sum = known.stream().reduce(Money.ZERO, Money::plus);
            costs.add(new NeckCost(
                    design,
                    known.size(),
                    all.size() - known.size(),
                    sum,
                    known.isEmpty() ? null : mean(sum, known.size()),
                    known.isEmpty() ? null : known.get(0),
                    known.isEmpty() ? null : known.get(known.size() - 1)));
        });
        return costs;
    }

    private static Money mean(Money sum, int count) {
        return new Money(sum.toDecimal()
                .divide(BigDecimal.valueOf(count), 2, RoundingMode.HALF_UP)
                .movePointRight(2)
                .longValueExact());
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Rows rows(Question question, @Nullable String key, YieldFigure figure, int page, int size) {
        if (size < 1 || size > LARGEST_PAGE) {
            throw new IllegalArgumentException("size " + size + " is not between 1 and " + LARGEST_PAGE);
        }
        return gathered(question, key, figure, page, size);
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Rows all(Question question, @Nullable String key, YieldFigure figure) {
        return gathered(question, key, figure, 1, Integer.MAX_VALUE);
    }

    private Rows gathered(Question question, @Nullable String key, YieldFigure figure, int page, int size) {
        List<Cut> cuts = cuts(span(question));
        Counting counting = new Counting(question.by(), cuts);
        List<Row> all = new ArrayList<>();
        Volume sum = Volume.ZERO;
        for (Cut cut : cuts) {
            for (Outcome outcome : cut.outcomes()) {
                for (Counted counted : counting.of(cut, outcome)) {
                    if ((key == null || key.equals(counted.key()))
                            && figure.holds(counted.became(), counted.rescued())) {
                        all.add(row(cut, outcome, counted));
                        sum = sum.plus(counted.counted());
                    }
                }
            }
        }
        Collections.reverse(all);
        int pages = Math.max(1, (all.size() - 1) / size + 1);
        int shown = Math.max(1, Math.min(page, pages));
        int first = Math.multiplyExact(shown - 1, size);
        return new Rows(
                Optional.ofNullable(key).map(counting::title),
                all.subList(first, first + Math.min(all.size() - first, size)),
                sum,
                shown,
                pages,
                all.size());
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
