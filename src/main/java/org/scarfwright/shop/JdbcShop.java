package org.scarfwright.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.web.ConflictException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcShop implements Shop, ShopEditing {
    private static final String SAW_COLUMNS = "code, version, name, kind, kerf_um, depth_um, reach_um, shallowest_mdeg,"
            + " steepest_mdeg, truing_um, scale_mdeg";

    private final JdbcClient jdbc;

    JdbcShop(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public ShopSettings settings() {
        return editableSettings().settings();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Saw> saws() {
        return editableSaws().stream().map(VersionedSaw::saw).toList();
    }

    @Override
    @Transactional(readOnly = true)
    public VersionedSettings editableSettings() {
        return jdbc.sql("select version, length_unit, currency, planing_per_face_um, edge_allowance_um,"
                        + " neck_straightness_um, shortest_machined_um, usable_rest_length_um, usable_rest_width_um,"
                        + " neck_grain_slope, driest_mc_hundredths, wettest_mc_hundredths, moisture_apart_hundredths,"
                        + " search_seconds, search_memory_mb"
                        + " from shop_settings where id = 1")
                .query((row, n) -> settingsOf(row))
                .single();
    }

    @Override
    @Transactional
    public boolean changeSettings(long seenVersion, ShopSettings s) {
        return jdbc.sql("update shop_settings set version = version + 1, length_unit = :unit, currency = :currency,"
                                + " planing_per_face_um = :planing, edge_allowance_um = :edge,"
                                + " neck_straightness_um = :straightness, shortest_machined_um = :machined,"
                                + " usable_rest_length_um = :restLength, usable_rest_width_um = :restWidth,"
                                + " neck_grain_slope = :grain, driest_mc_hundredths = :driest,"
                                + " wettest_mc_hundredths = :wettest, moisture_apart_hundredths = :apart,"
                                + " search_seconds = :seconds, search_memory_mb = :memory"
                                + " where id = 1 and version = :seen")
                        .param("unit", s.unit().name())
                        .param("currency", s.currency())
                        .param("planing", s.planingPerFace().um())
                        .param("edge", s.edgeAllowance().um())
                        .param("straightness", s.neckStraightness().um())
                        .param("machined", s.shortestMachined().um())
                        .param("restLength", s.usableRestLength().um())
                        .param("restWidth", s.usableRestWidth().um())
                        .param("grain", s.neckGrainSlope())
                        .param("driest", s.driest().hundredths())
                        .param("wettest", s.wettest().hundredths())
                        .param("apart", s.moistureApart().hundredths())
                        .param("seconds", s.searchSeconds())
                        .param("memory", s.searchMemoryMb())
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    @Override
    @Transactional(readOnly = true)
    public List<VersionedSaw> editableSaws() {
        return jdbc.sql("select " + SAW_COLUMNS + " from saw order by preference")
                .query((row, n) -> sawOf(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<VersionedSaw> editableSaw(String code) {
        return jdbc.sql("select " + SAW_COLUMNS + " from saw where code = :code order by code")
                .param("code", code)
                .query((row, n) -> sawOf(row))
                .optional();
    }

    @Override
    @Transactional
    public boolean addSaw(Saw saw) {
        if (editableSaw(saw.code()).isPresent()) {
            return false;
        }
        try {
            withSaw(
                            jdbc.sql("insert into saw (code, preference, name, kind, kerf_um, depth_um, reach_um,"
                                    + " shallowest_mdeg, steepest_mdeg, truing_um, scale_mdeg)"
                                    + " values (:code, :preference, :name, :kind, :kerf, :depth, :reach, :shallowest,"
                                    + " :steepest, :truing, :scale)"),
                            saw)
                    .param("preference", lastPreference() + 1)
                    .update();
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody else added a saw at the same moment; add yours again.");
        }
        return true;
    }

    @Override
    @Transactional
    public boolean changeSaw(long seenVersion, Saw saw) {
        return withSaw(
                                jdbc.sql(
                                        "update saw set version = version + 1, name = :name, kind = :kind,"
                                                + " kerf_um = :kerf, depth_um = :depth, reach_um = :reach,"
                                                + " shallowest_mdeg = :shallowest, steepest_mdeg = :steepest,"
                                                + " truing_um = :truing, scale_mdeg = :scale where code = :code and version = :seen"),
                                saw)
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    /** Every saw gets a new place above the old ones, the preferred one first: no two ever share a place in between. */
    @Override
    @Transactional
    public void preferSaw(String code) {
        List<String> order = lockedCodes();
        if (!order.contains(code)) {
            return;
        }
        int place = lastPreference() + 1;
        place(code, place);
        for (String other : order) {
            if (!other.equals(code)) {
                place++;
                place(other, place);
            }
        }
    }

    @Override
    @Transactional
    public boolean removeSaw(long seenVersion, String code) {
        List<String> codes = lockedCodes();
        if (codes.size() == 1 && codes.contains(code)) {
            throw new ConflictException(
                    "This is the shop's last saw, and no scarf is cut without one. Add another saw first.");
        }
        return jdbc.sql("delete from saw where code = :code and version = :seen")
                        .param("code", code)
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    private void place(String code, int preference) {
        jdbc.sql("update saw set preference = :preference where code = :code")
                .param("preference", preference)
                .param("code", code)
                .update();
    }

    private int lastPreference() {
        return jdbc.sql("select max(preference) from saw").query(Integer.class).single();
    }

    private List<String> lockedCodes() {
        return jdbc.sql("select code from saw order by preference for update")
                .query(String.class)
                .list();
    }

    private static StatementSpec withSaw(StatementSpec statement, Saw saw) {
        return statement
                .param("code", saw.code())
                .param("name", saw.name())
                .param("kind", saw.kind().name())
                .param("kerf", saw.kerf().um())
                .param("depth", saw.depth().um())
                .param("reach", saw.reach().um())
                .param("shallowest", saw.shallowest().millidegrees())
                .param("steepest", saw.steepest().millidegrees())
                .param("truing", saw.truing().um())
                .param("scale", saw.scale().millidegrees());
    }

    private static VersionedSettings settingsOf(ResultSet row) throws SQLException {
        return new VersionedSettings(
                row.getLong("version"),
                new ShopSettings(
                        LengthUnit.valueOf(row.getString("length_unit")),
                        row.getString("currency"),
                        length(row, "planing_per_face_um"),
                        length(row, "edge_allowance_um"),
                        length(row, "neck_straightness_um"),
                        length(row, "shortest_machined_um"),
                        length(row, "usable_rest_length_um"),
                        length(row, "usable_rest_width_um"),
                        row.getInt("neck_grain_slope"),
                        new Moisture(row.getInt("driest_mc_hundredths")),
                        new Moisture(row.getInt("wettest_mc_hundredths")),
                        new MoistureChange(row.getInt("moisture_apart_hundredths")),
                        row.getInt("search_seconds"),
                        row.getInt("search_memory_mb")));
    }

    private static VersionedSaw sawOf(ResultSet row) throws SQLException {
        return new VersionedSaw(
                row.getLong("version"),
                new Saw(
                        row.getString("code"),
                        row.getString("name"),
                        SawKind.valueOf(row.getString("kind")),
                        length(row, "kerf_um"),
                        length(row, "depth_um"),
                        length(row, "reach_um"),
                        new Angle(row.getInt("shallowest_mdeg")),
                        new Angle(row.getInt("steepest_mdeg")),
                        length(row, "truing_um"),
                        new Angle(row.getInt("scale_mdeg"))));
    }

    private static Length length(ResultSet row, String column) throws SQLException {
        return Length.ofUm(row.getLong(column));
    }
}
