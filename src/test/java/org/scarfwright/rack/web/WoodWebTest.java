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
    void listsEveryWoodWithItsSourcesAndLeavesBlanksEmpty() throws Exception {
        mvc.perform(get("/api/wood/species"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$", hasSize(33)))
                .andExpect(jsonPath("$[?(@.id=='maple_sugar')].shrinkTangentialPct")
                        .value(9.9))
                .andExpect(jsonPath("$[?(@.id=='maple_sugar')].shrinkageNotChecked")
                        .value(false))
                .andExpect(jsonPath("$[?(@.id=='bubinga')].shrinkageNotChecked").value(true))
                .andExpect(jsonPath("$[?(@.id=='bubinga')].lookUpAppendix").value(true))
                .andExpect(jsonPath("$[?(@.id=='ovangkol')].shrinkRadialPct").value((Object) null));
    }

    @Test
    void thePageMarksWhatWasNotCheckedAndShowsTheRangeOfTrueMahogany() throws Exception {
        String page = page("/wood", 200);

        assertThat(page).contains("not checked", "volumetric not checked", "0.00141 to 0.00238", "0.00353");
        assertThat(page).contains("never design values", "the current CITES appendix");
    }

    @Test
    void thePageWorksOutMoistureAndKeepsWhatWasTyped() throws Exception {
        assertThat(page("/wood?celsius=21.1&rh=65", 200)).contains("about 12.0 % moisture content", "value=\"21.1\"");
        assertThat(page("/wood?celsius=hot&rh=65", 422))
                .contains("value=\"hot\"", "id=\"celsius-error\"", "“hot” is not a number in °C");
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
