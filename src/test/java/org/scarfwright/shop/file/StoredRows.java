package org.scarfwright.shop.file;

import java.math.BigDecimal;
import java.sql.Clob;
import java.sql.Date;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.JdbcTemplate;

/** What a database says of itself: its tables, their columns and every row, in a form that is the same on each engine. */
final class StoredRows {
    private final JdbcTemplate jdbc;

    StoredRows(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /** Every table of the program, with its columns, from the database's own catalogue. */
    SortedMap<String, List<String>> columns() {
        SortedMap<String, List<String>> found = new TreeMap<>();
        jdbc.query(
                "select c.table_name, c.column_name from information_schema.columns c"
                        + " join information_schema.tables t on t.table_schema = c.table_schema"
                        + " and t.table_name = c.table_name"
                        + " where lower(c.table_schema) = 'public' and t.table_type = 'BASE TABLE'"
                        + " order by c.table_name, c.column_name",
                rs -> {
                    found.computeIfAbsent(rs.getString(1).toLowerCase(Locale.ROOT), t -> new ArrayList<>())
                            .add(rs.getString(2).toLowerCase(Locale.ROOT));
                });
        found.values().forEach(Collections::sort);
        return found;
    }

    /** The rows of a table in these columns, each as text, sorted. */
    List<String> of(String table, List<String> columns) {
        return jdbc.query("select " + String.join(", ", columns) + " from " + table, (rs, n) -> row(rs)).stream()
                .sorted()
                .toList();
    }

    private static String row(ResultSet rs) throws SQLException {
        ResultSetMetaData meta = rs.getMetaData();
        List<String> cells = new ArrayList<>();
        for (int i = 1; i <= meta.getColumnCount(); i++) {
            Object value = rs.getObject(i);
            cells.add(meta.getColumnName(i).toLowerCase(Locale.ROOT) + "=" + text(value));
        }
        return cells.stream().collect(Collectors.joining(" | "));
    }

    private static String text(@org.jspecify.annotations.Nullable Object value) throws SQLException {
        if (value instanceof Clob text) {
            return text.getSubString(1, (int) text.length());
        }
        if (value instanceof OffsetDateTime at) {
            return at.withOffsetSameInstant(ZoneOffset.UTC).toInstant().toString();
        }
        if (value instanceof Timestamp at) {
            return at.toInstant().toString();
        }
        if (value instanceof Date day) {
            return day.toLocalDate().toString();
        }
        return value instanceof BigDecimal number ? number.toPlainString() : String.valueOf(value);
    }
}
