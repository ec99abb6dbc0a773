package org.scarfwright.necks.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** The worked example of the joint, drawn and measured as polygons (see ScarfJointPolygonTest), and everything that is refused. */
@OnH2
class JointApiTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Test
    void answersEveryLengthOfAnUnderlaidJoint() throws Exception {
        mvc.perform(example().param("arrangement", "underlaid"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.neckFrontMm").value(457.0))
                .andExpect(jsonPath("$.neckBackMm").value(570.426))
                .andExpect(jsonPath("$.headFrontMm").value(64.825))
                .andExpect(jsonPath("$.headBackMm").value(149.894))
                .andExpect(jsonPath("$.glueFaceMm").value(86.382))
                .andExpect(jsonPath("$.glueAreaMm2").value(5182.893))
                .andExpect(jsonPath("$.seamFromNutMm").value(115.175))
                .andExpect(jsonPath("$.backEndFromNutMm").value(27.044))
                .andExpect(jsonPath("$.wingWidthMm").value(9.0))
                .andExpect(jsonPath("$.slope").value(5.6713))
                .andExpect(jsonPath("$.notes", empty()));
    }

    @Test
    void answersNullWhereAnOverlaidHeadHasNoSeam() throws Exception {
        mvc.perform(example().param("arrangement", "overlaid"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("\"seamFromNutMm\":null")))
                .andExpect(jsonPath("$.neckFrontMm").value(370.618))
                .andExpect(jsonPath("$.headBackMm").value(265.069))
                .andExpect(jsonPath("$.wingWidthMm").value(0.0));
    }

    @Test
    void readsLengthsAsPeopleWriteThem() throws Exception {
        mvc.perform(get("/api/joint")
                        .param("arrangement", "overlaid")
                        .param("angle", "13°")
                        .param("neckThickness", "1 in")
                        .param("headThickness", "1,5 cm")
                        .param("neckLength", "457")
                        .param("headLength", "180 mm")
                        .param("neckWidth", "2 3/8\"")
                        .param("headWidth", "78"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.neckFrontMm", closeTo(390.32, 0.005)))
                .andExpect(jsonPath("$.glueFaceMm", closeTo(112.91, 0.005)));
    }

    @Test
    void tellsEveryParameterThatIsMissing() throws Exception {
        refused(get("/api/joint"), 8)
                .andExpect(jsonPath(
                        "$.errors[*].pointer",
                        containsInAnyOrder(
                                "/arrangement",
                                "/angle",
                                "/neckThickness",
                                "/headThickness",
                                "/neckLength",
                                "/headLength",
                                "/neckWidth",
                                "/headWidth")))
                .andExpect(jsonPath("$.errors[1].message").value("Angle is missing; give for example angle=10."));
    }

    @Test
    void refusesAParameterGivenTwice() throws Exception {
        refused(example().param("arrangement", "underlaid").param("angle", "12"), 1)
                .andExpect(jsonPath("$.errors[0].pointer").value("/angle"))
                .andExpect(jsonPath("$.errors[0].message")
                        .value("Angle is given 2 times; give it once, for example angle=10."));
    }

    @Test
    void refusesEachBadValueWithItsFieldAndWhatWouldBeRight() throws Exception {
        bad("arrangement", "under", "“under” is not an arrangement; write underlaid or overlaid.");
        bad("arrangement", "", "“” is not an arrangement; write underlaid or overlaid.");
        bad(
                "angle",
                "0",
                "Angle is 0°, but a tilt angle lies between 0° and 90°; usual are 7° to 17°, for example 10.");
        bad("angle", "90", "Angle is 90°, but a tilt angle lies between 0° and 90°");
        bad("angle", "ten", "Angle “ten” is not a number; write for example 10 or 12.5.");
        bad("neckThickness", "0", "Neck thickness is 0; it must be above 0, for example 20 mm.");
        bad("headThickness", "-15", "Head thickness “-15” is negative");
        bad(
                "neckLength",
                "3 km",
                "Neck length is 3 km, more than the 6000 mm a piece may have; write for example 457 mm.");
        bad("headLength", "1,234", "Head length “1,234” can be read two ways; write 1234 or 1.234.");
        bad("neckWidth", "60 kg", "Neck width “60 kg” has the unit “kg”; use mm, cm, m or in.");
        bad("headWidth", "1300", "Head width is 1300, more than the 1200 mm a piece may have");
        bad("neckThickness", "0.0001", "Neck thickness is 0.0001; it must be above 0");
        bad("headLength", "100", "Head length is 100 mm, but at 10° in a neck 20 mm thick the seam comes 115.2 mm");
    }

    @Test
    void answersAFiveMegabyteValueShortlyAndSoon() throws Exception {
        Instant start = Instant.now();
        String body = mvc.perform(get("/api/joint").param("angle", "9".repeat(5_000_000)))
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();

        assertThat(body.length()).isLessThan(4_000);
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(5));
    }

    @Test
    void answersTextOutsideTheBasicPlaneWithoutBreakingIt() throws Exception {
        bad("neckLength", "🪵".repeat(50), "Neck length “🪵🪵🪵");
        bad("neckLength", "x" + "🪵".repeat(50), "Neck length “x🪵🪵🪵");
    }

    @Test
    void notesWhatIsUnusualButCanBe() throws Exception {
        mvc.perform(get("/api/joint")
                        .param("arrangement", "underlaid")
                        .param("angle", "20")
                        .param("neckThickness", "15")
                        .param("headThickness", "20")
                        .param("neckLength", "457")
                        .param("headLength", "180")
                        .param("neckWidth", "60")
                        .param("headWidth", "78"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.notes", hasSize(2)))
                .andExpect(jsonPath("$.notes[0]", startsWith("Head thickness is 20 mm, thicker than the neck stock")))
                .andExpect(jsonPath("$.notes[1]").value("Angle is 20°; usual are 7° to 17°."));
    }

    @Test
    void isDescribedForPrograms() throws Exception {
        mvc.perform(get("/api/openapi"))
                .andExpect(status().isOk())
                .andExpect(jsonPath(
                        "$.paths['/api/joint'].get.parameters[*].name",
                        containsInAnyOrder(
                                "arrangement",
                                "angle",
                                "neckThickness",
                                "headThickness",
                                "neckLength",
                                "headLength",
                                "neckWidth",
                                "headWidth",
                                "headStock",
                                "kerf",
                                "volute",
                                "heelDepth",
                                "heelLength",
                                "tuners")))
                .andExpect(
                        jsonPath("$.paths['/api/joint'].get.responses['422']").exists());
    }

    @Test
    void saysWithinWhichRangesEachFigureLies() throws Exception {
        ranged("angle", 0, 90);
        ranged("neckThickness", 0, 300);
        ranged("headThickness", 0, 300);
        ranged("neckLength", 0, 6000);
        ranged("headLength", 0, 6000);
        ranged("neckWidth", 0, 1200);
        ranged("headWidth", 0, 1200);
        ranged("headStock", 0, 300);
        ranged("kerf", 0, 10);
        ranged("volute", 0, 100);
        ranged("heelDepth", 0, 300);
        ranged("heelLength", 0, 1000);
    }

    private void ranged(String name, int least, int most) throws Exception {
        String schema = "$.paths['/api/joint'].get.parameters[?(@.name == '" + name + "')].schema";
        mvc.perform(get("/api/openapi"))
                .andExpect(jsonPath(schema + ".minimum", contains(least)))
                .andExpect(jsonPath(schema + ".maximum", contains(most)));
    }

    /** Worked example: sin 10° = 0.173648, so 1 / sin 10° = 5.7588; 86.382 · tan 0.5° = 0.754; 115.175 · tan 0.5° = 1.005. */
    @Test
    void answersWhatThePageShowsBesideTheLengths() throws Exception {
        mvc.perform(example()
                        .param("arrangement", "underlaid")
                        .param("headStock", "20")
                        .param("kerf", "1")
                        .param("tuners", "30, 62, 118")
                        .param("volute", "8")
                        .param("heelDepth", "95")
                        .param("heelLength", "100"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.areaRatio").value(5.7588))
                .andExpect(jsonPath("$.gapPerHalfDegreeMm").value(0.754))
                .andExpect(jsonPath("$.outOfFlatPerHalfDegreeMm").value(1.005))
                .andExpect(jsonPath("$.backOfHeadMm").value(149.894))
                .andExpect(jsonPath("$.oneBlankMm", closeTo(457 + 64.825 + 113.426 + 5.759, 0.003)))
                .andExpect(jsonPath("$.tuners[*].tooNear", contains(false, false, true)))
                .andExpect(jsonPath("$.tuners[2].fromSeamMm").value(2.825))
                .andExpect(jsonPath("$.headOrders[2].order").value("front-before-gluing"))
                .andExpect(jsonPath("$.headOrders[2].headFrontMm", closeTo(64.825 - 28.356, 0.002)))
                .andExpect(jsonPath("$.headOrders[4].neckFrontMm", closeTo(457 + 28.794, 0.002)))
                .andExpect(jsonPath("$.headOrders[3].gluedFaceMm", closeTo(115.175, 0.001)))
                .andExpect(jsonPath("$.headOrders[3].finishedFaceMm", closeTo(86.382, 0.001)))
                .andExpect(jsonPath("$.volute.headStockMm").value(23.0))
                .andExpect(jsonPath("$.volute.neckStockMm").value(28.0))
                .andExpect(jsonPath("$.volute.neckLongerMm", closeTo(45.37, 0.002)))
                .andExpect(jsonPath("$.heel.blockMm").value(75.0))
                .andExpect(jsonPath("$.heel.layers").value(4))
                .andExpect(jsonPath("$.heel.lastLayerMm").value(15.0))
                .andExpect(jsonPath("$.heel.stockLengthMm").value(403.0))
                .andExpect(jsonPath("$.neckWedge.lengthMm", closeTo(113.426, 0.001)))
                .andExpect(jsonPath("$.headWedge.widthMm").value(78.0))
                .andExpect(jsonPath("$.jigWedge.baseMm").value(220.0))
                .andExpect(jsonPath("$.jigWedge.riseMm", closeTo(38.792, 0.001)))
                .andExpect(jsonPath("$.testCut.runMm", closeTo(113.426, 0.001)))
                .andExpect(jsonPath("$.saws[1].kind").value("mitre"))
                .andExpect(jsonPath("$.saws[1].greatestThicknessMm", closeTo(150 * 0.173648, 0.002)))
                .andExpect(jsonPath("$.saws[1].shallowestDegrees", closeTo(7.663, 0.0005)))
                .andExpect(jsonPath("$.saws[1].scaleDegrees").value(0.5))
                .andExpect(jsonPath("$.saws[1].gapOfScaleMm").value(0.754))
                .andExpect(jsonPath("$.neckWood.lengthMm", closeTo(579.69, 0.01)))
                .andExpect(jsonPath("$.headWood.widthMm").value(80.0));
    }

    @Test
    void leavesOutWhatWasNotAsked() throws Exception {
        mvc.perform(example().param("arrangement", "overlaid"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.tuners", empty()))
                .andExpect(jsonPath("$.volute").isEmpty())
                .andExpect(jsonPath("$.heel").isEmpty())
                .andExpect(jsonPath("$.headOrders[3].headBackMm").value(265.07));
        mvc.perform(example().param("arrangement", "overlaid").param("tuners", "118"))
                .andExpect(jsonPath("$.tuners[0].tooNear").value(false))
                .andExpect(jsonPath("$.tuners[0].fromSeamMm").isEmpty());
    }

    @Test
    void saysWhichOrdersAreNotPossible() throws Exception {
        mvc.perform(example().param("arrangement", "underlaid").param("headStock", "30"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.headOrders[2].refusals[0]", containsString("the bevel would run off the tip")))
                .andExpect(jsonPath("$.headOrders[2].headFrontMm").isEmpty())
                .andExpect(jsonPath("$.headOrders[3].refusals", empty()));
    }

    @Test
    void refusesWhatIsAskedBesideWithItsFieldAndWhatWouldBeRight() throws Exception {
        beside("headStock", "14", "is 14, thinner than the head it becomes, 15 mm; write at least 15 mm");
        beside("headStock", "301", "it lies above 0 and up to 300 mm, for example 20 mm, or is left empty");
        beside("kerf", "0", "is 0; it lies above 0 and up to 10 mm");
        beside("kerf", "10.001", "it lies above 0 and up to 10 mm");
        beside("volute", "thick", "“thick” is not a length");
        beside("heelDepth", "-3", "is negative");
        beside("heelLength", "3 km", "up to 1000 mm");
        beside("tuners", "30, 200", "name 200 mm, which is not on the head");
        beside("tuners", "30, sixty", "“sixty” is not a length");
        beside("tuners", "30,,62", "with commas between");
        beside("tuners", "1,".repeat(24) + "1", "are 25; write at most 24");
    }

    @Test
    void readsHolesWithBlanksOrDecimalCommas() throws Exception {
        holes("30,62,95", 30.0, 62.0, 95.0);
        holes("30,5; 62,5", 30.5, 62.5);
        holes("30,5", 30.5);
        holes("1 in, 62", 25.4, 62.0);
    }

    private void holes(String text, Double... mm) throws Exception {
        mvc.perform(example().param("arrangement", "underlaid").param("tuners", text))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.tuners[*].fromNutMm", contains(mm)));
    }

    private void beside(String name, String value, String message) throws Exception {
        refused(example().param("arrangement", "underlaid").param(name, value), 1)
                .andExpect(jsonPath("$.errors[0].pointer").value("/" + name))
                .andExpect(jsonPath("$.errors[0].message", containsString(message)));
    }

    private void bad(String name, String value, String message) throws Exception {
        MockHttpServletRequestBuilder request = get("/api/joint");
        String[][] values = {
            {"arrangement", "underlaid"},
            {"angle", "10"},
            {"neckThickness", "20"},
            {"headThickness", "15"},
            {"neckLength", "457"},
            {"headLength", "180"},
            {"neckWidth", "60"},
            {"headWidth", "78"}
        };
        for (String[] pair : values) {
            request.param(pair[0], pair[0].equals(name) ? value : pair[1]);
        }
        refused(request, 1)
                .andExpect(jsonPath("$.errors[0].pointer").value("/" + name))
                .andExpect(jsonPath("$.errors[0].field").value(name))
                .andExpect(jsonPath("$.errors[0].value", startsWith(value.substring(0, Math.min(6, value.length())))))
                .andExpect(jsonPath("$.errors[0].message", containsString(message)))
                .andExpect(jsonPath("$.neckFrontMm").doesNotExist());
    }

    private ResultActions refused(MockHttpServletRequestBuilder request, int errors) throws Exception {
        return mvc.perform(request)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
                .andExpect(jsonPath("$.errors", hasSize(errors)));
    }

    private static MockHttpServletRequestBuilder example() {
        return get("/api/joint")
                .param("angle", "10")
                .param("neckThickness", "20")
                .param("headThickness", "15")
                .param("neckLength", "457")
                .param("headLength", "180")
                .param("neckWidth", "60")
                .param("headWidth", "78");
    }
}
