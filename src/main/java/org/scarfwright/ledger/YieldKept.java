package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.YieldSums.Counted;
import org.scarfwright.ledger.YieldTable.Cut;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;

/** The sums the yield keeps, and the columns they are kept in: one row of a table for all figures of a day, or of a line's month. */
final class YieldKept {
    /** The day a line's sums of all months stand under: no month begins on it. */
    static final LocalDate EVER = LocalDate.of(9999, 12, 31);

    /** What is kept a sum of: what wood became, and the rescued parts. All else is added up from these. */
    static final List<YieldFigure> FIGURES = Stream.concat(
                    YieldFigure.became().stream(), Stream.of(YieldFigure.RESCUED))
            .toList();

    static final String OUTCOMES = "_outcomes";
    static final String WITH_PLAN = "_with_plan";
    static final String REAL = "_real_um3";
    static final String PLANNED = "_planned_um3";
    static final String COMPARABLE = "_comparable_um3";

    static final String SOLD = "sold_um3";

    private static final String TAKEN = "taken_um3";
    private static final List<String> KINDS = List.of(OUTCOMES, WITH_PLAN, REAL, PLANNED, COMPARABLE);

    private final Map<Named, Sum> all = new HashMap<>();

    /** What a sum is of. */
    enum What {
        DAY,
        WOOD,
        LOT,
        DESIGN,
        PERSON;

        static What of(By by) {
            return switch (by) {
                case WEEK, MONTH -> DAY;
                case WOOD -> WOOD;
                case LOT -> LOT;
                case DESIGN -> DESIGN;
                case PERSON -> PERSON;
            };
        }

        private By by() {
            return switch (this) {
                case DAY -> By.WEEK;
                case WOOD -> By.WOOD;
                case LOT -> By.LOT;
                case DESIGN -> By.DESIGN;
                case PERSON -> By.PERSON;
            };
        }

        private List<LocalDate> begins(LocalDate day) {
            return this == DAY ? List.of(day) : List.of(day.withDayOfMonth(1), EVER);
        }
    }

    /** Names a row of sums. */
    record Named(What what, LocalDate begins, String line) {
        static Named of(ResultSet rs) throws SQLException {
            return new Named(
                    What.valueOf(rs.getString("by_what")),
                    rs.getObject("begins", LocalDate.class),
                    rs.getString("line_key"));
        }

        /** For wood maple_sugar, 2026-11-01. */
        String words() {
            return what.name().toLowerCase(Locale.ROOT) + " "
                    + (line.isEmpty() ? "" : line + ", ")
                    + (begins.equals(EVER) ? "of all months" : begins.toString());
        }
    }

    /** Adds one figure up. */
    static final class Part {
        private long outcomes;
        private long withPlan;
        private BigInteger real = BigInteger.ZERO;
        private BigInteger planned = BigInteger.ZERO;
        private BigInteger comparable = BigInteger.ZERO;

        private void add(Counted c, int sign) {
            BigInteger counted = signed(c.counted().um3(), sign);
            outcomes += sign;
            real = real.add(counted);
            if (c.planned() != null) {
                withPlan += sign;
                comparable = comparable.add(counted);
            }
        }

        private void plan(Counted c, int sign) {
            if (c.planned() != null) {
                planned = planned.add(signed(c.planned().um3(), sign));
            }
        }

        private List<Number> numbers() {
            return List.of(outcomes, withPlan, real, planned, comparable);
        }
    }

    /** One row. */
    static final class Sum {
        private final Map<YieldFigure, Part> parts = new HashMap<>();
        private BigInteger taken = BigInteger.ZERO;
        private BigInteger sold = BigInteger.ZERO;

        private Part of(YieldFigure figure) {
            return parts.computeIfAbsent(figure, f -> new Part());
        }

        private List<Number> numbers(YieldFigure figure) {
            return parts.getOrDefault(figure, new Part()).numbers();
        }

        boolean isNothing() {
            return taken.signum() == 0
                    && sold.signum() == 0
                    && parts.values().stream()
                            .flatMap(p -> p.numbers().stream())
                            .allMatch(n -> n instanceof BigInteger big ? big.signum() == 0 : n.longValue() == 0);
        }

        boolean takesOff() {
            return taken.signum() < 0
                    || sold.signum() < 0
                    || parts.values().stream().anyMatch(p -> p.outcomes < 0);
        }

        /** Figures, as people read them, of which the other sums differ. */
        List<String> differences(Sum o) {
            List<String> different = new ArrayList<>();
            FIGURES.stream()
                    .filter(f -> !numbers(f).equals(o.numbers(f)))
                    .forEach(f -> different.add(f.word().replace('_', ' ')));
            if (!taken.equals(o.taken)) {
                different.add("what was taken");
            }
            if (!sold.equals(o.sold)) {
                different.add("what was sold");
            }
            return different;
        }

        static Sum of(ResultSet rs) throws SQLException {
            Sum sum = new Sum();
            sum.taken = rs.getBigDecimal(TAKEN).toBigIntegerExact();
            sum.sold = rs.getBigDecimal(SOLD).toBigIntegerExact();
            for (YieldFigure figure : FIGURES) {
                Part part = sum.of(figure);
                part.outcomes = rs.getLong(figure.word() + OUTCOMES);
                part.withPlan = rs.getLong(figure.word() + WITH_PLAN);
                part.real = rs.getBigDecimal(figure.word() + REAL).toBigIntegerExact();
                part.planned = rs.getBigDecimal(figure.word() + PLANNED).toBigIntegerExact();
                part.comparable = rs.getBigDecimal(figure.word() + COMPARABLE).toBigIntegerExact();
            }
            return sum;
        }
    }

    private static BigInteger signed(BigInteger value, int sign) {
        return sign > 0 ? value : value.negate();
    }

    private Sum at(What what, LocalDate begins, String line) {
        return all.computeIfAbsent(new Named(what, begins, line), k -> new Sum());
    }

    /** @param sign 1, or −1 to take it off */
    void add(YieldCounting counting, Cut cut, What what, Outcome outcome, int sign) {
        LocalDate day = counting.day(cut.at());
        for (Counted c : counting.of(what.by(), cut, outcome)) {
            for (LocalDate begins : what.begins(day)) {
                Sum sum = at(what, begins, what == What.DAY ? "" : c.key());
                sum.of(c.became()).add(c, sign);
                sum.of(c.became().planned()).plan(c, sign);
                if (c.became() == YieldFigure.PARTS && c.rescued()) {
                    sum.of(YieldFigure.RESCUED).add(c, sign);
                    sum.of(YieldFigure.RESCUED).plan(c, sign);
                }
            }
        }
    }

    void add(YieldCounting counting, Cut cut, int sign) {
        for (Outcome outcome : cut.outcomes()) {
            for (What what : What.values()) {
                add(counting, cut, what, outcome, sign);
            }
            if (outcome.kind() == Outcome.Kind.SOLD) {
                Sum sum = at(What.DAY, counting.day(cut.at()), "");
                sum.sold = sum.sold.add(signed(outcome.volume().um3(), sign));
            }
        }
    }

    void taken(LocalDate day, BigInteger um3, int sign) {
        Sum sum = at(What.DAY, day, "");
        sum.taken = sum.taken.add(signed(um3, sign));
    }

    /** Sums that are not nothing. */
    Map<Named, Sum> sums() {
        all.values().removeIf(Sum::isNothing);
        return all;
    }

    private static List<String> columns() {
        List<String> columns = new ArrayList<>(List.of(TAKEN, SOLD));
        FIGURES.forEach(f -> KINDS.forEach(k -> columns.add(f.word() + k)));
        return columns;
    }

    private static String each(Function<String, String> column, String between) {
        return columns().stream().map(column).collect(Collectors.joining(between));
    }

    private static final String NAMED = " where by_what = :what and begins = :begins and line_key = :line";

    static final String INSERT = "insert into yield_sum (by_what, begins, line_key, " + each(c -> c, ", ")
            + ") values (:what, :begins, :line, " + each(c -> ":" + c, ", ") + ")";
    static final String DELETE_NOTHING = "delete from yield_sum" + NAMED + " and " + each(c -> c + " = 0", " and ");

    /** Adds sums to those that are kept; only the columns of figures that one of them has, because a cut has few. */
    static String update(Collection<Sum> sums) {
        List<String> columns = new ArrayList<>(List.of(TAKEN, SOLD));
        FIGURES.stream()
                .filter(f -> sums.stream().anyMatch(s -> s.parts.containsKey(f)))
                .forEach(f -> KINDS.forEach(k -> columns.add(f.word() + k)));
        return "update yield_sum set "
                + columns.stream().map(c -> c + " = " + c + " + :" + c).collect(Collectors.joining(", ")) + NAMED;
    }

    /** The values of {@link #INSERT} and {@link #update}. */
    static MapSqlParameterSource row(Named key, Sum sum) {
        MapSqlParameterSource row = new MapSqlParameterSource("what", key.what().name())
                .addValue("begins", key.begins())
                .addValue("line", key.line())
                .addValue(TAKEN, new BigDecimal(sum.taken))
                .addValue(SOLD, new BigDecimal(sum.sold));
        for (YieldFigure figure : FIGURES) {
            List<Number> numbers = sum.numbers(figure);
            for (int i = 0; i < KINDS.size(); i++) {
                Number number = numbers.get(i);
                row.addValue(
                        figure.word() + KINDS.get(i), number instanceof BigInteger big ? new BigDecimal(big) : number);
            }
        }
        return row;
    }

    /** Columns of volumes, each added up where rows are put together; to be read with {@link #volumes}. */
    static String volumeColumns(boolean together) {
        return Stream.of(REAL, PLANNED, COMPARABLE)
                .flatMap(k -> FIGURES.stream().map(f -> f.word() + k))
                .map(c -> together ? "sum(" + c + ") as " + c : c)
                .collect(Collectors.joining(", "));
    }

    /** Adds a row of volumes to what is being added up. */
    static void volumes(ResultSet rs, YieldSums.Adder adder) throws SQLException {
        for (YieldFigure figure : FIGURES) {
            adder.add(
                    figure,
                    new YieldSums.Kept(
                            volume(rs, figure.word() + REAL),
                            volume(rs, figure.word() + PLANNED),
                            volume(rs, figure.word() + COMPARABLE)));
        }
    }

    static Volume volume(ResultSet rs, String column) throws SQLException {
        BigDecimal um3 = rs.getBigDecimal(column);
        return um3.signum() == 0 ? Volume.ZERO : new Volume(um3.toBigIntegerExact());
    }

    /** The sum of one kind of column of some figures: parts_outcomes + rests_outcomes. */
    static String together(List<YieldFigure> figures, String kind) {
        return figures.stream().map(f -> f.word() + kind).collect(Collectors.joining(" + "));
    }
}
