package org.scarfwright.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.Yield.Question;
import org.scarfwright.ledger.YieldMonths.Days;
import org.scarfwright.measure.Money;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** Reads the necks {@link YieldBook} keeps. */
@Service
class NeckCostService implements NeckCosts {
    private static final String NAMED = "plan_id, order_code, neck_number";

    private final JdbcClient jdbc;
    private final YieldSnapshot snapshot;

    NeckCostService(JdbcClient jdbc, YieldSnapshot snapshot) {
        this.jdbc = jdbc;
        this.snapshot = snapshot;
    }

    @Override
    public Necks necks(Wanted wanted, int page, int size) {
        if (size < 1 || size > LARGEST_PAGE) {
            throw new IllegalArgumentException("size " + size + " is not between 1 and " + LARGEST_PAGE);
        }
        return snapshot.read(() -> found(wanted, page, size));
    }

    private record Sum(long necks, Money cost) {}

    private Necks found(Wanted wanted, int page, int size) {
        Sum sum = jdbc.sql("select count(*) as necks, coalesce(sum(cost_cents), 0) as cost_cents from yield_neck where "
                        + which(wanted))
                .params(values(wanted))
                .query((rs, n) -> new Sum(
                        rs.getLong("necks"),
                        new Money(rs.getBigDecimal("cost_cents").longValueExact())))
                .single();
        int pages = (int) Math.max(1, (sum.necks() - 1) / size + 1);
        int shown = Math.max(1, Math.min(page, pages));
        List<Neck> necks = new ArrayList<>();
        load(wanted, (long) (shown - 1) * size, size, necks::add);
        return new Necks(necks, sum.cost(), shown, pages, sum.necks());
    }

    @Override
    public void each(Wanted wanted, Consumer<Neck> taker) {
        snapshot.read(() -> {
            load(wanted, 0, Long.MAX_VALUE, taker);
            return true;
        });
    }

    private static String which(Wanted wanted) {
        return "cut_on between :from and :to"
                + (wanted.design() == null ? "" : " and design_code = :design")
                + switch (wanted.cost()) {
                    case ALL -> "";
                    case KNOWN -> " and cost_cents is not null";
                    case UNKNOWN -> " and cost_cents is null";
                };
    }

    private static Map<String, Object> values(Wanted wanted) {
        Days days = Days.of(new Question(By.WEEK, wanted.from(), wanted.to()));
        Map<String, Object> values = new HashMap<>(Map.of("from", days.first(), "to", days.last()));
        if (wanted.design() != null) {
            values.put("design", wanted.design());
        }
        return values;
    }

    private void load(Wanted wanted, long skip, long most, Consumer<Neck> taker) {
        String unknownLast = "case when cost_cents is null then 1 else 0 end, cost_cents";
        String order = switch (wanted.first()) {
            case NEWEST -> "cut_on desc, ";
            case LEAST -> unknownLast + ", cut_on desc, ";
            case MOST -> unknownLast + " desc, cut_on desc, ";
        };
        jdbc.sql("select " + NAMED + ", design_code, cut_on, cost_cents from yield_neck where " + which(wanted)
                        + " order by " + order + NAMED + " limit :most offset :skip")
                .params(values(wanted))
                .param("most", most)
                .param("skip", skip)
                .query(rs -> {
                    taker.accept(neck(rs));
                });
    }

    private static Neck neck(ResultSet rs) throws SQLException {
        Long cents = EntryTable.number(rs, "cost_cents");
        return new Neck(
                new Losses.Neck(rs.getLong("plan_id"), rs.getString("order_code"), rs.getInt("neck_number")),
                rs.getString("design_code"),
                rs.getObject("cut_on", LocalDate.class),
                cents == null ? null : new Money(cents));
    }
}
