package org.scarfwright.rack.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceReadiness;
import org.scarfwright.rack.Pieces;
import org.scarfwright.wood.Readiness;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

/** Woods the shop adds itself, and the shop's own air: on pages and for programs. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class OwnWoodWebTest {
    private static final String PEAR = """
            {"commonName": "Pear", "botanicalName": "Pyrus communis", "specificGravity": 0.69, "specificGravityBasis": "12",
             "morPsi": 12000, "shrinkRadialPct": "3,9", "shrinkTangentialPct": 11.4, "bondingClass": "well",
             "source": "own measuring"}
            """;

    @Autowired
    MockMvc mvc;

    @Autowired
    Pieces pieces;

    @Autowired
    PieceReadiness readiness;

    @Test
    void aWoodIsAddedOnThePageAndMarkedAsTheShops() throws Exception {
        mvc.perform(form("/wood").param("specificGravity", "0.69").param("specificGravityBasis", "12"))
                .andExpect(redirectedUrl("/wood/own_pear"))
                .andExpect(flash().attribute("notice", containsString("Pear is added")));

        mvc.perform(get("/wood/own_pear"))
                .andExpect(content().string(containsString("entered by this shop")))
                .andExpect(content().string(containsString("not known: the shop entered none")))
                .andExpect(content().string(containsString("Edit the figures")));
        mvc.perform(get("/wood")).andExpect(content().string(containsString("entered by this shop")));
        mvc.perform(get("/rack/new")).andExpect(content().string(containsString("own_pear")));
    }

    @Test
    void aWrongEntryKeepsWhatWasTypedAndSavesNothing() throws Exception {
        mvc.perform(post("/wood")
                        .with(csrf())
                        .param("commonName", "sugar MAPLE hard")
                        .param("specificGravity", "heavy")
                        .param("morPsi", "12000.5")
                        .param("shrinkRadialPct", "31")
                        .param("bondingClass", "badly"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“sugar MAPLE hard” already means Hard maple (sugar)")))
                .andExpect(content().string(containsString("“heavy” is not a number")))
                .andExpect(content().string(containsString("write it with no digit behind the point at most")))
                .andExpect(content().string(containsString("Radial shrinkage is 31 %; it lies between 0.1 and 30 %")))
                .andExpect(content().string(containsString("“badly” is no class")))
                .andExpect(content().string(containsString("value=\"heavy\"")));
        mvc.perform(post("/wood").with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Name is missing")));
        mvc.perform(form("/wood", "\u0000\u0007")).andExpect(status().isUnprocessableContent());
        mvc.perform(form("/wood", "x".repeat(100_000)))
                .andExpect(content().string(containsString("is 100000 characters long; write at most 80")));
        mvc.perform(get("/api/wood/species")).andExpect(jsonPath("$", hasSize(33)));
    }

    @Test
    void aWoodIsEditedAndRemovedOnThePage() throws Exception {
        mvc.perform(form("/wood")).andExpect(status().isFound());
        mvc.perform(get("/wood/own_pear/edit"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("value=\"Pear\"")));

        mvc.perform(form("/wood/own_pear").param("version", "0").param("morPsi", "12000"))
                .andExpect(redirectedUrl("/wood/own_pear"));
        mvc.perform(form("/wood/own_pear").param("version", "0").param("morPsi", "13000"))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("value=\"13000\"")))
                .andExpect(content().string(containsString("This wood was changed since you opened this page")));
        mvc.perform(form("/wood/own_pear").param("version", "1").param("morPsi", "1"))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(post("/wood/own_pear/remove").with(csrf()).param("version", "0"))
                .andExpect(redirectedUrl("/wood/own_pear"));
        mvc.perform(post("/wood/own_pear/remove").with(csrf()).param("version", "1"))
                .andExpect(redirectedUrl("/wood"));
        mvc.perform(get("/wood/own_pear")).andExpect(status().isNotFound());
    }

    @Test
    void aWoodInUseStays() throws Exception {
        mvc.perform(form("/wood")).andExpect(status().isFound());
        pieceOfPear();

        mvc.perform(post("/wood/own_pear/remove").with(csrf()).param("version", "0"))
                .andExpect(redirectedUrl("/wood/own_pear"))
                .andExpect(flash().attribute("notice", containsString("This wood stays: a piece")));
        mvc.perform(delete("/api/wood/species/own_pear").header("If-Match", "\"0\""))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.detail").value(containsString("This wood stays")));
    }

    @Test
    void aPublishedWoodIsNotEdited() throws Exception {
        mvc.perform(get("/wood/beech/edit")).andExpect(status().isNotFound());
        mvc.perform(form("/wood/beech").param("version", "0")).andExpect(status().isNotFound());
        send(put("/api/wood/species/beech").header("If-Match", "\"0\""), PEAR)
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.detail").value(containsString("is a published wood")));
        mvc.perform(delete("/api/wood/species/beech").header("If-Match", "\"0\""))
                .andExpect(status().isConflict());
    }

    @Test
    void aProgramAddsEditsAndRemovesAWood() throws Exception {
        String answer = send(post("/api/wood/species"), PEAR)
                .andExpect(status().isCreated())
                .andExpect(header().string("Location", "/api/wood/species/own_pear"))
                .andExpect(header().string("ETag", "\"0\""))
                .andExpect(jsonPath("$.own").value(true))
                .andExpect(jsonPath("$.shrinkRadialPct").value(3.9))
                .andExpect(jsonPath("$.shrinkVolumetricPct").value((Object) null))
                .andExpect(jsonPath("$.mechanicalSource").value("entered by this shop: own measuring"))
                .andReturn()
                .getResponse()
                .getContentAsString();

        send(put("/api/wood/species/own_pear"), answer).andExpect(status().isPreconditionRequired());
        send(put("/api/wood/species/own_pear").header("If-Match", "\"7\""), answer)
                .andExpect(status().isPreconditionFailed());
        send(put("/api/wood/species/own_pear").header("If-Match", "\"0\""), answer)
                .andExpect(status().isOk())
                .andExpect(header().string("ETag", "\"1\""))
                .andExpect(jsonPath("$.source").value("own measuring"))
                .andExpect(jsonPath("$.morPsi").value(12000));
        mvc.perform(delete("/api/wood/species/own_pear")).andExpect(status().isPreconditionRequired());
        mvc.perform(delete("/api/wood/species/own_pear").header("If-Match", "\"0\""))
                .andExpect(status().isPreconditionFailed());
        mvc.perform(delete("/api/wood/species/own_pear").header("If-Match", "\"1\""))
                .andExpect(status().isNoContent());
        mvc.perform(get("/api/wood/species/own_pear")).andExpect(status().isNotFound());
    }

    @Test
    void aProgramIsToldEveryFault() throws Exception {
        send(post("/api/wood/species"), "{\"commonName\": \"Pear\", \"colour\": \"red\", \"morPsi\": [1]}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(2)))
                .andExpect(jsonPath("$.errors[0].pointer").value("/colour"))
                .andExpect(jsonPath("$.errors[1].pointer").value("/morPsi"));
        send(post("/api/wood/species"), "{\"commonName\": \"Pear\", \"morPsi\": 1e999999, \"specificGravity\": 0.635}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(2)));
        send(post("/api/wood/species"), "[]").andExpect(status().isUnprocessableContent());
        send(post("/api/wood/species"), "{").andExpect(status().isBadRequest());
    }

    @Test
    void theShopsAirIsKeptAndMovesTheVerdict() throws Exception {
        assertThat(readiness.of(new org.scarfwright.measure.Moisture(900)).verdict())
                .isEqualTo(Readiness.Verdict.READY);
        // Wood Handbook, equation 4-5: 20 °C and 30 % come to about 6.2 %.
        mvc.perform(air("0").param("nowCelsius", "20").param("nowRh", "30")).andExpect(redirectedUrl("/wood/air"));

        assertThat(readiness.of(new org.scarfwright.measure.Moisture(900)).verdict())
                .isEqualTo(Readiness.Verdict.NOT_AT_REST);
        assertThat(readiness
                        .of(pieces.add(
                                new PieceCells()
                                        .put(PieceField.CODE, "DRY-1")
                                        .put(PieceField.WOOD, "beech")
                                        .put(PieceField.LENGTH, "700")
                                        .put(PieceField.WIDTH, "80")
                                        .put(PieceField.THICKNESS, "25"),
                                LengthUnit.MM))
                        .verdict())
                .isEqualTo(Readiness.Verdict.NOT_MEASURED);
        mvc.perform(get("/wood/air"))
                .andExpect(content()
                        .string(containsString("In air of 20 °C and 30 % relative humidity wood comes to about 6.2 %")))
                .andExpect(content().string(containsString("Read on ")));
        mvc.perform(air("0").param("nowCelsius", "25").param("nowRh", "40"))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("value=\"25\"")));
        mvc.perform(air("1").param("nowCelsius", "25").param("nowRh", ""))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Relative humidity now is empty")));
        mvc.perform(post("/wood/air")
                        .with(csrf())
                        .param("version", "1")
                        .param("dryCelsius", "20")
                        .param("dryRh", "60")
                        .param("dampCelsius", "20")
                        .param("dampRh", "60"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("which is not above the")));
    }

    @Test
    void aProgramKeepsTheShopsAir() throws Exception {
        mvc.perform(get("/api/wood/air"))
                .andExpect(header().string("ETag", "\"0\""))
                .andExpect(jsonPath("$.nowCelsius").value((Object) null))
                .andExpect(jsonPath("$.dryRh").value(35.0));
        String air =
                "{\"nowCelsius\": 21.1, \"nowRh\": 65, \"dryCelsius\": 20, \"dryRh\": 35, \"dampCelsius\": 22, \"dampRh\": 60}";
        send(put("/api/wood/air"), air).andExpect(status().isPreconditionRequired());
        send(put("/api/wood/air").header("If-Match", "\"0\""), air)
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.emcNowPercent").value(11.96))
                .andExpect(jsonPath("$.readOn").isNotEmpty());
        send(put("/api/wood/air").header("If-Match", "\"0\""), air).andExpect(status().isPreconditionFailed());
        send(put("/api/wood/air").header("If-Match", "\"1\""), "{\"dryCelsius\": 99}")
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors", hasSize(4)));
    }

    private void pieceOfPear() {
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "PEAR-1")
                        .put(PieceField.WOOD, "pear")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "80")
                        .put(PieceField.THICKNESS, "25"),
                LengthUnit.MM);
    }

    private static MockHttpServletRequestBuilder form(String address) {
        return form(address, "Pear");
    }

    private static MockHttpServletRequestBuilder form(String address, String name) {
        return post(address).with(csrf()).param("commonName", name);
    }

    private static MockHttpServletRequestBuilder air(String version) {
        return post("/wood/air")
                .with(csrf())
                .param("version", version)
                .param("dryCelsius", "20")
                .param("dryRh", "35")
                .param("dampCelsius", "22")
                .param("dampRh", "60");
    }

    private ResultActions send(MockHttpServletRequestBuilder request, String json) throws Exception {
        return mvc.perform(request.contentType(MediaType.APPLICATION_JSON).content(json));
    }
}
