package org.scarfwright.shop.file;

import java.math.BigDecimal;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopList.Field;
import org.springframework.jdbc.core.BatchPreparedStatementSetter;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Repository;

/** The tables behind the lists. Names of tables and columns come from the rooms alone, never from a file. */
@Repository
class ShopTables {
    private static final int ROWS_AT_ONCE = 1000;
    private static final int LARGE_ROWS_AT_ONCE = 4;

    private final JdbcTemplate jdbc;

    ShopTables(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Gives the rows on in the order of their keys, some at a time: each step asks for what comes after the last row, so that
     * neither the program nor the database holds a whole table.
     */
    void rows(ShopList list, Consumer<@Nullable Object[]> to) {
        int most = list.heavy() ? LARGE_ROWS_AT_ONCE : ROWS_AT_ONCE;
        @Nullable Object[] last = null;
        do {
            last = some(list, last, most, to);
        } while (last != null);
    }

    /** @return the keys of the last row, or null when there is nothing after it */
    private @Nullable Object @Nullable [] some(
            ShopList list, @Nullable Object @Nullable [] after, int most, Consumer<@Nullable Object[]> to) {
        List<@Nullable Object> parameters = new ArrayList<>();
        List<String> conditions = new ArrayList<>();
        if (!list.only().isEmpty()) {
            conditions.add(list.only());
        }
        if (after != null) {
            if (list.keys().size() > 1) {
                // The first key alone, so that the index on the keys is used from there.
                conditions.add(list.keys().get(0) + " >= ?");
                parameters.add(after[0]);
            }
            conditions.add(beyond(list.keys(), after, 0, parameters));
        }
        String where = conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions);
        String sql = "select " + columns(list) + " from " + list.table() + where + " order by "
                + String.join(", ", list.keys()) + " fetch first " + most + " rows only";
        List<@Nullable Object[]> last = new ArrayList<>(1);
        int[] count = {0};
        jdbc.query(
                sql,
                statement -> {
                    statement.setFetchSize(most);
                    for (int i = 0; i < parameters.size(); i++) {
                        set(statement, i + 1, parameters.get(i));
                    }
                },
                (ResultSet rs) -> {
                    @Nullable Object[] row = row(list, rs);
                    count[0]++;
                    if (count[0] == most) {
                        last.add(keys(list, row));
                    }
                    to.accept(row);
                });
        return last.isEmpty() ? null : last.get(0);
    }

    /** Greater than the last row, key by key: a > ? or (a = ? and (b > ? …)). */
    private static String beyond(
            List<String> keys, @Nullable Object[] after, int from, List<@Nullable Object> parameters) {
        String key = keys.get(from);
        parameters.add(after[from]);
        if (from == keys.size() - 1) {
            return key + " > ?";
        }
        parameters.add(after[from]);
        return "(" + key + " > ? or (" + key + " = ? and " + beyond(keys, after, from + 1, parameters) + "))";
    }

    private static @Nullable Object[] keys(ShopList list, @Nullable Object[] row) {
        List<String> names = list.fields().stream().map(Field::name).toList();
        return list.keys().stream().map(k -> row[names.indexOf(k)]).toArray();
    }

    private static @Nullable Object[] row(ShopList list, ResultSet rs) throws SQLException {
        @Nullable Object[] row = new @Nullable Object[list.fields().size()];
        for (int i = 0; i < row.length; i++) {
            Object value = switch (list.fields().get(i).kind()) {
                case WHOLE -> rs.getLong(i + 1);
                case DIGITS, DECIMAL -> rs.getBigDecimal(i + 1);
                case TEXT -> rs.getString(i + 1);
                case YES -> rs.getBoolean(i + 1);
                case DAY -> rs.getObject(i + 1, LocalDate.class);
                case MOMENT -> moment(rs.getObject(i + 1, OffsetDateTime.class));
            };
            row[i] = rs.wasNull() ? null : value;
        }
        return row;
    }

    private static @Nullable Instant moment(@Nullable OffsetDateTime at) {
        return at == null ? null : at.toInstant();
    }

    private static String columns(ShopList list) {
        return list.fields().stream().map(Field::name).collect(Collectors.joining(", "));
    }

    void insert(ShopList list, List<@Nullable Object[]> rows) {
        String marks = list.fields().stream().map(f -> "?").collect(Collectors.joining(", "));
        jdbc.batchUpdate(
                "insert into " + list.table() + " (" + columns(list) + ") values (" + marks + ")",
                new BatchPreparedStatementSetter() {
                    @Override
                    public void setValues(PreparedStatement statement, int i) throws SQLException {
                        @Nullable Object[] row = rows.get(i);
                        for (int c = 0; c < row.length; c++) {
                            Object value = row[c];
                            if (value == null) {
                                statement.setNull(
                                        c + 1, typeOf(list.fields().get(c).kind()));
                            } else {
                                set(statement, c + 1, value);
                            }
                        }
                    }

                    @Override
                    public int getBatchSize() {
                        return rows.size();
                    }
                });
    }

    private static void set(PreparedStatement statement, int place, @Nullable Object value) throws SQLException {
        if (value instanceof Long whole) {
            statement.setLong(place, whole);
        } else if (value instanceof String text) {
            statement.setString(place, text);
        } else if (value instanceof Boolean yes) {
            statement.setBoolean(place, yes);
        } else if (value instanceof BigDecimal number) {
            statement.setBigDecimal(place, number);
        } else if (value instanceof Instant at) {
            statement.setObject(place, at.atOffset(ZoneOffset.UTC));
        } else {
            statement.setObject(place, value);
        }
    }

    private static int typeOf(ShopList.Kind kind) {
        return switch (kind) {
            case WHOLE -> Types.BIGINT;
            case DIGITS, DECIMAL -> Types.NUMERIC;
            case TEXT -> Types.VARCHAR;
            case YES -> Types.BOOLEAN;
            case DAY -> Types.DATE;
            case MOMENT -> Types.TIMESTAMP_WITH_TIMEZONE;
        };
    }

    boolean holdsAny(ShopList list) {
        return !jdbc.queryForList(
                        "select 1 from " + list.table()
                                + (list.only().isEmpty() ? "" : " where " + list.only())
                                + " fetch first 1 row only",
                        Integer.class)
                .isEmpty();
    }

    void clear(ShopList list) {
        jdbc.update("delete from " + list.table() + (list.only().isEmpty() ? "" : " where " + list.only()));
    }

    /**
     * Keeps everybody else from writing until the transaction ends; reading goes on. H2 has one writer at a time, and locking a row
     * makes this transaction the one; on PostgreSQL the tables themselves are locked.
     */
    void keepWritersOut(List<ShopList> lists) {
        String product = String.valueOf(
                jdbc.execute((ConnectionCallback<String>) c -> c.getMetaData().getDatabaseProductName()));
        if (product.equals("PostgreSQL")) {
            String tables =
                    lists.stream().map(ShopList::table).distinct().sorted().collect(Collectors.joining(", "));
            jdbc.execute("lock table shop_file_read, " + tables + " in share row exclusive mode");
        } else {
            jdbc.queryForList("select id from shop_start where id = 1 for update", Integer.class);
        }
    }

    /** The tables whose ids the database counts itself. */
    Set<String> numbered() {
        return jdbc
                .queryForList(
                        "select table_name from information_schema.columns"
                                + " where is_identity = 'YES' and lower(column_name) = 'id' order by table_name",
                        String.class)
                .stream()
                .map(t -> t.toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet());
    }

    /** The next id the database gives. H2 ends the transaction with this statement. */
    void restart(ShopList list, long next) {
        jdbc.execute("alter table " + list.table() + " alter column id restart with " + next);
    }
}
