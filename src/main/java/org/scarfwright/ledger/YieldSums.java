package org.scarfwright.ledger;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Volume;

/**
 * Volumes of some cuts, exact.
 *
 * @param real what was recorded, for every figure
 * @param planned what the plans said of the same cuts, for what a plan says anything of; zero elsewhere
 * @param comparable of what was recorded, that which a plan said something of
 */
public record YieldSums(
        Map<YieldFigure, Volume> real, Map<YieldFigure, Volume> planned, Map<YieldFigure, Volume> comparable) {
    public YieldSums {
        real = Map.copyOf(real);
        planned = Map.copyOf(planned);
        comparable = Map.copyOf(comparable);
    }

    public Volume of(YieldFigure figure) {
        return real.getOrDefault(figure, Volume.ZERO);
    }

    public Volume plannedOf(YieldFigure figure) {
        return planned.getOrDefault(figure, Volume.ZERO);
    }

    public Volume comparableOf(YieldFigure figure) {
        return comparable.getOrDefault(figure, Volume.ZERO);
    }

    /** What really was more than planned, of what a plan said something of. */
    public Volume overPlan(YieldFigure figure) {
        return comparableOf(figure).minus(plannedOf(figure));
    }

    /**
     * Parts ÷ (input − usable rests); empty when nothing was used.
     *
     * <p><b>Source:</b> defined by this program.
     */
    public OptionalDouble netYield() {
        return share(YieldFigure.PARTS, of(YieldFigure.INPUT).minus(of(YieldFigure.RESTS)));
    }

    /**
     * (Parts + usable rests) ÷ input; empty when nothing was cut.
     *
     * <p><b>Source:</b> defined by this program.
     */
    public OptionalDouble recovery() {
        Volume input = of(YieldFigure.INPUT);
        return input.signum() <= 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        of(YieldFigure.PARTS).plus(of(YieldFigure.RESTS)).shareOf(input));
    }

    /**
     * Share of the parts' volume that came from rescued pieces; empty when there are no parts.
     *
     * <p><b>Source:</b> defined by this program.
     */
    public OptionalDouble rescue() {
        return share(YieldFigure.RESCUED, of(YieldFigure.PARTS));
    }

    private OptionalDouble share(YieldFigure part, Volume whole) {
        return whole.signum() <= 0 ? OptionalDouble.empty() : OptionalDouble.of(of(part).shareOf(whole));
    }

    /**
     * Where the wood went, each share in hundredths of a percent of all that came out, so that together they are 10,000; empty
     * when nothing came out. What is below nothing, such as a difference by which more came out than went in, has no share.
     */
    public List<Share> flow() {
        List<YieldFigure> became = YieldFigure.became();
        List<BigInteger> weights =
                became.stream().map(f -> of(f).um3().max(BigInteger.ZERO)).toList();
        if (weights.stream().allMatch(w -> w.signum() == 0)) {
            return List.of();
        }
        List<BigInteger> shares = Apportionment.of(BigInteger.valueOf(10_000), weights);
        List<Share> flow = new ArrayList<>();
        for (int i = 0; i < became.size(); i++) {
            if (weights.get(i).signum() > 0) {
                flow.add(new Share(
                        became.get(i), of(became.get(i)), shares.get(i).intValueExact()));
            }
        }
        return flow;
    }

    /** @param hundredths of a percent */
    public record Share(YieldFigure figure, Volume volume, int hundredths) {}

    /** Sums of one figure, as the database has them. */
    record Kept(Volume real, Volume planned, Volume comparable) {}

    /** Adds up. */
    static final class Adder {
        private final Map<YieldFigure, Volume> real = new EnumMap<>(YieldFigure.class);
        private final Map<YieldFigure, Volume> planned = new EnumMap<>(YieldFigure.class);
        private final Map<YieldFigure, Volume> comparable = new EnumMap<>(YieldFigure.class);

        /**
         * Adds outcomes that became one figure.
         *
         * @param rescued whether all of them are rescued parts
         */
        void add(YieldFigure became, boolean rescued, Kept sums) {
            YieldFigure foreseen = became.planned();
            for (YieldFigure one : YieldFigure.values()) {
                if (one.holds(became, rescued)) {
                    merge(real, one, sums.real());
                    merge(comparable, one, sums.comparable());
                }
                if (one.holds(foreseen, rescued)) {
                    merge(planned, one, sums.planned());
                }
            }
        }

        /**
         * Adds a sum that was kept.
         *
         * @param figure what the wood became, or {@link YieldFigure#RESCUED}
         */
        void add(YieldFigure figure, Kept sums) {
            for (YieldFigure one : YieldFigure.values()) {
                if (figure == YieldFigure.RESCUED ? one == figure : one.holds(figure, false)) {
                    merge(real, one, sums.real());
                    merge(planned, one, sums.planned());
                    merge(comparable, one, sums.comparable());
                }
            }
        }

        /** Adds all of another. */
        void add(Adder o) {
            o.real.forEach((f, v) -> merge(real, f, v));
            o.planned.forEach((f, v) -> merge(planned, f, v));
            o.comparable.forEach((f, v) -> merge(comparable, f, v));
        }

        private static void merge(Map<YieldFigure, Volume> sums, YieldFigure figure, Volume volume) {
            if (!volume.isZero()) {
                sums.merge(figure, volume, Volume::plus);
            }
        }

        YieldSums sums() {
            return new YieldSums(real, planned, comparable);
        }
    }

    /**
     * An outcome, or a share of one, where it counts.
     *
     * @param planned the same share of what the plan said; empty where it said nothing
     */
    record Counted(
            String key,
            YieldFigure became,
            boolean rescued,
            Volume counted,
            @Nullable Volume planned) {

        YieldFigure plannedAs() {
            return became.planned();
        }
    }
}
