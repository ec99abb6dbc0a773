package org.scarfwright.week.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.Pieces;
import org.scarfwright.shop.LabelSheets;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
class LabelWebTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    LabelSheets sheets;

    @BeforeEach
    void threePieces() {
        add("T-1", "maple_sugar", "Shelf B2", "640");
        add("T-2", "maple_sugar", "Shelf <b>", "700");
        add("T-3", "walnut_black", "桐 🪵", "800.5");
    }

    private void add(String code, String wood, String place, String length) {
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, code)
                        .put(PieceField.WOOD, wood)
                        .put(PieceField.PLACE, place)
                        .put(PieceField.LENGTH, length)
                        .put(PieceField.WIDTH, "70")
                        .put(PieceField.THICKNESS, "22"),
                LengthUnit.MM);
    }

    @Test
    void onePieceHasItsLabelAsPdf() throws Exception {
        mvc.perform(get("/rack/T-1")).andExpect(content().string(containsString("/labels?codes=T-1")));
        String text = pdf(get("/api/labels").param("codes", "t-1").param("sheet", "single-62"), 1);
        assertThat(text).contains("T-1", "640 × 70 × 22", "Hard maple (sugar)", "Shelf B2");
    }

    @Test
    void chosenPiecesComeInTheOrderTheyAreNamed() throws Exception {
        String text = pdf(get("/api/labels").param("codes", "T-3, T-1;T-2 T-3").param("sheet", "single-62"), 3);
        assertThat(text.indexOf("T-3")).isLessThan(text.indexOf("T-1"));
        assertThat(text.indexOf("T-1")).isLessThan(text.indexOf("T-2"));
    }

    @Test
    void theListOfTheRackLeadsToTheLabelsOfWhatItShows() throws Exception {
        mvc.perform(get("/rack").param("q", "T-").param("minLength", "690"))
                .andExpect(content().string(containsString("/labels?q=T-&amp;minLength=690")));
        mvc.perform(get("/labels").param("q", "T-").param("minLength", "690"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("2 labels on 1 page")))
                .andExpect(content().string(containsString("/api/labels?q=T-&amp;minLengthMm=690")));
        assertThat(pdf(get("/api/labels").param("q", "T-").param("minLengthMm", "690"), 1))
                .contains("T-2", "T-3")
                .doesNotContain("T-1");
    }

    @Test
    void aBegunSheetIsGoneOnWith() throws Exception {
        mvc.perform(get("/labels")
                        .param("codes", "T-1 T-2")
                        .param("sheet", "a4-21")
                        .param("first", "21"))
                .andExpect(content().string(containsString("2 labels on 2 pages")));
    }

    @Test
    void thePageToPrintIsTrueToSizeAndTellsThePrinterItsPaper() throws Exception {
        mvc.perform(get("/labels/print").param("codes", "T-2 T-3").param("sheet", "single-62"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("width=\"62.000mm\" height=\"29.000mm\"")))
                .andExpect(content().string(containsString("/labels/page.css?sheet=single-62")))
                .andExpect(content().string(containsString("Shelf &lt;b&gt;")))
                .andExpect(content().string(containsString("桐 🪵")))
                .andExpect(content().string(not(containsString("style="))));
        mvc.perform(get("/labels/page.css").param("sheet", "single-62"))
                .andExpect(content().contentTypeCompatibleWith("text/css"))
                .andExpect(content().string("@page { size: 62mm 29mm; margin: 0; }\n"));
        mvc.perform(get("/labels/page.css").param("sheet", "none")).andExpect(status().isNotFound());
    }

    @Test
    void saysThatAPhoneCannotOpenThisMachinesOwnAddress() throws Exception {
        mvc.perform(get("/labels").param("codes", "T-1"))
                .andExpect(content().string(containsString("which only this machine can open")));
    }

    @Test
    void saysEverythingThatIsWrongAndKeepsWhatWasTyped() throws Exception {
        mvc.perform(get("/labels")
                        .param("codes", "T-1 NONE-9")
                        .param("sheet", "a5")
                        .param("first", "0")
                        .param("measured", "80"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“NONE-9” is no piece on the rack")))
                .andExpect(content().string(containsString("“a5” is none of the shop’s; take one of a4-14, a4-21")))
                .andExpect(content().string(containsString("“0” is not the number of a label")))
                .andExpect(content().string(containsString("must be a length from 95 to 105 mm")))
                .andExpect(content().string(containsString(">T-1 NONE-9</textarea>")));
        mvc.perform(get("/labels/print").param("codes", "NONE-9")).andExpect(status().isUnprocessableContent());
        mvc.perform(get("/labels").param("q", "no such piece anywhere"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Codes name no piece")));
        mvc.perform(get("/labels").param("minLength", "wide")).andExpect(status().isUnprocessableContent());
        mvc.perform(get("/labels").param("codes", "\u0000 <b> 🪵 {x}")).andExpect(status().isUnprocessableContent());
        mvc.perform(get("/labels").param("codes", "X ".repeat(1001)))
                .andExpect(content().string(containsString("print at most 1000 labels at a time")));
    }

    @Test
    void theApiPointsAtWhatIsWrong() throws Exception {
        mvc.perform(get("/api/labels")
                        .param("codes", "T-1")
                        .param("first", "22")
                        .param("sheet", "a4-21"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/first')].message")
                        .value(hasItem(containsString("write 1 to 21"))));
        mvc.perform(get("/api/labels").param("minLengthMm", "wide").accept(MediaType.APPLICATION_PDF))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void aShopWithoutLabelSheetsIsToldToAddOne() throws Exception {
        sheets.all().forEach(s -> sheets.remove(s.version(), s.sheet().code()));
        mvc.perform(get("/labels").param("codes", "T-1"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("the shop has none; add the one you print on")));
    }

    private String pdf(MockHttpServletRequestBuilder request, int pages) throws Exception {
        byte[] bytes = mvc.perform(request)
                .andExpect(status().isOk())
                .andExpect(header().string("Content-Type", MediaType.APPLICATION_PDF_VALUE))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        try (PDDocument document = Loader.loadPDF(bytes)) {
            assertThat(document.getNumberOfPages()).isEqualTo(pages);
            return new PDFTextStripper().getText(document);
        }
    }
}
