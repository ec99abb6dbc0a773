package org.scarfwright.ledger;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Volume;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Wood is neither made nor lost by an entry: what its pieces lose are its outcomes but for rests, whose wood stands with the
 * pieces they became. So what came is what is there and the sum of all those outcomes, as {@link YieldBook} keeps them.
 */
@Repository
class JdbcWoodFlow implements WoodFlow {
    private static final String THERE = "select coalesce(sum(case when t.rest then t.volume_um3 end), 0) as rests_um3,"
            + " coalesce(sum(case when t.rest then 0 else t.volume_um3 end), 0) as as_it_came_um3 from (select"
            + " exists (select 1 from outcome o where o.to_piece = p.code and o.kind = 'REST') as rest,"
            + " cast(p.length_um as numeric(30, 0)) * p.width_um * p.thickness_um as volume_um3"
            + " from piece p where p.state in ('ON_RACK', 'RESERVED', 'AT_BENCH')) t";

    private final JdbcClient jdbc;
    private final YieldSnapshot snapshot;

    JdbcWoodFlow(JdbcClient jdbc, YieldSnapshot snapshot) {
        this.jdbc = jdbc;
        this.snapshot = snapshot;
    }

    @Override
    public Flow now() {
        return snapshot.read(this::read);
    }

    private Flow read() {
        Map<Fate, BigInteger> sums = new EnumMap<>(Fate.class);
        jdbc.sql(THERE).query(rs -> {
            sums.put(Fate.RESTS, YieldKept.volume(rs, "rests_um3").um3());
            sums.put(Fate.AS_IT_CAME, YieldKept.volume(rs, "as_it_came_um3").um3());
        });
        jdbc.sql("select " + YieldKept.SOLD + ", " + YieldKept.volumeColumns(false)
                        + " from yield_sum where by_what = 'DAY' order by begins")
                .query(rs -> {
                    sums.merge(Fate.SOLD, YieldKept.volume(rs, YieldKept.SOLD).um3(), BigInteger::add);
                    for (Fate fate : Fate.values()) {
                        if (fate.figure().isPresent()) {
                            sums.merge(
                                    fate,
                                    YieldKept.volume(rs, fate.figure().get().word() + YieldKept.REAL)
                                            .um3(),
                                    BigInteger::add);
                        }
                    }
                });
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
}
