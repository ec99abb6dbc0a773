package org.scarfwright.rack.web;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.Pieces;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
class FindTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @BeforeEach
    void threePieces() {
        for (String code : new String[] {"T-14", "T-1O", "T-10"}) {
            pieces.add(
                    new PieceCells()
                            .put(PieceField.CODE, code)
                            .put(PieceField.WOOD, "maple_sugar")
                            .put(PieceField.LENGTH, "640")
                            .put(PieceField.WIDTH, "70")
                            .put(PieceField.THICKNESS, "22"),
                    LengthUnit.MM);
        }
    }

    @Test
    void theAddressOnALabelOpensThePiece() throws Exception {
        mvc.perform(get("/p/T-14")).andExpect(redirectedUrl("/rack/T-14"));
        mvc.perform(get("/p/t14")).andExpect(redirectedUrl("/rack/T-14"));
    }

    @Test
    void theFieldTakesACodeAsItIsSaid() throws Exception {
        mvc.perform(get("/")).andExpect(content().string(containsString("aria-label=\"Code of a piece\"")));
        mvc.perform(get("/p").param("code", "tango one four")).andExpect(redirectedUrl("/rack/T-14"));
        mvc.perform(get("/p").param("code", "http://192.168.1.20:8417/p/T-14")).andExpect(redirectedUrl("/rack/T-14"));
        mvc.perform(get("/p")).andExpect(status().isOk()).andExpect(content().string(containsString("Code")));
    }

    @Test
    void asksWhichOfTwoIsMeant() throws Exception {
        mvc.perform(get("/p").param("code", "tlo"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("More than one piece may be meant by “tlo”")))
                .andExpect(content().string(containsString("/rack/T-10")))
                .andExpect(content().string(containsString("/rack/T-1O")));
    }

    @Test
    void helpsOnWhereNoPieceIsCalledSo() throws Exception {
        mvc.perform(get("/p/ZZZ-9"))
                .andExpect(status().isNotFound())
                .andExpect(content().string(containsString("No piece is called “ZZZ-9”")))
                .andExpect(content().string(containsString("value=\"ZZZ-9\"")))
                .andExpect(content().string(containsString("/rack?q=ZZZ-9")));
        mvc.perform(get("/p").param("code", "<b>{x}\u0000"))
                .andExpect(status().isNotFound())
                .andExpect(content().string(not(containsString("<b>{x}"))));
        mvc.perform(get("/p").param("code", "x".repeat(5000))).andExpect(status().isNotFound());
    }

    @Test
    void theApiFindsAsThePageDoes() throws Exception {
        mvc.perform(get("/api/rack/find").param("code", "t 14"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.codes").value("T-14"));
        mvc.perform(get("/api/rack/find").param("code", "ZZZ-9"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.codes").isEmpty());
        mvc.perform(get("/api/rack/find"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(
                        jsonPath("$.errors[?(@.pointer=='/code')].message").value(hasItem(containsString("is empty"))));
    }
}
