package org.scarfwright.ledger;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Wood is neither made nor lost by an entry: what its pieces lose are its outcomes but for rests, whose wood stands with the
 * pieces they became. So what came is what is there and the sum of all those outcomes, and figures of entries that were taken
 * back cancel out.
 */
@Repository
class JdbcWoodFlow implements WoodFlow {
    private static final String THERE = "select coalesce(sum(cast(p.length_um as numeric(30, 0)) * p.width_um"
            + " * p.thickness_um), 0) from piece p where p.state in ('ON_RACK', 'RESERVED', 'AT_BENCH')";
    private static final String IS_REST =
            " exists (select 1 from outcome o where o.to_piece = p.code and o.kind = 'REST')";

    private final JdbcClient jdbc;

    JdbcWoodFlow(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Flow now() {
        Map<Fate, BigInteger> sums = new EnumMap<>(Fate.class);
        jdbc.sql("select kind, cause, sum(volume_um3) as volume_um3 from outcome where kind <> 'REST'"
                        + " group by kind, cause order by kind, cause")
                .query(rs -> {
                    sums.merge(
                            fate(rs.getString("kind"), rs.getString("cause")),
                            rs.getBigDecimal("volume_um3").toBigIntegerExact(),
                            BigInteger::add);
                });
        sums.put(Fate.RESTS, there(" and" + IS_REST));
        sums.put(Fate.AS_IT_CAME, there(" and not" + IS_REST));
        BigInteger came = sums.values().stream().reduce(BigInteger.ZERO, BigInteger::add);
        List<Fate> fates = new ArrayList<>(sums.keySet());
        fates.removeIf(f -> sums.getOrDefault(f, BigInteger.ZERO).signum() == 0);
        List<BigInteger> volumes =
                fates.stream().map(f -> sums.getOrDefault(f, BigInteger.ZERO)).toList();
        List<BigInteger> weights =
                volumes.stream().map(v -> v.max(BigInteger.ZERO)).toList();
        List<BigInteger> hundredths = weights.stream().allMatch(w -> w.signum() == 0)
                ? weights
                : Apportionment.of(BigInteger.valueOf(10_000), weights);
        List<Share> shares = new ArrayList<>();
        for (int i = 0; i < fates.size(); i++) {
            shares.add(new Share(
                    fates.get(i), new Volume(volumes.get(i)), hundredths.get(i).intValueExact()));
        }
        return new Flow(new Volume(came), shares);
    }

    private BigInteger there(String condition) {
        return jdbc.sql(THERE + condition).query(BigDecimal.class).single().toBigIntegerExact();
    }

    private static Fate fate(String kind, @Nullable String cause) {
        return switch (Outcome.Kind.valueOf(kind)) {
            case PART -> Fate.NECKS;
            case SOLD -> Fate.SOLD;
            case UNEXPLAINED -> Fate.UNEXPLAINED;
            case REST -> Fate.RESTS;
            case WASTE ->
                cause == null
                        ? Fate.UNEXPLAINED
                        : cause.equals(Outcome.Cause.REST.name()) ? Fate.SMALL_RESTS : Fate.valueOf(cause);
        };
    }
}
