package org.scarfwright.rack.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class ReadingsPagesTest {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    private void measured(String day, String moisture, String bow) {
        pieces.measure(
                rack.find("RP-1").orElseThrow(),
                new PieceCells()
                        .put(PieceField.MOISTURE, moisture)
                        .put(PieceField.METER, "pin")
                        .put(PieceField.BOW, bow)
                        .put(PieceField.MEASURED_ON, day),
                LengthUnit.MM);
    }

    private void piece() {
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "RP-1")
                        .put(PieceField.WOOD, "sapele")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22")
                        .put(PieceField.LOT, "L-1"),
                LengthUnit.MM);
    }

    @Test
    void anEmptyRackIsToldWhereReadingsComeFrom() {
        assertThat(mvc.get().uri("/yield/readings"))
                .hasStatusOk()
                .bodyText()
                .contains("Nobody has measured that yet.", "href=\"/rack\"");
        assertThat(mvc.get().uri("/yield")).bodyText().contains("/yield/readings");
    }

    /** Worked by hand: March has 9 and 10 %, so 9.5; August 8 %. */
    @Test
    void monthsAreDrawnToldAndListed() {
        piece();
        measured("2026-03-02", "10", "0");
        measured("2026-03-30", "9", "1.5");
        measured("2026-08-01", "8", "2");
        assertThat(mvc.get().uri("/yield/readings?lot=l-1&month=2026-03"))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "In 2026-08 the median of 1 reading is 8.0 %, down from 9.5 % in 2026-03.",
                        "<svg",
                        "Moisture in %; each month opens its readings",
                        "Readings of 2026-03",
                        "Mon 30 Mar 2026",
                        "/rack/RP-1")
                .doesNotContain("Sat 1 Aug 2026");
        assertThat(mvc.get().uri("/yield/readings?what=bow&piece=rp-1"))
                .bodyText()
                .contains("In 2026-08 the median of 1 reading is 2.00 mm, up from 0.75 mm in 2026-03.");
        assertThat(mvc.get().uri("/yield/readings.csv?what=bow"))
                .hasHeader("Content-Disposition", "attachment; filename=\"readings-bow.csv\"")
                .bodyText()
                .isEqualTo("piece,day,bow_mm\r\nRP-1,2026-08-01,2\r\nRP-1,2026-03-30,1.5\r\nRP-1,2026-03-02,0\r\n");
        assertThat(mvc.get().uri("/api/yield/readings?wood=sapele"))
                .bodyJson()
                .extractingPath("$[0].median")
                .isEqualTo(9.5);
    }

    @Test
    void whatIsNotThereIsSaid() {
        piece();
        assertThat(mvc.get().uri("/yield/readings?what=weight&wood=oak&lot=L-9&piece=X-1&month=march"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "What “weight” is none of moisture, bow, crook, cup, twist",
                        "Wood “oak” is no wood any piece is of",
                        "Lot “L-9” is no lot on the rack",
                        "Piece “X-1” is no piece’s code",
                        "Month “march” is not a month",
                        "value=\"X-1\"");
        assertThat(mvc.get().uri("/api/yield/readings?what=weight")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/yield/readings.csv?piece=X-1")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }
}
