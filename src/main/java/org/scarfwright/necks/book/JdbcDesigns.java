package org.scarfwright.necks.book;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcDesigns implements Designs {
    private static final List<String> LENGTHS = List.of(
            "neck_length",
            "nut_width",
            "heel_width",
            "neck_thickness",
            "head_length",
            "head_width",
            "head_thickness",
            "end_allowance",
            "side_allowance");

    private final JdbcClient jdbc;

    JdbcDesigns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public List<NeckDesign> all() {
        Map<Long, Parts> parts = new HashMap<>();
        jdbc.sql("select design_id, angle_mdeg from neck_design_angle order by design_id, angle_mdeg")
                .query(rs -> {
                    of(parts, rs).angles.add(new Angle(rs.getInt("angle_mdeg")));
                });
        jdbc.sql("select design_id, arrangement from neck_design_arrangement order by design_id, arrangement desc")
                .query(rs -> {
                    of(parts, rs).arrangements.add(Arrangement.valueOf(rs.getString("arrangement")));
                });
        jdbc.sql("select design_id, part, species_id from neck_design_wood order by design_id, part, position")
                .query(rs -> {
                    of(parts, rs).woods(rs.getString("part")).add(rs.getString("species_id"));
                });
        return jdbc
                .sql("select * from neck_design order by code")
                .query((rs, row) -> design(rs, parts.getOrDefault(rs.getLong("id"), new Parts())))
                .list()
                .stream()
                .sorted(Comparator.comparing(NeckDesign::code)) // the engines' collations differ
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<NeckDesign> find(String code) {
        Parts parts = new Parts();
        String id = "(select id from neck_design where code = :code)";
        String plain = DraftReader.plainCode(code);
        jdbc.sql("select angle_mdeg from neck_design_angle where design_id = " + id + " order by angle_mdeg")
                .param("code", plain)
                .query(rs -> {
                    parts.angles.add(new Angle(rs.getInt("angle_mdeg")));
                });
        jdbc.sql("select arrangement from neck_design_arrangement where design_id = " + id
                        + " order by arrangement desc")
                .param("code", plain)
                .query(rs -> {
                    parts.arrangements.add(Arrangement.valueOf(rs.getString("arrangement")));
                });
        jdbc.sql("select part, species_id from neck_design_wood where design_id = " + id + " order by part, position")
                .param("code", plain)
                .query(rs -> {
                    parts.woods(rs.getString("part")).add(rs.getString("species_id"));
                });
        return jdbc.sql("select * from neck_design where code = :code")
                .param("code", plain)
                .query((rs, row) -> design(rs, parts))
                .optional();
    }

    /** Ids by code. */
    Map<String, Long> ids() {
        Map<String, Long> ids = new HashMap<>();
        jdbc.sql("select code, id from neck_design order by code").query(rs -> {
            ids.put(rs.getString("code"), rs.getLong("id"));
        });
        return ids;
    }

    void insert(NeckDesign design) {
        Map<String, Object> columns = columns(design);
        columns.put("code", design.code());
        GeneratedKeyHolder key = new GeneratedKeyHolder();
        jdbc.sql("insert into neck_design (" + String.join(", ", columns.keySet()) + ") values (:"
                        + String.join(", :", columns.keySet()) + ")")
                .params(columns)
                .update(key, "id");
        insertParts(Objects.requireNonNull(key.getKey()).longValue(), design);
    }

    /** @return false when the design has another version than the one that was seen */
    boolean update(long id, long seenVersion, NeckDesign design) {
        Map<String, Object> columns = columns(design);
        List<String> sets = columns.keySet().stream().map(c -> c + " = :" + c).toList();
        columns.put("id", id);
        columns.put("seen", seenVersion);
        int changed = jdbc.sql("update neck_design set version = version + 1, " + String.join(", ", sets)
                        + " where id = :id and version = :seen")
                .params(columns)
                .update();
        if (changed == 0) {
            return false;
        }
        for (String table : List.of("neck_design_angle", "neck_design_arrangement", "neck_design_wood")) {
            jdbc.sql("delete from " + table + " where design_id = :id")
                    .param("id", id)
                    .update();
        }
        insertParts(id, design);
        return true;
    }

    private void insertParts(long id, NeckDesign design) {
        for (Angle angle : design.angles()) {
            jdbc.sql("insert into neck_design_angle (design_id, angle_mdeg) values (:id, :angle)")
                    .param("id", id)
                    .param("angle", angle.millidegrees())
                    .update();
        }
        for (Arrangement arrangement : design.arrangements()) {
            jdbc.sql("insert into neck_design_arrangement (design_id, arrangement) values (:id, :arrangement)")
                    .param("id", id)
                    .param("arrangement", arrangement.name())
                    .update();
        }
        insertWoods(id, "NECK", design.neckWoods());
        insertWoods(id, "HEAD", design.headWoods());
    }

    private void insertWoods(long id, String part, Collection<String> woods) {
        int position = 0;
        for (String wood : woods) {
            position++;
            jdbc.sql("insert into neck_design_wood (design_id, part, position, species_id)"
                            + " values (:id, :part, :position, :wood)")
                    .param("id", id)
                    .param("part", part)
                    .param("position", position)
                    .param("wood", wood)
                    .update();
        }
    }

    private static Map<String, Object> columns(NeckDesign d) {
        List<TypedLength> lengths = List.of(
                d.neckLength(),
                d.nutWidth(),
                d.heelWidth(),
                d.neckThickness(),
                d.headLength(),
                d.headWidth(),
                d.headThickness(),
                d.endAllowance(),
                d.sideAllowance());
        Map<String, Object> columns = new LinkedHashMap<>();
        columns.put("name", d.name());
        for (int i = 0; i < LENGTHS.size(); i++) {
            columns.put(LENGTHS.get(i) + "_um", lengths.get(i).length().um());
            columns.put(LENGTHS.get(i) + "_typed", lengths.get(i).typed());
        }
        columns.put("finish", d.finish().name());
        columns.put("match_rule", d.match().name());
        columns.put("lines_meet", d.linesMeet());
        columns.put("wings_allowed", d.wingsAllowed());
        return columns;
    }

    private static NeckDesign design(ResultSet rs, Parts parts) throws SQLException {
        return new NeckDesign(
                rs.getLong("id"),
                rs.getLong("version"),
                rs.getString("code"),
                rs.getString("name"),
                length(rs, "neck_length"),
                length(rs, "nut_width"),
                length(rs, "heel_width"),
                length(rs, "neck_thickness"),
                length(rs, "head_length"),
                length(rs, "head_width"),
                length(rs, "head_thickness"),
                parts.angles,
                parts.arrangements,
                FaceFinish.valueOf(rs.getString("finish")),
                parts.neckWoods,
                parts.headWoods,
                MatchRule.valueOf(rs.getString("match_rule")),
                rs.getBoolean("lines_meet"),
                rs.getBoolean("wings_allowed"),
                length(rs, "end_allowance"),
                length(rs, "side_allowance"));
    }

    private static TypedLength length(ResultSet rs, String column) throws SQLException {
        return new TypedLength(new Length(rs.getLong(column + "_um")), rs.getString(column + "_typed"));
    }

    private static Parts of(Map<Long, Parts> parts, ResultSet rs) throws SQLException {
        return parts.computeIfAbsent(rs.getLong("design_id"), id -> new Parts());
    }

    /** The lists of a design, from tables of their own. */
    private static final class Parts {
        private final List<Angle> angles = new ArrayList<>();
        private final List<Arrangement> arrangements = new ArrayList<>();
        private final List<String> neckWoods = new ArrayList<>();
        private final List<String> headWoods = new ArrayList<>();

        private List<String> woods(String part) {
            return part.equals("NECK") ? neckWoods : headWoods;
        }
    }
}
