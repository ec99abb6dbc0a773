package org.scarfwright.rack.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** Woods on their page and for programs. Figures: Wood Handbook (FPL-GTR-282), chapters 4, 5, 10 and 13. */
@OnH2
class WoodWebTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Test
    void answersTheMoistureOfThePrintedTable() throws Exception {
        // Chapter 4: 70 °F (21.1 °C) and 65 % is printed as 12.0.
        mvc.perform(get("/api/wood/emc").param("celsius", "21.1").param("rh", "65"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.emcPercent").value(11.96));
        mvc.perform(get("/api/wood/emc").param("celsius", "21,1 °C").param("rh", "65 %"))
                .andExpect(jsonPath("$.emcPercent").value(11.96));
    }

    @Test
    void refusesAirItCannotAnswerFor() throws Exception {
        mvc.perform(get("/api/wood/emc"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(2)))
                .andExpect(jsonPath("$.errors[0].pointer").value("/celsius"))
                .andExpect(jsonPath("$.errors[1].pointer").value("/rh"));
        refused("999", "65", "Temperature is 999 °C; the published figures reach from -1.1 to 54.4 °C");
        refused("-40", "65", "Temperature is -40 °C");
        refused("warm", "65", "“warm” is not a number in °C; write for example 21.1");
        refused("21", "", "Relative humidity is empty; write for example 65");
        refused("21", "101", "Relative humidity is 101 %; the published figures reach from 5 to 90 %");
        refused("21", "9".repeat(100_000), "is not a number in %");
    }

    @Test
    void listsEveryWoodAndLeavesBlanksEmpty() throws Exception {
        mvc.perform(get("/api/wood/species"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$", hasSize(33)))
                .andExpect(jsonPath("$[?(@.id=='maple_sugar')].shrinkTangentialPct")
                        .value(9.9))
                .andExpect(
                        jsonPath("$[?(@.id=='maple_sugar')].movementTangential").value("0.00353"))
                .andExpect(jsonPath("$[?(@.id=='maple_sugar')].shrinkageNotChecked")
                        .value(false))
                .andExpect(jsonPath("$[?(@.id=='maple_sugar')].own").value(false))
                .andExpect(jsonPath("$[?(@.id=='bubinga')].shrinkageNotChecked").value(true))
                .andExpect(jsonPath("$[?(@.id=='bubinga')].lookUpAppendix").value(true))
                .andExpect(jsonPath("$[?(@.id=='ovangkol')].shrinkRadialPct").value((Object) null));
    }

    @Test
    void theListMarksWhatWasNotCheckedAndShowsTheRangeOfTrueMahogany() throws Exception {
        String page = page("/wood", 200);

        assertThat(page).contains("not checked", "volumetric not checked", "0.00141 to 0.00238", "0.00353");
        assertThat(page).contains("never design values", "the current CITES appendix");
        assertThat(page).contains("href=\"/wood/maple_sugar\"", "href=\"/science#wood-species\"");
    }

    @Test
    void aWoodsPageShowsEveryFigureWithItsSource() throws Exception {
        String page = page("/wood/maple_sugar", 200);

        assertThat(page)
                .contains("0.63, referred to its volume at 12 %", "706 kg/m³", "15800 psi, 109 MPa")
                .contains("1.83 million psi, 12.6 GPa", "1450 lbf, 6.4 kN", "4.8 %", "9.9 %", "14.7 %")
                .contains("0.00165", "0.00353", "Wood Handbook Table 4-3", "Bonds satisfactorily:")
                .contains("href=\"/science#wood-coefficient\"", "Group 1", "HSE hardwood 3")
                .doesNotContain("not known", "current CITES appendix", "entered by this shop");
    }

    @Test
    void aBlankIsSaidInWordsAndNothingIsInvented() throws Exception {
        String page = page("/wood/bocote_ziricote", 200);

        assertThat(page)
                .contains("not known: no published figure was found, and none is invented")
                .contains("not known: it follows from a shrinkage that is not known")
                .contains("not known: it follows from figures that are not known")
                .contains("No published class of bonding was found.");
    }

    @Test
    void trueMahoganyShowsItsRangeItsFlagAndWhatWasNotChecked() throws Exception {
        String page = page("/wood/mahogany_true", 200);

        assertThat(page)
                .contains("0.00141 to 0.00238: published figures differ, so both are given")
                .contains("href=\"/science#wood-coefficient-differs\"")
                .contains("Check the current CITES appendix")
                .contains("Reported of Swietenia")
                .contains("not checked");
    }

    @Test
    void aWoodsPageWeighsABlank() throws Exception {
        // 640 × 80 × 25 mm is 1.28 litres; 1000 × 0.63 × 1.12 = 705.6 g a litre at 12 % (Wood Handbook, equation 4-14).
        assertThat(page("/wood/maple_sugar?length=640&width=80&thickness=25&moisture=12", 200))
                .contains("1.28 litres or 0.54 board feet. At 12 % it weighs about 903 g;");
        assertThat(page("/wood/wenge?length=640&width=80&thickness=25&moisture=12", 200))
                .contains("What it weighs at 12 % is not known");
        assertThat(page("/wood/maple_sugar?length=3 km&width=0&thickness=301&moisture=31", 422))
                .contains("value=\"3 km\"", "Length is 3 km; it lies above 0 and up to 6000 mm")
                .contains("Width is 0;", "Thickness is 301;", "weights are worked out up to 30 %");
        mvc.perform(get("/api/wood/species/maple_sugar/weight")
                        .param("length", "640")
                        .param("width", "80")
                        .param("thickness", "25")
                        .param("moisture", "12"))
                .andExpect(jsonPath("$.grams").value(903))
                .andExpect(jsonPath("$.kgPerCubicMetre").value(705.6))
                .andExpect(jsonPath("$.boardFeet").value(0.54));
        mvc.perform(get("/api/wood/species/maple_sugar/weight"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(4)));
    }

    @Test
    void aWoodNobodyKnowsIsNotFound() throws Exception {
        page("/wood/unobtainium", 404);
        mvc.perform(get("/api/wood/species/unobtainium"))
                .andExpect(status().isNotFound())
                .andExpect(jsonPath("$.detail").value("There is no wood “unobtainium”."));
    }

    @Test
    void worksOutMoistureAndKeepsWhatWasTyped() throws Exception {
        assertThat(page("/wood/air?celsius=21.1&rh=65", 200))
                .contains("about 12.0 % moisture content", "value=\"21.1\"");
        assertThat(page("/wood/air?celsius=hot&rh=65", 422))
                .contains("value=\"hot\"", "id=\"celsius-error\"", "“hot” is not a number in °C");
    }

    @Test
    void saysWhichHumidityKeepsTheRack() throws Exception {
        // The printed table: 70 °F gives 6.9 % at 35 % and 7.7 % at 40 %.
        assertThat(page("/wood/air?keepCelsius=21.1&keep=7", 200))
                .contains("At 21.1 °C about 35 % relative humidity keeps wood at 7 %.");
        assertThat(page("/wood/air?keepCelsius=21.1&keep=30", 422))
                .contains(
                        "Moisture to keep is 30 %; at 21.1 °C air of 5 to 90 % relative humidity keeps wood at 1.3 to 20.5 %");
        mvc.perform(get("/api/wood/humidity").param("celsius", "21.1").param("percent", "7"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.rh").value(35.4));
        mvc.perform(get("/api/wood/humidity").param("celsius", "21.1").param("percent", "30"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/percent"));
        mvc.perform(get("/api/wood/humidity").param("celsius", "x"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(2)));
    }

    @Test
    void saysWhetherAPieceIsReady() throws Exception {
        assertThat(page("/wood/air?reading=12", 200)).contains("Not ready: at 12 % it is 2 points wetter");
        assertThat(page("/wood/air?reading=wet", 422)).contains("Moisture of the piece “wet” is not a number");
        mvc.perform(get("/api/wood/readiness").param("percent", "8"))
                .andExpect(jsonPath("$.verdict").value("ready"));
        mvc.perform(get("/api/wood/readiness")).andExpect(jsonPath("$.verdict").value("not measured"));
        mvc.perform(get("/api/wood/readiness").param("percent", "-1")).andExpect(status().isUnprocessableContent());
    }

    @Test
    void stepsAtASeamOverTheYear() throws Exception {
        // Wood Handbook, chapter 13 and Table 13-5: 60 mm over 3 points, 0.635 mm against 0.342 mm.
        String asked = "one=maple_sugar&oneCut=flat&other=walnut_black&otherCut=quarter&width=60&lowest=7&highest=10";
        assertThat(page("/wood/seam?" + asked, 200))
                .contains(
                        "Hard maple (sugar), flat-sawn against Black walnut, quarter-sawn, 60 mm wide, from 7 % to 10 %:")
                .contains("a step of up to 0.15 mm at each edge");
        mvc.perform(get("/api/wood/seam?" + asked))
                .andExpect(jsonPath("$.mostStepMm").value(0.147));
        assertThat(page("/wood/seam", 200)).contains("at each edge at the other");
        assertThat(page("/wood/seam?one=mahogany_true", 200)).contains(" to ");
        assertThat(page("/wood/seam?one=bocote_ziricote", 422))
                .contains("One wood is Bocote / ziricote, whose shrinkage that way is not known; none is invented");
        assertThat(page("/wood/seam?one=mapel&oneCut=rift&width=0&lowest=5&highest=9", 422))
                .contains(
                        "is no wood the shop knows",
                        "“rift” is no cut; write flat or quarter",
                        "Width of the seam is 0;")
                .contains("Lowest moisture is 5 %; the rule holds from 6 % to 14 %");
        assertThat(page("/wood/seam?lowest=10&highest=8", 422))
                .contains("Highest moisture is 8 %, below the lowest, 10 %");
    }

    @Test
    void saysWhatASlopeOfGrainLeaves() throws Exception {
        // Wood Handbook, chapter 5: 1 in 12 with 1 in 18 is 1 in 10; Table 5-12 prints 81 % there.
        assertThat(page("/wood/slope?first=12&second=18", 200)).contains("1 in 12 and 1 in 18 together are 1 in 9.98.");
        assertThat(page("/wood/slope?first=1:10", 200))
                .contains("bending strength falls to 81 %, impact strength to 62 %");
        assertThat(page("/wood/slope?first=4", 200)).contains("this is an extrapolation");
        assertThat(page("/wood/slope?first=0&second=flat", 422))
                .contains("Slope on one face is 0; it lies between 1 and 1000", "“flat” is not a number");
        mvc.perform(get("/api/wood/slope").param("first", "12").param("second", "18"))
                .andExpect(jsonPath("$.slope").value(9.985))
                .andExpect(jsonPath("$.extrapolated").value(false));
        mvc.perform(get("/api/wood/slope")).andExpect(status().isUnprocessableContent());
        mvc.perform(get("/api/wood/slope").param("first", "1,250"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].message").value(containsString("can be read two ways")));
        mvc.perform(get("/api/wood/slope").param("first", "12,5")).andExpect(status().isOk());
    }

    private void refused(String celsius, String humidity, String message) throws Exception {
        mvc.perform(get("/api/wood/emc").param("celsius", celsius).param("rh", humidity))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(1)))
                .andExpect(jsonPath("$.errors[0].message", containsString(message)));
    }

    private String page(String address, int status) throws Exception {
        return mvc.perform(get(address))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
