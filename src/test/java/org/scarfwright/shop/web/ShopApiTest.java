package org.scarfwright.shop.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopSettings;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
class ShopApiTest {
    private static final String FRAME_SAW = """
            {"code":"frame","name":"Frame saw","kind":"hand","kerfMm":0.65,"depthMm":"12 in","reachMm":250,
             "shallowestDegrees":7.5,"steepestDegrees":17,"truingMm":2.25}""";

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Shop shop;

    @Test
    void whatItGivesItTakes() throws Exception {
        ShopSettings before = shop.settings();
        var read = mvc.perform(get("/api/shop/settings"))
                .andExpect(status().isOk())
                .andReturn();
        String etag = String.valueOf(read.getResponse().getHeader(HttpHeaders.ETAG));
        mvc.perform(json(put("/api/shop/settings"), read.getResponse().getContentAsString())
                        .header(HttpHeaders.IF_MATCH, etag))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.planingPerFaceMm").value(1.0));
        assertThat(shop.settings()).isEqualTo(before);
    }

    @Test
    void takesLengthsAsNumbersOfMillimetresOrAsPeopleWriteThem() throws Exception {
        mvc.perform(json(put("/api/shop/settings"), settings("1.25", "\"4 3/4 in\"", "\"in\""))
                        .header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isOk());
        assertThat(shop.settings().planingPerFace()).isEqualTo(Length.ofUm(1_250));
        assertThat(shop.settings().usableRestLength()).isEqualTo(Length.ofUm(120_650));
        assertThat(shop.settings().unit()).isEqualTo(LengthUnit.INCH);
    }

    @Test
    void pointsAtEveryWrongValue() throws Exception {
        mvc.perform(json(put("/api/shop/settings"), settings("-1", "\"25 38\"", "\"furlong\""))
                        .header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.errors.length()").value(3))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/planingPerFaceMm')].message")
                        .value(hasItem(containsString("negative"))))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/usableRestLengthMm')].message")
                        .value(hasItem(containsString("can be read two ways"))))
                .andExpect(
                        jsonPath("$.errors[?(@.pointer=='/lengthUnit')].value").value("furlong"));
    }

    @Test
    void refusesANumberNobodyCouldWriteOut() throws Exception {
        mvc.perform(json(put("/api/shop/settings"), settings("1e999999", "1e-999999", "\"mm\""))
                        .header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void namesMissingUnknownAndNestedKeys() throws Exception {
        mvc.perform(json(put("/api/shop/settings"), "{\"currency\":{},\"colour\":1}")
                        .header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[?(@.pointer=='/colour')].message")
                        .value(hasItem(containsString("not known"))))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/currency')].message")
                        .value(hasItem(containsString("neither a number nor a text"))))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/driestPercent')].message")
                        .value(hasItem(containsString("is missing"))));
        mvc.perform(json(put("/api/shop/settings"), "[1]").header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(json(put("/api/shop/settings"), "{").header(HttpHeaders.IF_MATCH, version()))
                .andExpect(status().isBadRequest());
    }

    @Test
    void anEditNamesTheVersionItSaw() throws Exception {
        mvc.perform(json(put("/api/shop/settings"), settings("1", "120", "\"mm\"")))
                .andExpect(status().isPreconditionRequired());
        mvc.perform(json(put("/api/shop/settings"), settings("1", "120", "\"mm\""))
                        .header(HttpHeaders.IF_MATCH, "\"99\""))
                .andExpect(status().isPreconditionFailed());
    }

    @Test
    void addsEditsAndRemovesASaw() throws Exception {
        mvc.perform(json(post("/api/shop/saws"), FRAME_SAW))
                .andExpect(status().isCreated())
                .andExpect(header().string(HttpHeaders.LOCATION, "/api/shop/saws/frame"))
                .andExpect(jsonPath("$.depthMm").value(304.8))
                .andExpect(jsonPath("$.scaleDegrees").value(0.5));
        mvc.perform(json(post("/api/shop/saws"), FRAME_SAW)).andExpect(status().isConflict());
        mvc.perform(get("/api/shop/saws"))
                .andExpect(jsonPath("$[4].code").value("frame"))
                .andExpect(jsonPath("$[4].shallowestDegrees").value(7.5));
        mvc.perform(json(put("/api/shop/saws/frame"), FRAME_SAW.replace("0.65", "0.9"))
                        .header(HttpHeaders.IF_MATCH, "\"0\""))
                .andExpect(status().isOk())
                .andExpect(header().string(HttpHeaders.ETAG, "\"1\""))
                .andExpect(jsonPath("$.kerfMm").value(0.9));
        mvc.perform(json(put("/api/shop/saws/frame"), FRAME_SAW).header(HttpHeaders.IF_MATCH, "\"0\""))
                .andExpect(status().isPreconditionFailed());
        mvc.perform(json(put("/api/shop/saws/hand"), FRAME_SAW).header(HttpHeaders.IF_MATCH, "\"0\""))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/code"));
        mvc.perform(delete("/api/shop/saws/frame").header(HttpHeaders.IF_MATCH, "\"0\""))
                .andExpect(status().isPreconditionFailed());
        mvc.perform(delete("/api/shop/saws/frame").header(HttpHeaders.IF_MATCH, "\"1\""))
                .andExpect(status().isNoContent());
        mvc.perform(get("/api/shop/saws/frame")).andExpect(status().isNotFound());
    }

    @Test
    void keepsHowFinelyASawIsRead() throws Exception {
        mvc.perform(json(post("/api/shop/saws"), withScale("0.25")))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.scaleDegrees").value(0.25));
        for (String wrong : List.of("0.009", "5.001", "\"fine\"")) {
            mvc.perform(json(post("/api/shop/saws"), withScale(wrong)))
                    .andExpect(status().isUnprocessableContent())
                    .andExpect(jsonPath("$.errors[0].pointer").value("/scaleDegrees"));
        }
    }

    private static String withScale(String scale) {
        return FRAME_SAW.replace("\"truingMm\"", "\"scaleDegrees\":" + scale + ",\"truingMm\"");
    }

    @Test
    void beginsEmpty() throws Exception {
        mvc.perform(get("/api/shop/start")).andExpect(jsonPath("$.started").value(false));
        mvc.perform(post("/api/shop/empty")).andExpect(jsonPath("$.started").value(true));
    }

    private String version() throws Exception {
        return String.valueOf(
                mvc.perform(get("/api/shop/settings")).andReturn().getResponse().getHeader(HttpHeaders.ETAG));
    }

    private static String settings(String planing, String rest, String unit) {
        return """
                {"lengthUnit":%s,"currency":"EUR","planingPerFaceMm":%s,"edgeAllowanceMm":2,"neckStraightnessMm":1,
                 "shortestMachinedMm":300,"usableRestLengthMm":%s,"usableRestWidthMm":40,"neckGrainSlope":15,
                 "driestPercent":6,"wettestPercent":10,"moistureApartPoints":2,"searchSeconds":30,"searchMemoryMb":1024}""".formatted(unit, planing, rest);
    }

    private static MockHttpServletRequestBuilder json(MockHttpServletRequestBuilder request, String body) {
        return request.contentType(MediaType.APPLICATION_JSON).content(body);
    }
}
