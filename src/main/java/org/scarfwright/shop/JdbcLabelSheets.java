package org.scarfwright.shop;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.Length;
import org.scarfwright.web.ConflictException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcLabelSheets implements LabelSheets {
    private static final String SELECT = "select code, version, name, paper, across, down, left_um, top_um,"
            + " pitch_across_um, pitch_down_um, width_um, height_um from label_sheet";

    private final JdbcClient jdbc;

    JdbcLabelSheets(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Versioned> all() {
        return jdbc.sql(SELECT + " order by code")
                .query((row, n) -> sheetOf(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Versioned> find(String code) {
        return jdbc.sql(SELECT + " where code = :code order by code")
                .param("code", code)
                .query((row, n) -> sheetOf(row))
                .optional();
    }

    @Override
    @Transactional
    public boolean add(LabelSheet sheet) {
        if (find(sheet.code()).isPresent()) {
            return false;
        }
        try {
            withSheet(
                            jdbc.sql(
                                    "insert into label_sheet (code, name, paper, across, down, left_um, top_um,"
                                            + " pitch_across_um, pitch_down_um, width_um, height_um) values (:code, :name,"
                                            + " :paper, :across, :down, :left, :top, :pitchAcross, :pitchDown, :width, :height)"),
                            sheet)
                    .update();
        } catch (DuplicateKeyException e) {
            throw new ConflictException(
                    "Somebody else added a label sheet of that code at the same moment; choose another code.");
        }
        return true;
    }

    @Override
    @Transactional
    public boolean change(long seenVersion, LabelSheet sheet) {
        return withSheet(
                                jdbc.sql("update label_sheet set version = version + 1, name = :name, paper = :paper,"
                                        + " across = :across, down = :down, left_um = :left, top_um = :top,"
                                        + " pitch_across_um = :pitchAcross, pitch_down_um = :pitchDown,"
                                        + " width_um = :width, height_um = :height"
                                        + " where code = :code and version = :seen"),
                                sheet)
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    @Override
    @Transactional
    public boolean remove(long seenVersion, String code) {
        return jdbc.sql("delete from label_sheet where code = :code and version = :seen")
                        .param("code", code)
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    private static StatementSpec withSheet(StatementSpec statement, LabelSheet sheet) {
        LabelSheet.Grid grid = sheet.grid();
        return statement
                .param("code", sheet.code())
                .param("name", sheet.name())
                .param("paper", sheet.paper().name())
                .param("across", grid.across())
                .param("down", grid.down())
                .param("left", grid.left().um())
                .param("top", grid.top().um())
                .param("pitchAcross", grid.pitchAcross().um())
                .param("pitchDown", grid.pitchDown().um())
                .param("width", sheet.width().um())
                .param("height", sheet.height().um());
    }

    private static Versioned sheetOf(ResultSet row) throws SQLException {
        return new Versioned(
                row.getLong("version"),
                new LabelSheet(
                        row.getString("code"),
                        row.getString("name"),
                        LabelPaper.valueOf(row.getString("paper")),
                        new LabelSheet.Grid(
                                row.getInt("across"),
                                row.getInt("down"),
                                length(row, "left_um"),
                                length(row, "top_um"),
                                length(row, "pitch_across_um"),
                                length(row, "pitch_down_um")),
                        length(row, "width_um"),
                        length(row, "height_um")));
    }

    private static Length length(ResultSet row, String column) throws SQLException {
        return Length.ofUm(row.getLong(column));
    }
}
