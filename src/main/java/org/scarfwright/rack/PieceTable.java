package org.scarfwright.rack;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The rack's rows. Reads any number of pieces in three queries; writes many in batches. */
@Repository
class PieceTable {
    /** A database compares each row with every value of a list, so long lists cost the square of their length. */
    private static final int CHUNK = 250;

    private static final String FROM = """
             from piece p
             left join lot l on l.id = p.lot_id
             left join place h on h.id = p.place_id
            """;

    private final JdbcClient jdbc;
    private final NamedParameterJdbcOperations batches;

    PieceTable(JdbcClient jdbc, NamedParameterJdbcOperations batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** Which rows of {@code piece p}, {@code lot l} and {@code place h}. */
    record Where(String condition, Map<String, ?> values) {}

    /**
     * A piece to write.
     *
     * @param importKey by what an import knows it again; empty for a piece with a code of its own
     */
    record NewPiece(String code, @Nullable String importKey, PieceFacts facts, LocalDate since) {}

    /** In order of their codes. */
    List<Piece> load(Where where) {
        return load(
                where,
                new Where(
                        "x.piece_id in (select p.id" + from(where) + " where " + where.condition() + ")",
                        where.values()));
    }

    /** @param parts which rows {@code x} of strips and defects belong to them */
    private List<Piece> load(Where where, Where parts) {
        Map<Long, List<PieceWood.LaminationStrip>> strips = new HashMap<>();
        jdbc.sql("select x.piece_id, x.species_id, x.width_um, x.grain from piece_strip x where " + parts.condition()
                        + " order by x.piece_id, x.position")
                .params(parts.values())
                .query(rs -> {
                    strips.computeIfAbsent(rs.getLong("piece_id"), id -> new ArrayList<>())
                            .add(new PieceWood.LaminationStrip(
                                    rs.getString("species_id"),
                                    length(rs, "width_um"),
                                    GrainCut.valueOf(rs.getString("grain"))));
                });
        Map<Long, List<Defect>> defects = new HashMap<>();
        jdbc.sql("select x.* from piece_defect x where " + parts.condition() + " order by x.piece_id, x.position")
                .params(parts.values())
                .query(rs -> {
                    defects.computeIfAbsent(rs.getLong("piece_id"), id -> new ArrayList<>())
                            .add(defect(rs));
                });
        return jdbc.sql("select p.*, l.code as lot_code, l.ready_on as lot_ready_on, h.name as place_name" + FROM
                        + " where " + where.condition() + " order by p.code_order")
                .params(where.values())
                .query((rs, n) -> piece(rs, strips, defects))
                .list();
    }

    /** In order of their codes; codes that do not exist are left out. */
    List<Piece> loadCodes(Collection<String> codes) {
        List<Piece> pieces = new ArrayList<>();
        for (List<String> chunk : chunks(codes)) {
            pieces.addAll(loadAll(ids(new Where("p.code in (:codes)", Map.of("codes", chunk)), "p.id")));
        }
        pieces.sort(Comparator.comparing(Piece::code));
        return pieces;
    }

    /** In the order of the ids. */
    List<Piece> loadIds(List<Long> ids) {
        Map<Long, Piece> byId = new HashMap<>();
        loadAll(ids).forEach(p -> byId.put(p.id(), p));
        return ids.stream().filter(byId::containsKey).map(byId::get).toList();
    }

    /** In order of their codes. Strips and defects are asked for by the ids too: each then comes off its own index. */
    private List<Piece> loadAll(List<Long> ids) {
        Map<String, List<Long>> these = Map.of("ids", ids);
        return ids.isEmpty()
                ? List.of()
                : load(new Where("p.id in (:ids)", these), new Where("x.piece_id in (:ids)", these));
    }

    /**
     * What people look for a piece by.
     *
     * @param order its code as lists are sorted by it
     * @param alike its code as {@link SpokenCodes} compares it
     * @param words all it is found by, in capitals: its code, its note, its lot and its place, a line each
     * @param place key of its place; empty without one
     * @param woods ids of its species, or of those of its strips
     */
    record Text(
            long id,
            String code,
            String order,
            String alike,
            PieceState state,
            LocalDate since,
            long length,
            long width,
            long thickness,
            String words,
            String place,
            Set<String> woods) {}

    /** Of every piece the rack ever had, in an order of the database's own. */
    List<Text> texts() {
        return texts(new Where("1 = 1", Map.of()));
    }

    /** Of pieces with these codes; those that do not exist are left out. */
    List<Text> texts(Collection<String> codes) {
        List<Text> texts = new ArrayList<>();
        for (List<String> chunk : chunks(codes)) {
            texts.addAll(texts(new Where("p.code in (:codes)", Map.of("codes", chunk))));
        }
        return texts;
    }

    private List<Text> texts(Where where) {
        Map<Long, Set<String>> strips = new HashMap<>();
        jdbc.sql("select s.piece_id, s.species_id from piece p join piece_strip s on s.piece_id = p.id where "
                        + where.condition() + " order by s.piece_id, s.position")
                .params(where.values())
                .query(rs -> {
                    strips.computeIfAbsent(rs.getLong("piece_id"), id -> new HashSet<>())
                            .add(rs.getString("species_id"));
                });
        return jdbc.sql("select p.id, p.code, p.code_order, p.state, p.since, p.length_um, p.width_um, p.thickness_um,"
                        + " p.note, p.species_id, l.code_key as lot_key, h.name_key as place_key" + FROM + " where "
                        + where.condition() + " order by p.id")
                .params(where.values())
                .query((rs, n) -> text(rs, strips))
                .list();
    }

    private static Text text(ResultSet rs, Map<Long, Set<String>> strips) throws SQLException {
        long id = rs.getLong("id");
        String species = rs.getString("species_id");
        String code = rs.getString("code");
        String place = Objects.requireNonNullElse(rs.getString("place_key"), "");
        return new Text(
                id,
                code,
                rs.getString("code_order"),
                SpokenCodes.alikeOf(code),
                PieceState.valueOf(rs.getString("state")),
                rs.getObject("since", LocalDate.class),
                rs.getLong("length_um"),
                rs.getLong("width_um"),
                rs.getLong("thickness_um"),
                String.join(
                        "\n",
                        code,
                        rs.getString("note").toUpperCase(Locale.ROOT),
                        Objects.requireNonNullElse(rs.getString("lot_key"), ""),
                        place),
                place,
                species == null ? strips.getOrDefault(id, Set.of()) : Set.of(species));
    }

    /** Whether any lamination has a strip of this wood. */
    boolean isInStrips(String species) {
        return !jdbc.sql("select piece_id from piece_strip where species_id = :species order by piece_id limit 1")
                .param("species", species)
                .query(Long.class)
                .list()
                .isEmpty();
    }

    /** Ids of all of them. */
    List<Long> ids(Where where, String order) {
        return jdbc.sql("select p.id" + from(where) + " where " + where.condition() + " order by " + order)
                .params(where.values())
                .query(Long.class)
                .list();
    }

    /** Lots and places are only looked up where they are asked about: else a list is read off an index. */
    private static String from(Where where) {
        return where.condition().contains("l.") || where.condition().contains("h.") ? FROM : " from piece p";
    }

    long count(Where where) {
        return jdbc.sql("select count(*)" + from(where) + " where " + where.condition())
                .params(where.values())
                .query(Long.class)
                .single();
    }

    List<Long> ids(Where where, String order, int limit, long offset) {
        return jdbc.sql("select p.id" + from(where) + " where " + where.condition() + " order by " + order
                        + " limit :most offset :skipped")
                .params(where.values())
                .param("most", limit)
                .param("skipped", offset)
                .query(Long.class)
                .list();
    }

    /**
     * Pieces in one of these states that were never judged under this key, or changed since; in order of their codes, which is
     * the order pieces are reserved in, so that the two never wait for each other in a circle.
     */
    List<Long> notJudged(String key, Collection<PieceState> states) {
        Map<String, Long> byOrder = new TreeMap<>();
        for (PieceState state : states) {
            // Asked for one after the other: each is a short stretch of an index, and there is mostly nothing in it.
            for (String which : List.of("fits_key is null", "fits_key < :key", "fits_key > :key")) {
                jdbc.sql("select id, code_order from piece where state = :state and " + which + " order by id")
                        .param("state", state.name())
                        .param("key", key)
                        .query(rs -> {
                            byOrder.put(rs.getString("code_order"), rs.getLong("id"));
                        });
            }
        }
        return List.copyOf(byOrder.values());
    }

    /** Keeps what these pieces can be, for those that were not changed meanwhile. */
    void keepFitness(String key, Map<Piece, PieceUses.Fitness> fitness) {
        List<MapSqlParameterSource> rows = new ArrayList<>();
        fitness.forEach((piece, fits) -> rows.add(new MapSqlParameterSource("id", piece.id())
                .addValue("version", piece.version())
                .addValue("key", key)
                .addValue("neck", fits.neck())
                .addValue("head", fits.head())));
        batch(
                "update piece set fits_key = :key, fits_neck = :neck, fits_head = :head"
                        + " where id = :id and version = :version",
                rows);
    }

    /** Those of the codes that exist. */
    Set<String> existing(Collection<String> codes) {
        Set<String> found = new HashSet<>();
        for (List<String> chunk : chunks(codes)) {
            found.addAll(jdbc.sql("select code from piece where code in (:codes) order by code")
                    .param("codes", chunk)
                    .query(String.class)
                    .list());
        }
        return found;
    }

    /** Codes by import key, for those of the keys that exist. */
    Map<String, String> codesByImportKey(Collection<String> keys) {
        Map<String, String> found = new HashMap<>();
        for (List<String> chunk : chunks(keys)) {
            jdbc.sql("select import_key, code from piece where import_key in (:keys) order by code")
                    .param("keys", chunk)
                    .query(rs -> {
                        found.put(rs.getString("import_key"), rs.getString("code"));
                    });
        }
        return found;
    }

    Map<PieceState, Pieces.Stock> stock(Collection<PieceState> states) {
        Map<PieceState, Pieces.Stock> stock = new EnumMap<>(PieceState.class);
        states.forEach(state -> stock.put(state, Pieces.Stock.NONE));
        jdbc.sql(
                        "select state, count(*) as pieces, sum(cast(length_um as numeric(30, 0)) * width_um * thickness_um) as um3"
                                + " from piece where state in (:states) group by state order by state")
                .param("states", states.stream().map(Enum::name).toList())
                .query(rs -> {
                    stock.put(
                            PieceState.valueOf(rs.getString("state")),
                            new Pieces.Stock(
                                    rs.getLong("pieces"),
                                    new Volume(rs.getBigDecimal("um3").toBigIntegerExact())));
                });
        return stock;
    }

    /** Every reading of these pieces by piece id, the newest first. */
    Map<Long, List<Warp>> warpReadings(Collection<Long> ids) {
        Map<Long, List<Warp>> readings = new HashMap<>();
        for (List<Long> chunk : chunks(ids)) {
            jdbc.sql("select * from warp_reading where piece_id in (:ids) order by read_on desc, id desc")
                    .param("ids", chunk)
                    .query(rs -> {
                        readings.computeIfAbsent(rs.getLong("piece_id"), id -> new ArrayList<>())
                                .add(warp(rs, rs.getObject("read_on", LocalDate.class)));
                    });
        }
        return readings;
    }

    /** Every reading of these pieces by piece id, the newest first. */
    Map<Long, List<MoistureReading>> moistureReadings(Collection<Long> ids) {
        Map<Long, List<MoistureReading>> readings = new HashMap<>();
        for (List<Long> chunk : chunks(ids)) {
            jdbc.sql("select * from moisture_reading where piece_id in (:ids) order by read_on desc, id desc")
                    .param("ids", chunk)
                    .query(rs -> {
                        readings.computeIfAbsent(rs.getLong("piece_id"), id -> new ArrayList<>())
                                .add(new MoistureReading(
                                        new Moisture(rs.getInt("mc_hundredths")),
                                        rs.getObject("read_on", LocalDate.class),
                                        MoistureReading.Meter.valueOf(rs.getString("meter"))));
                    });
        }
        return readings;
    }

    List<String> placesInUse() {
        return jdbc
                .sql("select h.name from place h where exists"
                        + " (select 1 from piece p where p.place_id = h.id and p.state in ('ON_RACK', 'RESERVED', 'AT_BENCH'))"
                        + " order by h.name_key")
                .query(String.class)
                .stream()
                .sorted(Comparator.comparing(PieceTable::key))
                .toList();
    }

    /** The day each of these lots is ready, by lot key; null when it is. Lots that do not exist are left out. */
    Map<String, @Nullable LocalDate> lotsReady(Collection<String> keys) {
        Map<String, @Nullable LocalDate> ready = new HashMap<>();
        for (List<String> chunk : chunks(keys)) {
            jdbc.sql("select code_key, ready_on from lot where code_key in (:keys) order by code_key")
                    .param("keys", chunk)
                    .query(rs -> {
                        ready.put(rs.getString("code_key"), rs.getObject("ready_on", LocalDate.class));
                    });
        }
        return ready;
    }

    /** Lots and places are the same whatever case they are written in. */
    static String key(String name) {
        return name.strip().replaceAll("\\s+", " ").toUpperCase(Locale.ROOT);
    }

    /** @return keys of the lots whose day of readiness changed */
    Set<String> insert(List<NewPiece> pieces) {
        Names names = names(pieces.stream().map(NewPiece::facts).toList());
        batches.batchUpdate(
                """
                insert into piece (
                    code, code_order, import_key, state, since, species_id, length_um, length_typed, width_um, width_typed,
                    thickness_um, thickness_typed, grain, grain_slope, trim_left_um, trim_right_um, mc_hundredths,
                    mc_read_on, mc_meter, bow_um, crook_um, cup_um, twist_um, middle_bow_um, middle_crook_um,
                    middle_twist_um, warp_read_on, set_aside, neck_allowed, lot_id, place_id, cost_cents, note)
                values (
                    :code, :codeOrder, :importKey, 'ON_RACK', :since, :species, :length, :lengthTyped, :width, :widthTyped,
                    :thickness, :thicknessTyped, :grain, :slope, :trimLeft, :trimRight, :mc,
                    :mcReadOn, :mcMeter, :bow, :crook, :cup, :twist, :middleBow, :middleCrook,
                    :middleTwist, :warpReadOn, :setAside, :neckAllowed, :lot, :place, :cost, :note)
                """,
                pieces.stream()
                        .map(p -> facts(
                                        p.facts(),
                                        names,
                                        p.facts().moisture(),
                                        p.facts().warp())
                                .addValue("code", p.code())
                                .addValue("codeOrder", PieceCodes.order(p.code()))
                                .addValue("importKey", p.importKey())
                                .addValue("since", p.since()))
                        .toArray(MapSqlParameterSource[]::new));
        Map<String, Long> ids = new HashMap<>();
        for (List<String> chunk : chunks(pieces.stream().map(NewPiece::code).toList())) {
            jdbc.sql("select id, code from piece where code in (:codes) order by code")
                    .param("codes", chunk)
                    .query(rs -> {
                        ids.put(rs.getString("code"), rs.getLong("id"));
                    });
        }
        Map<Long, PieceFacts> byId = new LinkedHashMap<>();
        for (NewPiece piece : pieces) {
            Long id = ids.get(piece.code());
            if (id == null) {
                throw new IllegalStateException("piece " + piece.code() + " was not written");
            }
            byId.put(id, piece.facts());
        }
        insertParts(byId);
        Map<Long, Warp> warps = new LinkedHashMap<>();
        Map<Long, MoistureReading> moistures = new LinkedHashMap<>();
        byId.forEach((id, f) -> {
            if (f.warp() != null) {
                warps.put(id, f.warp());
            }
            if (f.moisture() != null) {
                moistures.put(id, f.moisture());
            }
        });
        insertWarps(warps);
        insertMoistures(moistures);
        return names.readyAnew();
    }

    /**
     * Replaces the facts of a piece.
     *
     * @param seen the piece it is to replace
     * @return keys of the lots whose day of readiness changed; empty when it is not that piece any more
     */
    Optional<Set<String>> replace(Piece seen, PieceFacts facts) {
        Names names = names(List.of(facts));
        MoistureReading newMoisture = changed(seen.moisture(), facts.moisture());
        Warp newWarp = changed(seen.warp(), facts.warp());
        MoistureReading moisture = newest(seen.moisture(), newMoisture);
        Warp warp = newest(seen.warp(), newWarp);
        int rows = jdbc.sql("""
                        update piece set
                            version = version + 1, fits_key = null, species_id = :species, length_um = :length,
                            length_typed = :lengthTyped, width_um = :width, width_typed = :widthTyped,
                            thickness_um = :thickness, thickness_typed = :thicknessTyped, grain = :grain,
                            grain_slope = :slope, trim_left_um = :trimLeft, trim_right_um = :trimRight,
                            mc_hundredths = :mc, mc_read_on = :mcReadOn, mc_meter = :mcMeter, bow_um = :bow,
                            crook_um = :crook, cup_um = :cup, twist_um = :twist, middle_bow_um = :middleBow,
                            middle_crook_um = :middleCrook, middle_twist_um = :middleTwist, warp_read_on = :warpReadOn,
                            set_aside = :setAside, neck_allowed = :neckAllowed, lot_id = :lot, place_id = :place,
                            cost_cents = :cost, note = :note
                        where id = :id and version = :version and state = :state
                        """)
                .paramSource(facts(facts, names, moisture, warp)
                        .addValue("id", seen.id())
                        .addValue("version", seen.version())
                        .addValue("state", seen.state().name()))
                .update();
        if (rows == 0) {
            return Optional.empty();
        }
        Set<String> readyAnew = new HashSet<>(names.readyAnew());
        if (facts.lot() != null && facts.lotReadyOn() == null) {
            // An edit says all there is to say: a day that was taken out of the form is taken off the lot.
            int taken = jdbc.sql("update lot set ready_on = null where code_key = :key and ready_on is not null")
                    .param("key", key(facts.lot()))
                    .update();
            if (taken > 0) {
                readyAnew.add(key(facts.lot()));
            }
        }
        jdbc.sql("delete from piece_strip where piece_id = :id")
                .param("id", seen.id())
                .update();
        jdbc.sql("delete from piece_defect where piece_id = :id")
                .param("id", seen.id())
                .update();
        insertParts(Map.of(seen.id(), facts));
        if (newWarp != null) {
            insertWarps(Map.of(seen.id(), newWarp));
        }
        if (newMoisture != null) {
            insertMoistures(Map.of(seen.id(), newMoisture));
        }
        return Optional.of(readyAnew);
    }

    private static <T> @Nullable T changed(@Nullable T old, @Nullable T said) {
        return said == null || said.equals(old) ? null : said;
    }

    private static @Nullable MoistureReading newest(@Nullable MoistureReading old, @Nullable MoistureReading said) {
        return said == null || (old != null && old.readOn().isAfter(said.readOn())) ? old : said;
    }

    private static Warp newest(Warp old, @Nullable Warp said) {
        LocalDate before = old.readOn();
        LocalDate on = said == null ? null : said.readOn();
        return said == null || (before != null && on != null && before.isAfter(on)) ? old : said;
    }

    private void insertParts(Map<Long, PieceFacts> pieces) {
        List<MapSqlParameterSource> strips = new ArrayList<>();
        List<MapSqlParameterSource> defects = new ArrayList<>();
        pieces.forEach((id, facts) -> {
            if (facts.wood() instanceof PieceWood.Lamination lamination) {
                int position = 0;
                for (PieceWood.LaminationStrip strip : lamination.strips()) {
                    strips.add(new MapSqlParameterSource("piece", id)
                            .addValue("position", ++position)
                            .addValue("species", strip.speciesId())
                            .addValue("width", strip.width().um())
                            .addValue("grain", strip.grain().name()));
                }
            }
            int position = 0;
            for (Defect defect : facts.defects()) {
                defects.add(new MapSqlParameterSource("piece", id)
                        .addValue("position", ++position)
                        .addValue("kind", defect.kind().name())
                        .addValue("fromLength", defect.fromLength().um())
                        .addValue("toLength", defect.toLength().um())
                        .addValue("fromWidth", defect.fromWidth().um())
                        .addValue("toWidth", defect.toWidth().um())
                        .addValue("structural", defect.structural()));
            }
        });
        batch(
                "insert into piece_strip (piece_id, position, species_id, width_um, grain)"
                        + " values (:piece, :position, :species, :width, :grain)",
                strips);
        batch(
                "insert into piece_defect (piece_id, position, kind, from_length_um, to_length_um, from_width_um,"
                        + " to_width_um, structural) values (:piece, :position, :kind, :fromLength, :toLength,"
                        + " :fromWidth, :toWidth, :structural)",
                defects);
    }

    private void insertWarps(Map<Long, Warp> warps) {
        List<MapSqlParameterSource> rows = new ArrayList<>();
        warps.forEach((id, warp) -> rows.add(warp(new MapSqlParameterSource("piece", id), warp)));
        batch(
                "insert into warp_reading (piece_id, bow_um, crook_um, cup_um, twist_um, middle_bow_um, middle_crook_um,"
                        + " middle_twist_um, read_on) values (:piece, :bow, :crook, :cup, :twist, :middleBow,"
                        + " :middleCrook, :middleTwist, :warpReadOn)",
                rows);
    }

    private void insertMoistures(Map<Long, MoistureReading> moistures) {
        List<MapSqlParameterSource> rows = new ArrayList<>();
        moistures.forEach((id, reading) -> rows.add(new MapSqlParameterSource("piece", id)
                .addValue("mc", reading.content().hundredths())
                .addValue("meter", reading.meter().name())
                .addValue("readOn", reading.readOn())));
        batch(
                "insert into moisture_reading (piece_id, mc_hundredths, meter, read_on)"
                        + " values (:piece, :mc, :meter, :readOn)",
                rows);
    }

    private void batch(String sql, List<MapSqlParameterSource> rows) {
        if (!rows.isEmpty()) {
            batches.batchUpdate(sql, rows.toArray(MapSqlParameterSource[]::new));
        }
    }

    private static MapSqlParameterSource facts(
            PieceFacts f, Names names, @Nullable MoistureReading moisture, @Nullable Warp said) {
        return warp(new MapSqlParameterSource(), said == null ? Warp.UNMEASURED : said)
                .addValue("species", f.wood() instanceof PieceWood.Solid solid ? solid.speciesId() : null)
                .addValue("length", f.length().length().um())
                .addValue("lengthTyped", f.length().typed())
                .addValue("width", f.width().length().um())
                .addValue("widthTyped", f.width().typed())
                .addValue("thickness", f.thickness().length().um())
                .addValue("thicknessTyped", f.thickness().typed())
                .addValue("grain", f.grain().name())
                .addValue("slope", f.grainSlope())
                .addValue("trimLeft", f.trimLeft().um())
                .addValue("trimRight", f.trimRight().um())
                .addValue("mc", moisture == null ? null : moisture.content().hundredths())
                .addValue("mcReadOn", moisture == null ? null : moisture.readOn())
                .addValue("mcMeter", moisture == null ? null : moisture.meter().name())
                .addValue("setAside", f.setAside())
                .addValue("neckAllowed", f.neckAllowed())
                .addValue("lot", f.lot() == null ? null : names.lots().get(key(f.lot())))
                .addValue("place", f.place() == null ? null : names.places().get(key(f.place())))
                .addValue("cost", f.cost() == null ? null : f.cost().cents())
                .addValue("note", f.note());
    }

    private static MapSqlParameterSource warp(MapSqlParameterSource values, Warp warp) {
        return values.addValue("bow", warp.bow().um())
                .addValue("crook", warp.crook().um())
                .addValue("cup", warp.cup().um())
                .addValue("twist", warp.twist().um())
                .addValue("middleBow", um(warp.middle().bow()))
                .addValue("middleCrook", um(warp.middle().crook()))
                .addValue("middleTwist", um(warp.middle().twist()))
                .addValue("warpReadOn", warp.readOn());
    }

    private static @Nullable Long um(@Nullable Length length) {
        return length == null ? null : length.um();
    }

    /**
     * Ids of lots and places by their keys.
     *
     * @param readyAnew keys of lots whose day of readiness changed
     */
    record Names(Map<String, Long> lots, Map<String, Long> places, Set<String> readyAnew) {}

    /** Finds the lots and places these facts name, and writes those that are new. */
    private Names names(List<PieceFacts> all) {
        Map<String, String> lots = new TreeMap<>();
        Map<String, String> places = new TreeMap<>();
        Map<String, LocalDate> ready = new TreeMap<>();
        for (PieceFacts f : all) {
            if (f.lot() != null) {
                lots.putIfAbsent(key(f.lot()), f.lot());
                if (f.lotReadyOn() != null) {
                    ready.put(key(f.lot()), f.lotReadyOn());
                }
            }
            if (f.place() != null) {
                places.putIfAbsent(key(f.place()), f.place());
            }
        }
        Map<String, Long> lotIds = named("lot", "code", lots);
        Map<String, Long> placeIds = named("place", "name", places);
        Set<String> readyAnew = new HashSet<>();
        ready.forEach((key, day) -> {
            int rows = jdbc.sql("update lot set ready_on = :day"
                            + " where code_key = :key and (ready_on is null or ready_on <> :day)")
                    .param("day", day)
                    .param("key", key)
                    .update();
            if (rows > 0) {
                readyAnew.add(key);
            }
        });
        return new Names(lotIds, placeIds, readyAnew);
    }

    private Map<String, Long> named(String table, String column, Map<String, String> names) {
        Map<String, Long> ids = findNamed(table, column, names.keySet());
        List<MapSqlParameterSource> missing = names.entrySet().stream()
                .filter(e -> !ids.containsKey(e.getKey()))
                .map(e -> new MapSqlParameterSource("key", e.getKey()).addValue("name", e.getValue()))
                .toList();
        if (missing.isEmpty()) {
            return ids;
        }
        batch("insert into " + table + " (" + column + "_key, " + column + ") values (:key, :name)", missing);
        return findNamed(table, column, names.keySet());
    }

    private Map<String, Long> findNamed(String table, String column, Set<String> keys) {
        Map<String, Long> ids = new HashMap<>();
        for (List<String> chunk : chunks(keys)) {
            jdbc.sql("select id, " + column + "_key as name_key from " + table + " where " + column
                            + "_key in (:keys) order by id")
                    .param("keys", chunk)
                    .query(rs -> {
                        ids.put(rs.getString("name_key"), rs.getLong("id"));
                    });
        }
        return ids;
    }

    private static <T> List<List<T>> chunks(Collection<T> all) {
        List<T> list = List.copyOf(all);
        List<List<T>> chunks = new ArrayList<>();
        for (int i = 0; i < list.size(); i += CHUNK) {
            chunks.add(list.subList(i, Math.min(list.size(), i + CHUNK)));
        }
        return chunks;
    }

    private static Piece piece(
            ResultSet rs, Map<Long, List<PieceWood.LaminationStrip>> strips, Map<Long, List<Defect>> defects)
            throws SQLException {
        long id = rs.getLong("id");
        String species = rs.getString("species_id");
        PieceWood wood = species == null
                ? new PieceWood.Lamination(strips.getOrDefault(id, List.of()))
                : new PieceWood.Solid(species);
        String meter = rs.getString("mc_meter");
        MoistureReading moisture = meter == null
                ? null
                : new MoistureReading(
                        new Moisture(rs.getInt("mc_hundredths")),
                        rs.getObject("mc_read_on", LocalDate.class),
                        MoistureReading.Meter.valueOf(meter));
        BigDecimal cost = rs.getBigDecimal("cost_cents");
        return new Piece(
                id,
                rs.getLong("version"),
                rs.getString("code"),
                PieceState.valueOf(rs.getString("state")),
                wood,
                typed(rs, "length"),
                typed(rs, "width"),
                typed(rs, "thickness"),
                GrainCut.valueOf(rs.getString("grain")),
                rs.getObject("grain_slope", Integer.class),
                moisture,
                warp(rs, rs.getObject("warp_read_on", LocalDate.class)),
                length(rs, "trim_left_um"),
                length(rs, "trim_right_um"),
                defects.getOrDefault(id, List.of()),
                rs.getBoolean("set_aside"),
                rs.getBoolean("neck_allowed"),
                rs.getString("lot_code"),
                rs.getObject("lot_ready_on", LocalDate.class),
                rs.getString("place_name"),
                cost == null ? null : new Money(cost.longValueExact()),
                rs.getString("note"),
                rs.getObject("since", LocalDate.class));
    }

    private static Warp warp(ResultSet rs, @Nullable LocalDate readOn) throws SQLException {
        return new Warp(
                length(rs, "bow_um"),
                length(rs, "crook_um"),
                length(rs, "cup_um"),
                length(rs, "twist_um"),
                new MiddleReading(
                        orNull(rs, "middle_bow_um"), orNull(rs, "middle_crook_um"), orNull(rs, "middle_twist_um")),
                readOn);
    }

    private static Defect defect(ResultSet rs) throws SQLException {
        return new Defect(
                Defect.Kind.valueOf(rs.getString("kind")),
                length(rs, "from_length_um"),
                length(rs, "to_length_um"),
                length(rs, "from_width_um"),
                length(rs, "to_width_um"),
                rs.getBoolean("structural"));
    }

    private static TypedLength typed(ResultSet rs, String name) throws SQLException {
        return new TypedLength(length(rs, name + "_um"), rs.getString(name + "_typed"));
    }

    private static @Nullable Length orNull(ResultSet rs, String column) throws SQLException {
        long um = rs.getLong(column);
        return rs.wasNull() ? null : Length.ofUm(um);
    }

    private static Length length(ResultSet rs, String column) throws SQLException {
        return Length.ofUm(rs.getLong(column));
    }
}
