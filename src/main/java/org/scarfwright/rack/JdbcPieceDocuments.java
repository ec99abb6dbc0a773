package org.scarfwright.rack;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Reads and writes pieces column by column, so that nothing that is stored is left out. */
@Repository
class JdbcPieceDocuments implements PieceDocuments {
    private static final int CHUNK = 500;

    /** How a column is written as text. */
    private enum Form {
        TEXT(Types.VARCHAR),
        NUMBER(Types.BIGINT),
        DAY(Types.DATE),
        FLAG(Types.BOOLEAN),
        MOMENT(Types.TIMESTAMP_WITH_TIMEZONE);

        private final int type;

        Form(int type) {
            this.type = type;
        }

        @Nullable
        String read(ResultSet rs, String column) throws SQLException {
            return switch (this) {
                case TEXT -> rs.getString(column);
                case NUMBER -> {
                    long number = rs.getLong(column);
                    yield rs.wasNull() ? null : Long.toString(number);
                }
                case DAY -> {
                    LocalDate day = rs.getObject(column, LocalDate.class);
                    yield day == null ? null : day.toString();
                }
                case FLAG -> Boolean.toString(rs.getBoolean(column));
                case MOMENT -> {
                    OffsetDateTime at = rs.getObject(column, OffsetDateTime.class);
                    yield at == null ? null : at.toInstant().toString();
                }
            };
        }

        @Nullable
        Object value(@Nullable String text) {
            if (text == null) {
                return null;
            }
            return switch (this) {
                case TEXT -> text;
                case NUMBER -> Long.valueOf(text);
                case DAY -> LocalDate.parse(text);
                case FLAG -> Boolean.valueOf(text);
                case MOMENT -> Instant.parse(text).atOffset(ZoneOffset.UTC);
            };
        }
    }

    private record Column(String name, Form form) {}

    /** Rows that belong to a piece: their table, what orders them and their columns. */
    private record Rows(String name, String table, String order, List<Column> columns) {}

    private static final List<Column> PIECE = columns(
            "id NUMBER, version NUMBER, code TEXT, import_key TEXT, state TEXT, species_id TEXT, length_um NUMBER,"
                    + " length_typed TEXT, width_um NUMBER, width_typed TEXT, thickness_um NUMBER, thickness_typed TEXT,"
                    + " grain TEXT, grain_slope NUMBER, trim_left_um NUMBER, trim_right_um NUMBER, mc_hundredths NUMBER,"
                    + " mc_read_on DAY, mc_meter TEXT, bow_um NUMBER, crook_um NUMBER, cup_um NUMBER, twist_um NUMBER,"
                    + " middle_bow_um NUMBER, middle_crook_um NUMBER, middle_twist_um NUMBER, warp_read_on DAY,"
                    + " set_aside FLAG, neck_allowed FLAG, cost_cents NUMBER, note TEXT, since DAY");

    private static final List<Rows> PARTS = List.of(
            new Rows(
                    "strip",
                    "piece_strip",
                    "position",
                    columns("position NUMBER, species_id TEXT, width_um NUMBER, grain TEXT")),
            new Rows(
                    "defect",
                    "piece_defect",
                    "position",
                    columns(
                            "position NUMBER, kind TEXT, from_length_um NUMBER, to_length_um NUMBER, from_width_um NUMBER,"
                                    + " to_width_um NUMBER, structural FLAG")),
            new Rows(
                    "warp",
                    "warp_reading",
                    "id",
                    columns("id NUMBER, bow_um NUMBER, crook_um NUMBER, cup_um NUMBER, twist_um NUMBER,"
                            + " middle_bow_um NUMBER, middle_crook_um NUMBER, middle_twist_um NUMBER, read_on DAY")),
            new Rows(
                    "moisture",
                    "moisture_reading",
                    "id",
                    columns("id NUMBER, mc_hundredths NUMBER, meter TEXT, read_on DAY")),
            new Rows("held", "reservation", "plan_id", columns("plan_id NUMBER, reserved_at MOMENT")));

    private static final String FROM = """
             from piece p
             left join lot l on l.id = p.lot_id
             left join place h on h.id = p.place_id
            """;

    private final JdbcClient jdbc;

    JdbcPieceDocuments(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private static List<Column> columns(String list) {
        List<Column> columns = new ArrayList<>();
        for (String one : list.split(",", -1)) {
            String[] words = one.strip().split(" ", -1);
            columns.add(new Column(words[0], Form.valueOf(words[1])));
        }
        return List.copyOf(columns);
    }

    @Override
    public Map<String, String> of(Collection<String> codes) {
        List<String> all = codes.stream().distinct().sorted().toList();
        Map<String, String> found = new LinkedHashMap<>();
        for (int i = 0; i < all.size(); i += CHUNK) {
            load(
                            "p.code in (:codes)",
                            Map.of("codes", all.subList(i, Math.min(all.size(), i + CHUNK))),
                            Integer.MAX_VALUE)
                    .forEach(d -> found.put(code(d), d.text()));
        }
        return found;
    }

    @Override
    public List<String> ofLots(Set<String> lotKeys) {
        return lotKeys.isEmpty()
                ? List.of()
                : jdbc.sql("select p.code from piece p join lot l on l.id = p.lot_id where l.code_key in (:keys)"
                                + " order by p.code_order")
                        .param("keys", lotKeys)
                        .query(String.class)
                        .list();
    }

    @Override
    public void each(BiConsumer<String, String> taker) {
        String last = "";
        List<PieceDocument> some;
        do {
            some = load("p.code_order > :last", Map.of("last", last), CHUNK);
            for (PieceDocument document : some) {
                taker.accept(code(document), document.text());
                last = PieceCodes.order(code(document));
            }
        } while (some.size() == CHUNK);
    }

    private List<PieceDocument> load(String condition, Map<String, ?> values, int most) {
        Map<Long, PieceDocument> byId = new LinkedHashMap<>();
        jdbc.sql("select p.*, l.code as lot_code, l.ready_on as lot_ready_on, h.name as place_name" + FROM + " where "
                        + condition + " order by p.code_order limit :most")
                .params(values)
                .param("most", most)
                .query(rs -> {
                    PieceDocument document = new PieceDocument();
                    for (Column column : PIECE) {
                        document.put(column.name(), column.form().read(rs, column.name()));
                    }
                    document.put("lot", rs.getString("lot_code"))
                            .put("lot_ready_on", Form.DAY.read(rs, "lot_ready_on"))
                            .put("place", rs.getString("place_name"));
                    byId.put(rs.getLong("id"), document);
                });
        if (byId.isEmpty()) {
            return List.of();
        }
        for (Rows rows : PARTS) {
            jdbc.sql("select * from " + rows.table() + " where piece_id in (:ids) order by piece_id, " + rows.order())
                    .param("ids", byId.keySet())
                    .query(rs -> {
                        PieceDocument document = byId.get(rs.getLong("piece_id"));
                        if (document != null) {
                            document.put(rows.name() + "." + rs.getString(rows.order()), row(rs, rows.columns()));
                        }
                    });
        }
        return List.copyOf(byId.values());
    }

    private static String row(ResultSet rs, List<Column> columns) throws SQLException {
        PieceDocument row = new PieceDocument();
        for (Column column : columns) {
            row.put(column.name(), column.form().read(rs, column.name()));
        }
        return row.text();
    }

    private static String code(PieceDocument document) {
        String code = document.get("code");
        if (code == null) {
            throw new IllegalArgumentException("a document without a code");
        }
        return code;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Set<String> putBack(Map<String, String> documents) {
        Set<String> lots = new HashSet<>();
        // One order for everybody, as pieces are reserved.
        new TreeMap<>(documents).forEach((code, text) -> {
            List<Now> there = jdbc.sql("select id, version from piece where code = :code")
                    .param("code", code)
                    .query((rs, n) -> new Now(rs.getLong("id"), rs.getLong("version")))
                    .list();
            there.forEach(now -> removeParts(now.id()));
            if (text.equals(NONE)) {
                there.forEach(now -> jdbc.sql("delete from piece where id = :id")
                        .param("id", now.id())
                        .update());
            } else {
                write(PieceDocument.read(text), there, lots);
            }
        });
        return lots;
    }

    private record Now(long id, long version) {}

    private void removeParts(long id) {
        for (Rows rows : PARTS) {
            jdbc.sql("delete from " + rows.table() + " where piece_id = :id")
                    .param("id", id)
                    .update();
        }
    }

    private void write(PieceDocument document, List<Now> there, Set<String> lots) {
        MapSqlParameterSource values = new MapSqlParameterSource();
        for (Column column : PIECE) {
            values.addValue(column.name(), column.form().value(document.get(column.name())), column.form().type);
        }
        String code = code(document);
        long id = number(document, "id");
        long version =
                there.isEmpty() ? number(document, "version") : there.get(0).version();
        if (!there.isEmpty() && there.get(0).id() != id) {
            throw new IllegalStateException("piece " + code + " is another row than its document says");
        }
        values.addValue("version", version + 1)
                .addValue("code_order", PieceCodes.order(code))
                .addValue("lot_id", lot(document, lots), Types.BIGINT)
                .addValue("place_id", place(document), Types.BIGINT);
        List<String> names = new ArrayList<>(PIECE.stream().map(Column::name).toList());
        names.addAll(List.of("code_order", "lot_id", "place_id"));
        jdbc.sql(
                        there.isEmpty()
                                ? "insert into piece (" + String.join(", ", names) + ") values (:"
                                        + String.join(", :", names) + ")"
                                : "update piece set fits_key = null, "
                                        + names.stream()
                                                .filter(n -> !n.equals("id"))
                                                .map(n -> n + " = :" + n)
                                                .collect(Collectors.joining(", "))
                                        + " where id = :id")
                .paramSource(values)
                .update();
        for (Rows rows : PARTS) {
            document.below(rows.name() + ".").values().forEach(row -> insert(id, rows, PieceDocument.read(row)));
        }
    }

    private void insert(long piece, Rows rows, PieceDocument row) {
        MapSqlParameterSource values = new MapSqlParameterSource("piece_id", piece);
        rows.columns().forEach(c -> values.addValue(c.name(), c.form().value(row.get(c.name())), c.form().type));
        List<String> names = rows.columns().stream().map(Column::name).toList();
        jdbc.sql("insert into " + rows.table() + " (piece_id, " + String.join(", ", names) + ") values (:piece_id, :"
                        + String.join(", :", names) + ")")
                .paramSource(values)
                .update();
    }

    private @Nullable Long lot(PieceDocument document, Set<String> lots) {
        String name = document.get("lot");
        if (name == null) {
            return null;
        }
        String key = PieceTable.key(name);
        LocalDate ready = (LocalDate) Form.DAY.value(document.get("lot_ready_on"));
        int changed = ready == null
                ? jdbc.sql("update lot set ready_on = null where code_key = :key and ready_on is not null")
                        .param("key", key)
                        .update()
                : jdbc.sql("update lot set ready_on = :day where code_key = :key"
                                + " and (ready_on is null or ready_on <> :day)")
                        .param("day", ready)
                        .param("key", key)
                        .update();
        if (changed > 0) {
            lots.add(key);
        }
        return jdbc.sql("select id from lot where code_key = :key")
                .param("key", key)
                .query(Long.class)
                .single();
    }

    private @Nullable Long place(PieceDocument document) {
        String name = document.get("place");
        return name == null
                ? null
                : jdbc.sql("select id from place where name_key = :key")
                        .param("key", PieceTable.key(name))
                        .query(Long.class)
                        .single();
    }

    @Override
    public Volume volumeThere(String document) {
        PieceDocument piece = PieceDocument.read(document);
        String state = piece.get("state");
        if (state == null || !PieceState.valueOf(state).isThere()) {
            return Volume.ZERO;
        }
        return Volume.of(
                Length.ofUm(number(piece, "length_um")),
                Length.ofUm(number(piece, "width_um")),
                Length.ofUm(number(piece, "thickness_um")));
    }

    @Override
    public OptionalLong planOf(String document) {
        return PieceDocument.read(document).below("held.").keySet().stream()
                .mapToLong(Long::parseLong)
                .findFirst();
    }

    private static long number(PieceDocument document, String name) {
        String text = document.get(name);
        return text == null ? 0 : Long.parseLong(text);
    }

    @Override
    public List<String> spellingFaults() {
        List<String> faults = new ArrayList<>();
        jdbc.sql("select code, code_order from piece order by code_order").query(rs -> {
            if (!PieceCodes.order(rs.getString("code")).equals(rs.getString("code_order"))) {
                faults.add("Piece " + rs.getString("code") + " is sorted under another code than its own.");
            }
        });
        jdbc.sql("select code, code_key from lot order by id").query(rs -> {
            if (!PieceTable.key(rs.getString("code")).equals(rs.getString("code_key"))) {
                faults.add("Lot " + rs.getString("code") + " is filed under another name than its own.");
            }
        });
        jdbc.sql("select name, name_key from place order by id").query(rs -> {
            if (!PieceTable.key(rs.getString("name")).equals(rs.getString("name_key"))) {
                faults.add("Place " + rs.getString("name") + " is filed under another name than its own.");
            }
        });
        return faults;
    }
}
