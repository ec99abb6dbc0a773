package org.scarfwright.shop.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopEditing;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.shop.ShopStart;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
class ShopPagesTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Shop shop;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    ShopEditing editing;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    ShopStart start;

    @Test
    void theStartPageOffersBothWaysAndThenNeither() throws Exception {
        mvc.perform(get("/start"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Load the demo shop")))
                .andExpect(content().string(containsString("Start empty")));
        mvc.perform(post("/start/empty").with(csrf())).andExpect(redirectedUrl("/shop"));
        assertThat(start.isStarted()).isTrue();
        mvc.perform(get("/start"))
                .andExpect(content().string(containsString("has begun already")))
                .andExpect(content().string(not(containsString("Load the demo shop"))));
    }

    @Test
    void refusesAFormOfAnotherPage() throws Exception {
        mvc.perform(post("/start/empty")).andExpect(status().isForbidden());
        assertThat(start.isStarted()).isFalse();
    }

    @Test
    void showsEveryRuleAndSaw() throws Exception {
        mvc.perform(get("/shop"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Planing per face")))
                .andExpect(content().string(containsString("Band saw with a wedge jig")))
                .andExpect(content().string(containsString("Hand saw with a ramp block")));
    }

    @Test
    void savesRulesAsPeopleWriteThem() throws Exception {
        mvc.perform(send("/shop", rules("planingPerFace", "3/64 in", "wettestPercent", "9,5 %")))
                .andExpect(redirectedUrl("/shop"));
        assertThat(shop.settings().planingPerFace()).isEqualTo(Length.ofUm(1_191));
        assertThat(shop.settings().wettest().hundredths()).isEqualTo(950);
    }

    @Test
    void aSaveThatChangesNothingChangesNothing() throws Exception {
        ShopSettings before = shop.settings();
        mvc.perform(send("/shop", rules())).andExpect(redirectedUrl("/shop"));
        assertThat(shop.settings()).isEqualTo(before);
    }

    @Test
    void aBareNumberIsInTheUnitTheLabelsNamed() throws Exception {
        mvc.perform(send("/shop", rules("lengthUnit", "in", "usableRestLength", "130")))
                .andExpect(redirectedUrl("/shop"));
        assertThat(shop.settings().unit()).isEqualTo(LengthUnit.INCH);
        assertThat(shop.settings().usableRestLength()).isEqualTo(Length.ofMm(130));
    }

    @Test
    void namesEveryWrongRuleAndKeepsWhatWasTyped() throws Exception {
        ShopSettings before = shop.settings();
        mvc.perform(send(
                        "/shop",
                        rules(
                                "planingPerFace",
                                "thick",
                                "usableRestLength",
                                "3 km",
                                "edgeAllowance",
                                "51",
                                "neckGrainSlope",
                                "0",
                                "driestPercent",
                                "",
                                "currency",
                                " ")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("6 things are not right yet")))
                .andExpect(content().string(containsString("“thick” is not a length")))
                .andExpect(content().string(containsString("value=\"thick\"")))
                .andExpect(content().string(containsString("“51” is too large; write 0 mm to 50 mm")))
                .andExpect(content().string(containsString("“0” is too small; write 1 to 100")))
                .andExpect(content().string(containsString("value=\"3 km\"")));
        assertThat(shop.settings()).isEqualTo(before);
    }

    @Test
    void refusesAMoistureRangeThatIsUpsideDown() throws Exception {
        mvc.perform(send("/shop", rules("driestPercent", "10", "wettestPercent", "6")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“6” is not above the driest, 10 %")));
    }

    @Test
    void tellsTheSecondOfTwoEditorsAndKeepsTheirEntries() throws Exception {
        Map<String, String> late = rules("currency", "CHF");
        mvc.perform(send("/shop", rules("currency", "SEK"))).andExpect(redirectedUrl("/shop"));
        mvc.perform(send("/shop", late))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("changed since you opened this page")))
                .andExpect(content().string(containsString("value=\"CHF\"")));
        assertThat(shop.settings().currency()).isEqualTo("SEK");
    }

    @Test
    void addsASaw() throws Exception {
        mvc.perform(get("/shop/saws/new")).andExpect(status().isOk());
        mvc.perform(send("/shop/saws", saw("frame"))).andExpect(redirectedUrl("/shop"));
        assertThat(shop.saws()).extracting(Saw::code).endsWith("frame");
    }

    @Test
    void refusesASecondSawOfACodeAndASawWithoutOne() throws Exception {
        mvc.perform(send("/shop/saws", saw("band")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“band” is another saw&#39;s")));
        mvc.perform(send("/shop/saws", saw("new"))).andExpect(status().isUnprocessableContent());
        mvc.perform(send("/shop/saws", saw("Säge 1")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("value=\"Säge 1\"")));
        mvc.perform(send("/shop/saws", saw(""))).andExpect(content().string(containsString("Code is empty")));
    }

    @Test
    void refusesASawWhoseAnglesAreUpsideDown() throws Exception {
        mvc.perform(send("/shop/saws", saw("frame", "shallowestDegrees", "20")))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("“17” is below the shallowest angle, 20°")));
    }

    @Test
    void editsRemovesAndPutsBackASaw() throws Exception {
        mvc.perform(send("/shop/saws", saw("frame")));
        mvc.perform(get("/shop/saws/frame"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("value=\"0.7\"")));
        mvc.perform(send("/shop/saws/frame", saw("frame", "version", "0", "truing", "3")))
                .andExpect(redirectedUrl("/shop"));
        assertThat(editing.editableSaw("frame").orElseThrow().saw().truing()).isEqualTo(Length.ofMm(3));
        mvc.perform(post("/shop/saws/frame/remove").with(csrf()).param("version", "0"));
        assertThat(editing.editableSaw("frame"))
                .as("an outdated page removes nothing")
                .isPresent();
        var removed = mvc.perform(post("/shop/saws/frame/remove").with(csrf()).param("version", "1"))
                .andExpect(redirectedUrl("/shop"))
                .andReturn();
        assertThat(editing.editableSaw("frame")).isEmpty();
        mvc.perform(get("/shop").flashAttrs(removed.getFlashMap()))
                .andExpect(content().string(containsString("Put it back")));
        mvc.perform(get("/shop/saws/frame")).andExpect(status().isNotFound());
    }

    @Test
    void prefersASaw() throws Exception {
        mvc.perform(post("/shop/saws/hand/prefer").with(csrf())).andExpect(redirectedUrl("/shop"));
        assertThat(shop.saws().get(0).code()).isEqualTo("hand");
    }

    /** The form as a browser sends it when nothing was touched but the fields named here. */
    private Map<String, String> rules(String... changes) {
        ShopEditing.VersionedSettings now = editing.editableSettings();
        SettingsForm f = SettingsForm.of(now.version(), now.settings());
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("version", f.version());
        fields.put("shownUnit", f.shownUnit());
        fields.put("lengthUnit", f.lengthUnit());
        fields.put("currency", f.currency());
        fields.put("planingPerFace", f.planingPerFace());
        fields.put("edgeAllowance", f.edgeAllowance());
        fields.put("neckStraightness", f.neckStraightness());
        fields.put("shortestMachined", f.shortestMachined());
        fields.put("usableRestLength", f.usableRestLength());
        fields.put("usableRestWidth", f.usableRestWidth());
        fields.put("neckGrainSlope", f.neckGrainSlope());
        fields.put("driestPercent", f.driestPercent());
        fields.put("wettestPercent", f.wettestPercent());
        fields.put("moistureApartPoints", f.moistureApartPoints());
        fields.put("searchSeconds", f.searchSeconds());
        fields.put("searchMemoryMb", f.searchMemoryMb());
        return changed(fields, changes);
    }

    private static Map<String, String> saw(String code, String... changes) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("shownUnit", "mm");
        fields.put("code", code);
        fields.put("name", "Frame saw");
        fields.put("kind", "hand");
        fields.put("kerf", "0,7");
        fields.put("depth", "12 in");
        fields.put("reach", "250");
        fields.put("shallowestDegrees", "7");
        fields.put("steepestDegrees", "17");
        fields.put("truing", "2");
        return changed(fields, changes);
    }

    private static Map<String, String> changed(Map<String, String> fields, String... changes) {
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
