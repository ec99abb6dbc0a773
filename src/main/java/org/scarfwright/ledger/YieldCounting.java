package org.scarfwright.ledger;

import java.math.BigInteger;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.Yield.Dot;
import org.scarfwright.ledger.YieldSums.Counted;
import org.scarfwright.ledger.YieldTable.Cut;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.springframework.beans.factory.ObjectProvider;

/** Where outcomes count. Remembers what plans say, so one is made for each question and not kept. */
final class YieldCounting {
    private final ObjectProvider<Plans> plans;
    private final ZoneId zone;
    private final Map<String, Attribution> woods = new HashMap<>();
    private final Map<Long, Set<String>> rescued = new HashMap<>();

    YieldCounting(ObjectProvider<Plans> plans, ZoneId zone) {
        this.plans = plans;
        this.zone = zone;
    }

    /**
     * What a piece counts as.
     *
     * @param wood key of its wood; empty when the piece is not there any more
     * @param lot empty when it is in none
     */
    record Attribution(String wood, String lot) {
        static final Attribution NONE = new Attribution("", "");
    }

    /** From now on a piece counts as this. */
    void attribute(String piece, Attribution attribution) {
        woods.put(piece, attribution);
    }

    boolean knows(String piece) {
        return woods.containsKey(piece);
    }

    Attribution attribution(String piece) {
        return woods.getOrDefault(piece, Attribution.NONE);
    }

    LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, zone);
    }

    List<Counted> of(By by, Cut cut, Outcome outcome) {
        Optional<YieldFigure> became = YieldFigure.of(outcome);
        if (became.isEmpty()) {
            return List.of();
        }
        Volume planned = planned(cut, outcome);
        if (by == By.DESIGN && outcome.neck() == null) {
            return shared(cut, outcome, became.get(), planned);
        }
        return List.of(new Counted(key(by, cut, outcome), became.get(), isRescued(outcome), outcome.volume(), planned));
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

    private String key(By by, Cut cut, Outcome outcome) {
        return switch (by) {
            case WEEK, MONTH -> period(by, day(cut.at()));
            case PERSON -> cut.who();
            case DESIGN -> outcome.neck() == null ? "" : outcome.neck().design();
            case WOOD -> attribution(outcome.fromPiece()).wood();
            case LOT -> attribution(outcome.fromPiece()).lot();
        };
    }

    /** The month of a day, or else its week, as they are written. */
    static String period(By by, LocalDate day) {
        return by == By.MONTH
                ? YearMonth.from(day).toString()
                : String.format(
                        Locale.ROOT,
                        "%04d-W%02d",
                        day.get(IsoFields.WEEK_BASED_YEAR),
                        day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    /** What was lost beside parts of several designs belongs to each by the volume of its parts. */
    private static List<Counted> shared(Cut cut, Outcome outcome, YieldFigure became, @Nullable Volume foreseen) {
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
        plans.getObject()
                .find(plan)
                .ifPresent(p -> p.layouts().stream()
                        .filter(l -> !l.books().rescued().isZero())
                        .map(Plan.PieceLayout::piece)
                        .forEach(pieces::add));
        return pieces;
    }

    /** The cut beside its plan; empty where it had none. */
    static Optional<Dot> dot(Cut cut) {
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
}
