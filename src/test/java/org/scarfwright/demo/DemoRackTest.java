package org.scarfwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.CsvTable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** The rack file holds what its README says. */
@OnH2
@Transactional
class DemoRackTest {
    private static final Path FILE = Path.of("demo-data/rack.csv");

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Rack rack;

    @BeforeEach
    void loadIt() throws IOException {
        CsvTable.Columns columns = new CsvTable.Columns(
                List.of("wood", "length", "width", "thickness"),
                Arrays.stream(PieceField.values()).map(PieceField::column).toList());
        CsvTable file = CsvTable.read(Files.readAllBytes(FILE), columns, CsvTable.Limits.USUAL);
        for (CsvTable.Row row : file.rows()) {
            pieces.add(PieceCells.of(row::cell), LengthUnit.MM);
        }
    }

    @Test
    void holdsSeventyPiecesAndEveryKindTheWeekNeeds() {
        List<Piece> all = rack.free();
        assertThat(all).hasSize(70);
        assertThat(all.stream().filter(p -> p.wood() instanceof PieceWood.Lamination))
                .hasSize(4);
        assertThat(all.stream().filter(Piece::setAside)).hasSize(6);
        assertThat(all.stream().filter(p -> p.length().typed().contains("/"))).hasSizeGreaterThanOrEqualTo(5);
        assertThat(all).allSatisfy(p -> assertThat(p.moisture()).isNotNull());
        assertThat(all.stream().filter(p -> mc(p).compareTo(Moisture.ofPercent(10)) > 0))
                .hasSize(2);
        assertThat(all.stream().filter(p -> mc(p).compareTo(Moisture.ofPercent(6)) < 0))
                .hasSize(1);
    }

    @Test
    void everyPieceSetAsideIsWarpedAndSaysSo() {
        assertThat(rack.free().stream().filter(Piece::setAside)).allSatisfy(p -> {
            assertThat(p.warp().bow().mm()).isGreaterThanOrEqualTo(6);
            assertThat(p.note()).isNotBlank();
        });
    }

    private static Moisture mc(Piece piece) {
        return java.util.Objects.requireNonNull(piece.moisture()).content();
    }
}
