package org.scarfwright.shop.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.Length;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.shop.LabelSheets;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
class LabelSheetWebTest {
    private static final String PAGES = "/shop/label-sheets";
    private static final String API = "/api/shop/label-sheets";

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    LabelSheets sheets;

    @Test
    void addsOneAsPeopleWriteLengths() throws Exception {
        mvc.perform(get(PAGES + "/new")).andExpect(status().isOk());
        mvc.perform(send(PAGES, sheet("ours", "width", "2 1/2 in"))).andExpect(redirectedUrl(PAGES));
        assertThat(sheets.find("ours").orElseThrow().sheet().width()).isEqualTo(Length.ofUm(63_500));
        mvc.perform(get("/shop")).andExpect(content().string(containsString(PAGES)));
    }

    @Test
    void aSingleLabelNeedsNoGrid() throws Exception {
        Map<String, String> fields = new LinkedHashMap<>(
                Map.of("code", "roll", "name", "Roll", "paper", "single", "width", "50", "height", "25"));
        mvc.perform(send(PAGES, fields)).andExpect(redirectedUrl(PAGES));
        LabelSheet saved = sheets.find("roll").orElseThrow().sheet();
        assertThat(saved.paper()).isEqualTo(LabelPaper.SINGLE);
        assertThat(saved.onPage()).isEqualTo(1);
        mvc.perform(get(PAGES + "/roll")).andExpect(status().isOk());
    }

    @Test
    void keepsWhatWasTypedAndSaysEverythingThatIsWrong() throws Exception {
        mvc.perform(send(PAGES, sheet("Säge", "across", "three", "left", "wide", "paper", "A3", "name", "")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“Säge” cannot be used")))
                .andExpect(content().string(containsString("Name is empty")))
                .andExpect(content().string(containsString("“A3” is no paper; write A4, Letter or single")));
        mvc.perform(send(PAGES, sheet("ours", "across", "three", "left", "wide")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“three” is not a whole number; write 1 to 20")))
                .andExpect(content().string(containsString("value=\"wide\"")));
        mvc.perform(send(PAGES, sheet("ours", "pitchAcross", "60")))
                .andExpect(content().string(containsString("Pitch across is 60 mm, less than the width of a label")));
        mvc.perform(send(PAGES, sheet("ours", "height", "5")))
                .andExpect(content().string(containsString("“5” is too small; write 10 mm to 300 mm")));
        mvc.perform(send(PAGES, sheet("ours", "height", "16")))
                .andExpect(content().string(containsString("too small for a code 5 mm high and a QR code")));
        mvc.perform(send(PAGES, sheet("a4-21"))).andExpect(content().string(containsString("is another label sheet")));
        assertThat(sheets.find("ours")).isEmpty();
    }

    @Test
    void editsRemovesAndPutsBack() throws Exception {
        mvc.perform(send(PAGES, sheet("ours")));
        mvc.perform(send(PAGES + "/ours", sheet("ours", "version", "0", "top", "12")))
                .andExpect(redirectedUrl(PAGES));
        mvc.perform(send(PAGES + "/ours", sheet("ours", "version", "0", "top", "13")))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("value=\"13\"")));
        mvc.perform(post(PAGES + "/ours/remove").with(csrf()).param("version", "0"));
        assertThat(sheets.find("ours")).isPresent();
        var removed = mvc.perform(post(PAGES + "/ours/remove").with(csrf()).param("version", "1"))
                .andExpect(redirectedUrl(PAGES))
                .andReturn();
        assertThat(sheets.find("ours")).isEmpty();
        mvc.perform(get(PAGES).flashAttrs(removed.getFlashMap()))
                .andExpect(content().string(containsString("Put it back")));
        mvc.perform(get(PAGES + "/ours")).andExpect(status().isNotFound());
    }

    @Test
    void theApiTakesWhatItGives() throws Exception {
        var read = mvc.perform(get(API + "/a4-21")).andExpect(status().isOk()).andReturn();
        mvc.perform(put(API + "/a4-21")
                        .contentType(MediaType.APPLICATION_JSON)
                        .header(
                                HttpHeaders.IF_MATCH,
                                String.valueOf(read.getResponse().getHeader(HttpHeaders.ETAG)))
                        .content(read.getResponse().getContentAsString()))
                .andExpect(status().isOk())
                .andExpect(header().string(HttpHeaders.ETAG, "\"1\""))
                .andExpect(jsonPath("$.pitchAcrossMm").value(66.0));
        mvc.perform(delete(API + "/a4-21").header(HttpHeaders.IF_MATCH, "\"0\""))
                .andExpect(status().isPreconditionFailed());
        mvc.perform(delete(API + "/a4-21").header(HttpHeaders.IF_MATCH, "\"1\""))
                .andExpect(status().isNoContent());
        mvc.perform(get(API + "/a4-21")).andExpect(status().isNotFound());
    }

    @Test
    void theApiPointsAtWhatIsWrong() throws Exception {
        String roll = "{\"code\":\"roll\",\"name\":\"Roll\",\"paper\":\"single\",\"widthMm\":%s,\"heightMm\":25}";
        mvc.perform(post(API).contentType(MediaType.APPLICATION_JSON).content(roll.formatted("50")))
                .andExpect(status().isCreated())
                .andExpect(header().string(HttpHeaders.LOCATION, API + "/roll"));
        mvc.perform(post(API).contentType(MediaType.APPLICATION_JSON).content(roll.formatted("50")))
                .andExpect(status().isConflict());
        mvc.perform(post(API).contentType(MediaType.APPLICATION_JSON).content(roll.formatted("20")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[?(@.pointer=='/widthMm')].message")
                        .value(hasItem(containsString("too small for a code 5 mm high"))));
        mvc.perform(post(API).contentType(MediaType.APPLICATION_JSON).content("{\"code\":\"roll\"}"))
                .andExpect(jsonPath("$.errors[?(@.pointer=='/paper')].message")
                        .value(hasItem(containsString("is missing"))));
    }

    private static Map<String, String> sheet(String code, String... changes) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("shownUnit", "mm");
        fields.put("code", code);
        fields.put("name", "Ours");
        fields.put("paper", "A4");
        fields.put("across", "3");
        fields.put("down", "7");
        fields.put("left", "7,2");
        fields.put("top", "15");
        fields.put("pitchAcross", "66");
        fields.put("pitchDown", "38.1");
        fields.put("width", "63.5");
        fields.put("height", "38.1");
        for (int i = 0; i < changes.length; i += 2) {
            fields.put(changes[i], changes[i + 1]);
        }
        return fields;
    }

    private static MockHttpServletRequestBuilder send(String address, Map<String, String> fields) {
        MockHttpServletRequestBuilder request = post(address).with(csrf());
        fields.forEach(request::param);
        return request;
    }
}
