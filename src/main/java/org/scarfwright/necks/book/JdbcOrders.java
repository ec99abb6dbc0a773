package org.scarfwright.necks.book;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcOrders implements Orders {
    private static final String SELECT =
            "select o.*, d.code as design_code from neck_order o" + " join neck_design d on d.id = o.design_id ";
    /** Said again in Java, because the engines' collations differ. */
    private static final Comparator<OrderEntry> IN_ORDER = Comparator.comparing(
            OrderEntry::order,
            Comparator.comparing(NeckOrder::week)
                    .thenComparing(NeckOrder::priority, Comparator.reverseOrder())
                    .thenComparing(NeckOrder::due)
                    .thenComparing(NeckOrder::code));

    private static final int CODES_AT_ONCE = 500;

    private final JdbcClient jdbc;

    JdbcOrders(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public List<NeckOrder> inWeek(IsoWeek week) {
        return entries(Optional.of(week)).stream()
                .filter(e -> !e.cancelled())
                .map(OrderEntry::order)
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<IsoWeek> weeks() {
        return weeks("where not cancelled");
    }

    /** Weeks with any order on file, also those called off. */
    List<IsoWeek> weeksOnFile() {
        return weeks("");
    }

    private List<IsoWeek> weeks(String where) {
        return jdbc
                .sql("select distinct iso_week from neck_order " + where + " order by iso_week")
                .query(String.class)
                .list()
                .stream()
                .map(IsoWeek::parse)
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<NeckOrder> find(String code) {
        return entry(code).map(OrderEntry::order);
    }

    Optional<OrderEntry> entry(String code) {
        return jdbc.sql(SELECT + "where o.code = :code")
                .param("code", DraftReader.plainCode(code))
                .query((rs, row) -> entry(rs))
                .optional();
    }

    /** Of one week, or of all; by priority (highest first), due day, code. */
    List<OrderEntry> entries(Optional<IsoWeek> week) {
        return jdbc
                .sql(SELECT + (week.isPresent() ? "where o.iso_week = :week " : "")
                        + "order by o.iso_week, o.priority desc, o.due_day, o.code")
                .param("week", week.map(IsoWeek::toString).orElse(""))
                .query((rs, row) -> entry(rs))
                .list()
                .stream()
                .sorted(IN_ORDER)
                .toList();
    }

    List<NeckOrder> openOf(String designCode) {
        return jdbc
                .sql(SELECT + "where d.code = :code and not o.cancelled"
                        + " order by o.iso_week, o.priority desc, o.due_day, o.code")
                .param("code", DraftReader.plainCode(designCode))
                .query((rs, row) -> entry(rs))
                .list()
                .stream()
                .sorted(IN_ORDER)
                .map(OrderEntry::order)
                .toList();
    }

    /** Those of these codes that there are. */
    List<OrderEntry> entries(Collection<String> codes) {
        List<String> wanted = List.copyOf(codes);
        List<OrderEntry> found = new ArrayList<>();
        for (int from = 0; from < wanted.size(); from += CODES_AT_ONCE) {
            found.addAll(jdbc.sql(SELECT + "where o.code in (:codes) order by o.code")
                    .param("codes", wanted.subList(from, Math.min(wanted.size(), from + CODES_AT_ONCE)))
                    .query((rs, row) -> entry(rs))
                    .list());
        }
        return found;
    }

    boolean has(String code) {
        return jdbc.sql("select count(*) from neck_order where code = :code")
                        .param("code", code)
                        .query(Long.class)
                        .single()
                > 0;
    }

    void insert(NeckOrder order, long designId) {
        jdbc.sql("insert into neck_order (code, design_id, quantity, due_day, priority, iso_week, customer_note)"
                        + " values (:code, :design, :quantity, :due, :priority, :week, :note)")
                .param("code", order.code())
                .param("design", designId)
                .param("quantity", order.quantity())
                .param("due", order.due())
                .param("priority", order.priority())
                .param("week", order.week().toString())
                .param("note", order.customerNote())
                .update();
    }

    /** @return false when the order has another version than the one that was seen */
    boolean update(long id, long seenVersion, NeckOrder order, long designId) {
        return jdbc.sql("update neck_order set version = version + 1, design_id = :design, quantity = :quantity,"
                                + " due_day = :due, priority = :priority, iso_week = :week, customer_note = :note"
                                + " where id = :id and version = :seen")
                        .param("id", id)
                        .param("seen", seenVersion)
                        .param("design", designId)
                        .param("quantity", order.quantity())
                        .param("due", order.due())
                        .param("priority", order.priority())
                        .param("week", order.week().toString())
                        .param("note", order.customerNote())
                        .update()
                == 1;
    }

    /** @return false when it was so already */
    boolean setCancelled(String code, boolean cancelled) {
        return jdbc.sql("update neck_order set version = version + 1, cancelled = :cancelled"
                                + " where code = :code and cancelled <> :cancelled")
                        .param("code", code)
                        .param("cancelled", cancelled)
                        .update()
                == 1;
    }

    private static OrderEntry entry(ResultSet rs) throws SQLException {
        return new OrderEntry(
                new NeckOrder(
                        rs.getLong("id"),
                        rs.getLong("version"),
                        rs.getString("code"),
                        rs.getString("design_code"),
                        rs.getInt("quantity"),
                        rs.getObject("due_day", LocalDate.class),
                        rs.getInt("priority"),
                        IsoWeek.parse(rs.getString("iso_week")),
                        rs.getString("customer_note")),
                rs.getBoolean("cancelled"));
    }
}
