package org.scarfwright.rack.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.annotation.Transactional;

/** What people see of the rack. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class RackPagesTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    Rack rack;

    @Autowired
    Pieces pieces;

    @Autowired
    JdbcClient jdbc;

    private Piece add(PieceField field, String text) {
        return pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "PG-1")
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "80")
                        .put(PieceField.THICKNESS, "25")
                        .put(field, text),
                LengthUnit.MM);
    }

    @Test
    void emptyRackSaysWhatToDo() throws Exception {
        for (String table :
                List.of("reservation", "warp_reading", "moisture_reading", "piece_defect", "piece_strip", "piece")) {
            jdbc.sql("delete from " + table).update();
        }
        mvc.perform(get("/rack"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("There is no wood on the rack yet"),
                                containsString("/rack/new"),
                                containsString("/rack/import"))));
    }

    @Test
    void listDrawsEveryPieceAndKeepsTheFilter() throws Exception {
        add(PieceField.PLACE, "Shelf \"B&2\"");
        mvc.perform(get("/rack").param("q", "pg-1").param("minLength", "25 in"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("PG-1"),
                                containsString("700 mm × 80 mm × 25 mm"),
                                containsString("value=\"25 in\""),
                                containsString("Shelf &quot;B&amp;2&quot;"),
                                containsString("<svg"))));
        mvc.perform(get("/rack").param("q", "pg-1").param("minLength", "26 1/3 in"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("is not a fraction of an inch rule")));
        mvc.perform(get("/rack").param("q", "nothing like it \0"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("No piece is like that")));
    }

    @Test
    void longListIsPagedWithLinksThatCanBeShared() throws Exception {
        StringBuilder file = new StringBuilder("code,wood,length,width,thickness,note\n");
        for (int i = 0; i < 30; i++) {
            file.append("PX-").append(i).append(",wenge,500,60,20,a&b batch\n");
        }
        mvc.perform(multipart("/rack/import")
                        .param("text", file.toString())
                        .param("then", "save")
                        .with(csrf()))
                .andExpect(redirectedUrl("/rack"));
        String page = mvc.perform(get("/rack").param("q", "a&b").param("sort", "longest"))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains("Page 1 of 2").contains("/rack?q=a%26b&amp;sort=longest&amp;page=2");
    }

    @Test
    void pieceSaysWhatItCanStillGiveAndOnWhatAssumption() throws Exception {
        add(PieceField.BOW, "6");
        mvc.perform(get("/rack/pg-1"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("These figures rest on an assumption"),
                                // 6·(l/700)² = 1 => 285.77 mm, by hand
                                containsString("As a neck 20.0 mm thick: up to 285.7 mm long"),
                                containsString("more than 1.0 mm out of straight before planing"),
                                // 25 - 6·(l/700)² - 2 = 15 => over the whole length
                                containsString("As a head 15.0 mm thick: up to 700.0 mm long"),
                                containsString("Usable thickness against the length of a part"),
                                containsString("Added to the rack: 700 mm × 80 mm × 25 mm."),
                                containsString("Caution."))));
        mvc.perform(get("/rack/NONE")).andExpect(status().isNotFound());
    }

    @Test
    void pieceNobodyMeasuredSaysSo() throws Exception {
        add(PieceField.NOTE, "<script>alert(1)</script>");
        mvc.perform(get("/rack/PG-1"))
                .andExpect(content().string(containsString("Nobody measured its warp, so it counts as flat.")))
                .andExpect(content().string(not(containsString("<script>alert"))));
    }

    @Test
    void addsAPieceFromFourFields() throws Exception {
        mvc.perform(post("/rack/new")
                        .param("unit", "in")
                        .param("wood", "wenge")
                        .param("length", "25 3/8")
                        .param("width", "3")
                        .param("thickness", "7/8")
                        .param("code", "pg-2")
                        .with(csrf()))
                .andExpect(redirectedUrl("/rack/PG-2"))
                .andExpect(flash().attribute("notice", "Piece PG-2 is on the rack."));
        Piece piece = rack.find("PG-2").orElseThrow();
        assertThat(piece.width().typed()).isEqualTo("3 in");
        assertThat(piece.length().length().um()).isEqualTo(644_525);
    }

    @Test
    void sameAgainStartsFromTheLastPiece() throws Exception {
        String next = mvc.perform(post("/rack/new")
                        .param("unit", "mm")
                        .param("wood", "wenge")
                        .param("length", "640")
                        .param("width", "70")
                        .param("thickness", "22")
                        .param("then", "again")
                        .with(csrf()))
                .andExpect(status().is3xxRedirection())
                .andReturn()
                .getResponse()
                .getRedirectedUrl();
        mvc.perform(get(String.valueOf(next)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("value=\"640 mm\"")));
    }

    @Test
    void badFormKeepsWhatWasTyped() throws Exception {
        mvc.perform(post("/rack/new")
                        .param("unit", "mm")
                        .param("wood", "")
                        .param("length", "64 zm")
                        .param("width", "70")
                        .param("thickness", "")
                        .param("defects", "knot 1-2 <i>")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("value=\"64 zm\""),
                                containsString("Length “64 zm” has the unit “zm”; use mm, cm, m or in"),
                                containsString("Thickness is missing"),
                                containsString("Wood is missing"),
                                containsString("knot 1-2 &lt;i&gt;"),
                                containsString("<details open=\"open\">"))));
    }

    @Test
    void editSavesAndASecondEditorIsTold() throws Exception {
        add(PieceField.BOW, "1");
        String form = mvc.perform(get("/rack/PG-1/edit"))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(form).contains("name=\"seen\" value=\"&quot;0&quot;\"").contains("value=\"700 mm\"");
        mvc.perform(post("/rack/PG-1/edit")
                        .param("seen", "\"0\"")
                        .param("unit", "mm")
                        .param("wood", "maple_sugar")
                        .param("length", "690")
                        .param("width", "80 mm")
                        .param("thickness", "25 mm")
                        .param("bow", "2")
                        .with(csrf()))
                .andExpect(redirectedUrl("/rack/PG-1"));
        assertThat(rack.find("PG-1").orElseThrow().warp().bow().um()).isEqualTo(2_000);
        mvc.perform(post("/rack/PG-1/edit")
                        .param("seen", "\"0\"")
                        .param("unit", "mm")
                        .param("wood", "maple_sugar")
                        .param("length", "680")
                        .param("width", "80 mm")
                        .param("thickness", "25 mm")
                        .with(csrf()))
                .andExpect(status().isConflict())
                .andExpect(content()
                        .string(allOf(
                                containsString("Piece PG-1 was changed since you opened it."),
                                containsString("value=\"680\""),
                                containsString("value=\"&quot;1&quot;\""))));
    }

    @Test
    void reservedPieceCannotBeMadeShorterOnThePage() throws Exception {
        Piece piece = add(PieceField.PLACE, "A");
        rack.reserve(4, List.of(new Rack.PieceStamp(piece.code(), piece.version())));
        mvc.perform(post("/rack/PG-1/edit")
                        .param("seen", "\"0-reserved\"")
                        .param("unit", "mm")
                        .param("wood", "maple_sugar")
                        .param("length", "600")
                        .param("width", "80 mm")
                        .param("thickness", "25 mm")
                        .with(csrf()))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("This edit is not possible now. Piece PG-1 is reserved")));
    }

    @Test
    void measuringAgainIsAFormThatKeepsWhatWasTyped() throws Exception {
        add(PieceField.TWIST, "1.5");
        mvc.perform(get("/rack/PG-1/measure"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("Last 1.5 mm on "),
                                containsString("empty keeps it."),
                                containsString("Not read so far."),
                                containsString("value=\"&quot;0&quot;\""))));
        mvc.perform(post("/rack/PG-1/measure")
                        .param("seen", "\"0\"")
                        .param("unit", "mm")
                        .param("bow", "2,5")
                        .param("middle_bow", "3 1/7 in")
                        .param("measured_on", "2999-01-01")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("value=\"2,5\""),
                                containsString("value=\"3 1/7 in\""),
                                containsString(
                                        "Measured on “2999-01-01” is still to come; write the day it was measured."),
                                containsString("id=\"middle_bow-error\""))));
        mvc.perform(post("/rack/PG-1/measure")
                        .param("seen", "\"0\"")
                        .param("unit", "mm")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(containsString("Bow is empty, and so is every other reading; write at least one.")));
        mvc.perform(post("/rack/PG-1/measure")
                        .param("seen", "\"7\"")
                        .param("unit", "mm")
                        .param("bow", "2.5")
                        .with(csrf()))
                .andExpect(status().isConflict())
                .andExpect(content()
                        .string(allOf(
                                containsString("Piece PG-1 was changed since you opened it."),
                                containsString("value=\"2.5\""))));
        mvc.perform(get("/rack/NONE/measure")).andExpect(status().isNotFound());
    }

    @Test
    void readingsStandFromTheFirstToTheLastWithWhatChanged() throws Exception {
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "PG-2")
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "80")
                        .put(PieceField.THICKNESS, "25")
                        .put(PieceField.BOW, "1")
                        .put(PieceField.TWIST, "2")
                        .put(PieceField.MOISTURE, "9.5")
                        .put(PieceField.MEASURED_ON, "2026-03-02"),
                LengthUnit.MM);
        mvc.perform(post("/rack/PG-2/measure")
                        .param("seen", "\"0\"")
                        .param("unit", "mm")
                        .param("bow", "3")
                        .param("middle_bow", "1.2")
                        .param("stick_gap", "6")
                        .param("stick_length", "320")
                        .param("moisture", "8")
                        .param("measured_on", "2026-07-01")
                        .with(csrf()))
                .andExpect(redirectedUrl("/rack/PG-2"))
                .andExpect(flash().attribute(
                                "notice", "The reading is saved; what the piece can give is reckoned from it now."));
        String page = mvc.perform(get("/rack/PG-2")).andReturn().getResponse().getContentAsString();
        assertThat(page)
                .contains("From Mon 2 Mar 2026 to Wed 1 Jul 2026 it dried by 1.5 points, and its bow grew by 2.0 mm,"
                        + " its twist went down by 0.5 mm.")
                .contains("(−1.5 points)", "(+2.0)", "(−0.5)", "bow 1.2")
                .contains("the middle is bent more. Parts count as cut from an even bow of 4.8 mm,"
                        + " and none as more than 3.0 mm out.")
                .contains("/science#piece-second-reading");
        assertThat(page.indexOf("Mon 2 Mar 2026</span>"))
                .isPositive()
                .isLessThan(page.indexOf("Wed 1 Jul 2026</span>"));

        mvc.perform(post("/rack/PG-2/measure")
                        .param("seen", "\"1\"")
                        .param("unit", "mm")
                        .param("bow", "2")
                        .param("measured_on", "2026-05-01")
                        .with(csrf()))
                .andExpect(flash().attribute(
                                "notice", "The reading is saved among the earlier ones; the newest still counts."));
        assertThat(pieces.warpReadings("PG-2")).hasSize(3);
        assertThat(rack.find("PG-2").orElseThrow().warp().bow().mm()).isEqualTo(3);
        mvc.perform(post("/rack/PG-2/measure")
                        .param("seen", "\"2\"")
                        .param("unit", "mm")
                        .param("moisture", "8")
                        .param("measured_on", "2026-07-01")
                        .with(csrf()))
                .andExpect(flash().attribute("notice", "That reading is there already; nothing was added."));
    }

    @Test
    void piecePageAnswersForAThicknessAndAWidth() throws Exception {
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "PG-6")
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "80")
                        .put(PieceField.THICKNESS, "25")
                        .put(PieceField.BOW, "6")
                        .put(PieceField.CUP, "1.6"),
                LengthUnit.MM);
        // Planing 1 mm off each face: 25 − 2 − 1.6 − 6·(l/700)² = 20  =>  l = 338.1…; a neck: 6·(l/700)² = 1  =>
        // 285.77…
        mvc.perform(get("/rack/PG-6").param("thickness", "20"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("Of a part 20.0 mm thick: as a neck up to 285.7 mm long"),
                                containsString("As a head up to 338.1 mm long"),
                                containsString("beyond 285.7 mm a neck is more than 1.0 mm out of straight"),
                                containsString("<title>Piece PG-6 · Scarfwright</title>"),
                                containsString("No design is on file."),
                                containsString("No neck is still to be made in these weeks."),
                                containsString("Not measured: read its moisture before it is glued."),
                                containsString("kg at 12 %, for want of a reading, by the average of its wood"))));
        // Ripped to 40 mm the cup is 0.4: 25 − 2 − 0.4 − 6·(l/700)² = 20  =>  l = 460.79…
        mvc.perform(get("/rack/PG-6").param("thickness", "20 mm").param("width", "4 cm"))
                .andExpect(content()
                        .string(allOf(
                                containsString("when the piece is ripped to 40.0 mm first: as a neck up to 285.7 mm"),
                                containsString("As a head up to 460.7 mm long"),
                                containsString("Dashed: when the piece is ripped to 40.0 mm first, as you asked."))));
        mvc.perform(get("/rack/PG-6").param("thickness", "26").param("width", "wide"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString(
                                        "Thickness “26” is not more than 0 and at most what the piece has, 25 mm."),
                                containsString("value=\"wide\""))));
    }

    @Test
    void importShowsErrorsAndKeepsTheText() throws Exception {
        String text = "code,wood,length,width,thickness\nPG-3,maple_sugar,640,70,22\nPG-4,mapel_sugar,640,70,\n";
        mvc.perform(multipart("/rack/import")
                        .param("text", text)
                        .param("then", "look")
                        .with(csrf()))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Row 3, thickness is missing")));
        mvc.perform(multipart("/rack/import")
                        .param("text", text)
                        .param("then", "save")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("Row 3, wood “mapel_sugar” is no wood the shop knows"),
                                containsString("Row 3, thickness is missing"),
                                containsString("PG-4,mapel_sugar,640,70,"),
                                containsString("1 new piece"))));
        assertThat(rack.find("PG-3")).isEmpty();
    }

    @Test
    void importLooksFirstThenSaves() throws Exception {
        MockMultipartFile file = new MockMultipartFile(
                "file",
                "rack.csv",
                "text/csv",
                "\ufeffcode;wood;length;width;thickness\nPG-5;wenge;640,5;70;22\n".getBytes(StandardCharsets.UTF_8));
        mvc.perform(multipart("/rack/import").file(file).param("then", "look").with(csrf()))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("Nothing is saved so far."),
                                containsString("PG-5;wenge;640,5;70;22"),
                                containsString("640,5 mm × 70 mm × 22 mm"))));
        assertThat(rack.find("PG-5")).isEmpty();
        mvc.perform(multipart("/rack/import").file(file).param("then", "save").with(csrf()))
                .andExpect(redirectedUrl("/rack"))
                .andExpect(flash().attribute("notice", "1 piece is new on the rack."));
        assertThat(rack.find("PG-5")).isPresent();
    }

    @Test
    void exampleOnTheImportPageCanBeImported() throws Exception {
        String page = mvc.perform(get("/rack/import")).andReturn().getResponse().getContentAsString();
        String example = page.substring(page.indexOf("<pre"), page.indexOf("</pre>"));
        mvc.perform(multipart("/rack/import")
                        .param("text", example.substring(example.indexOf('>') + 1))
                        .with(csrf()))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("4 new pieces")));
    }

    @Test
    void importRefusesAFileThatIsNoText() throws Exception {
        MockMultipartFile file = new MockMultipartFile(
                "file", "rack.csv", "text/csv", "wood,l\u00e4nge\n".getBytes(StandardCharsets.ISO_8859_1));
        mvc.perform(multipart("/rack/import").file(file).with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("File is not UTF-8: line 1")));
    }
}
