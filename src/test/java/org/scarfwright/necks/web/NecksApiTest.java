package org.scarfwright.necks.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

/** What programs are told about designs and orders. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class NecksApiTest {
    private static final String DESIGN = """
            {"code": "withy-6", "name": "Withy six-string", "neckLengthMm": 457.2, "nutWidthMm": "1 11/16 in",
             "heelWidthMm": 57, "neckThicknessMm": 20, "headLengthMm": "180", "headWidthMm": 76, "headThicknessMm": 15,
             "angles": [13, 10.5], "arrangements": ["underlaid", "overlaid"], "finish": "opaque",
             "neckWoods": ["maple_sugar", "Black walnut"], "wingsAllowed": true}""";
    private static final String ORDER = """
            {"code": "A-101", "design": "WITHY-6", "quantity": 2, "due": "2026-12-04"}""";
    private static final MediaType CSV = MediaType.valueOf("text/csv");

    @Autowired
    MockMvcTester mvc;

    private MvcTestResult post(String path, MediaType type, String body) {
        return mvc.post().uri(path).contentType(type).content(body).exchange();
    }

    private MvcTestResult post(String path, String json) {
        return post(path, MediaType.APPLICATION_JSON, json);
    }

    private MvcTestResult put(String path, String etag, String json) {
        return mvc.put()
                .uri(path)
                .header("If-Match", etag)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    @Test
    void entersADesignAndGivesItBackAsWritten() {
        assertThat(post("/api/designs", DESIGN))
                .hasStatus(HttpStatus.CREATED)
                .hasHeader("Location", "/api/designs/WITHY-6")
                .hasHeader("ETag", "\"0\"");
        assertThat(mvc.get().uri("/api/designs/withy-6"))
                .hasStatusOk()
                .hasHeader("ETag", "\"0\"")
                .bodyJson()
                .isLenientlyEqualTo("""
                        {"code": "WITHY-6", "neckLengthMm": 457.2, "nutWidthMm": 42.863, "headLengthMm": 180,
                         "angles": [10.5, 13], "arrangements": ["underlaid", "overlaid"], "finish": "opaque",
                         "neckWoods": ["maple_sugar", "walnut_black"], "headWoods": [], "match": "any", "linesMeet": false,
                         "wingsAllowed": true, "endAllowanceMm": 2, "version": 0, "notices": [],
                         "typed": {"nutWidthMm": "1 11/16 in", "neckLengthMm": "457.2 mm", "headLengthMm": "180 mm"}}""");
        assertThat(mvc.get().uri("/api/designs"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.length()")
                .isEqualTo(1);
    }

    @Test
    void doesNotDoubleADesignThatIsSentAgain() {
        post("/api/designs", DESIGN);
        assertThat(post("/api/designs", DESIGN)).hasStatusOk().hasHeader("ETag", "\"0\"");
        assertThat(post("/api/designs", DESIGN.replace("457.2", "460")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .isLenientlyEqualTo("""
                        {"errors": [{"pointer": "/code", "field": "code", "value": "WITHY-6",
                          "message": "Code “WITHY-6” is taken: neck length is 457.2 mm there and 460 mm here; edit that \
                        design, or give this one a code of its own."}]}""");
    }

    @Test
    void pointsAtEveryValueThatIsNotRight() {
        assertThat(post("/api/designs", """
                        [{"code": "A"}, {"code": "B", "name": "B", "neckLengthMm": "3 km", "nutWidthMm": -1, "heelWidthMm": 57,
                          "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": {"mm": 3}, "headThicknessMm": 25,
                          "angles": [0, 90], "arrangements": [], "finish": "shiny", "neckWoods": ["maple_shugar"],
                          "neckLenghtMm": 3}, 7]"""))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .hasContentTypeCompatibleWith(MediaType.APPLICATION_PROBLEM_JSON)
                .bodyJson()
                .extractingPath("$.errors[*].pointer")
                .asArray()
                .contains(
                        "/0/name",
                        "/0/angles",
                        "/0/finish",
                        "/1/neckLengthMm",
                        "/1/nutWidthMm",
                        "/1/headWidthMm",
                        "/1/headThicknessMm",
                        "/1/angles",
                        "/1/arrangements",
                        "/1/finish",
                        "/1/neckWoods",
                        "/1/neckLenghtMm",
                        "/2");
        assertThat(mvc.get().uri("/api/designs"))
                .bodyJson()
                .extractingPath("$.length()")
                .isEqualTo(0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e400", "-1e-400", "1e15", "123456789012345678901234567890123456789012345678901234567890"})
    void refusesNumbersBeyondAnySense(String number) {
        assertThat(post("/api/designs", DESIGN.replace("457.2", number)))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .extractingPath("$.errors[0].pointer")
                .isEqualTo("/neckLengthMm");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[1,", "nonsense"})
    void answersABodyThatIsNoJson(String body) {
        assertThat(post("/api/designs", body))
                .hasStatus4xxClientError()
                .hasContentTypeCompatibleWith(MediaType.APPLICATION_PROBLEM_JSON);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "7", "\"text\"", "null", "true"})
    void answersJsonThatIsNoDesign(String body) {
        assertThat(post("/api/designs", body)).hasStatus4xxClientError();
        assertThat(post("/api/orders", body)).hasStatus4xxClientError();
    }

    @Test
    void editsOnlyTheVersionThatWasSeen() {
        post("/api/designs", DESIGN);
        assertThat(mvc.put()
                        .uri("/api/designs/WITHY-6")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(DESIGN))
                .hasStatus(HttpStatus.PRECONDITION_REQUIRED);
        assertThat(put("/api/designs/WITHY-6", "\"7\"", DESIGN)).hasStatus(HttpStatus.PRECONDITION_FAILED);
        assertThat(put("/api/designs/NONE", "\"0\"", DESIGN)).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(put("/api/designs/WITHY-6", "\"0\"", DESIGN.replace("\"opaque\"", "\"clear\"")))
                .hasStatusOk()
                .hasHeader("ETag", "\"1\"")
                .bodyJson()
                .extractingPath("$.notices[0]")
                .asString()
                .startsWith("Underlaid, a seam will show on the clear face, 109.7 mm from the nut at 10.5°");
        assertThat(put("/api/designs/WITHY-6", "\"0\"", DESIGN)).hasStatus(HttpStatus.PRECONDITION_FAILED);
        assertThat(put("/api/designs/WITHY-6", "\"1\"", DESIGN.replace("withy-6", "other")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void takesBackWhatItGaveAndKeepsWhatWasTyped() throws Exception {
        post("/api/designs", DESIGN);
        String given = mvc.get()
                .uri("/api/designs/WITHY-6")
                .exchange()
                .getResponse()
                .getContentAsString(java.nio.charset.StandardCharsets.UTF_8);
        assertThat(put("/api/designs/WITHY-6", "\"0\"", given))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.typed.nutWidthMm")
                .isEqualTo("1 11/16 in");
    }

    @Test
    void readsAFileOfDesigns() {
        String file = """
                code;name;neck_length;nut_width;heel_width;neck_thickness;head_length;head_width;head_thickness;angle;\
                arrangements;finish
                HOB-4;Hob short bass;560,5;41;61;1 in;8 1/2 in;88;16;13;both;veneered
                """;
        assertThat(post("/api/designs?preview=true", CSV, file))
                .hasStatusOk()
                .bodyJson()
                .isLenientlyEqualTo(
                        "{\"preview\": true, \"added\": 1, \"entries\": [{\"code\": \"HOB-4\", \"fate\": \"new\"}]}");
        assertThat(mvc.get().uri("/api/designs/HOB-4")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post("/api/designs", CSV, file)).hasStatus(HttpStatus.CREATED);
        assertThat(post("/api/designs", CSV, file))
                .hasStatusOk()
                .bodyJson()
                .isLenientlyEqualTo("{\"added\": 0, \"unchanged\": 1, \"refused\": 0}");
        assertThat(post("/api/designs", CSV, file.replace(";13;", ";90;")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .isLenientlyEqualTo("""
                        {"errors": [{"pointer": "/rows/2/angle", "field": "angle", "value": "90",
                          "message": "Row 2, angle is 90°; a design takes 3° to 30°, usual are 7° to 17°."}]}""");
        assertThat(post("/api/designs?preview=true", CSV, file.replace(";13;", ";90;")))
                .hasStatusOk()
                .bodyJson()
                .isLenientlyEqualTo("{\"refused\": 1, \"errors\": [{\"pointer\": \"/rows/2/angle\"}]}");
        assertThat(post("/api/designs", CSV, "")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(post("/api/designs", MediaType.TEXT_XML, "<a/>")).hasStatus(HttpStatus.UNSUPPORTED_MEDIA_TYPE);
    }

    @Test
    void entersOrdersAndFindsThemByWeek() {
        post("/api/designs", DESIGN);
        assertThat(post("/api/orders", ORDER))
                .hasStatus(HttpStatus.CREATED)
                .hasHeader("Location", "/api/orders/A-101")
                .bodyJson()
                .isLenientlyEqualTo("""
                        {"code": "A-101", "design": "WITHY-6", "quantity": 2, "due": "2026-12-04", "priority": 5,
                         "week": "2026-W49", "note": "", "state": "open", "notices": [], "version": 0}""");
        assertThat(post("/api/orders", """
                        [{"design": "WITHY-6", "quantity": "1", "due": "2026-12-01", "week": "2026-W50"}]"""))
                .hasStatus(HttpStatus.CREATED)
                .bodyJson()
                .extractingPath("$.entries[0].code")
                .asString()
                .hasSize(4);
        assertThat(mvc.get().uri("/api/orders?week=2026-W49"))
                .bodyJson()
                .extractingPath("$.length()")
                .isEqualTo(1);
        assertThat(mvc.get().uri("/api/orders?week=2026-W50"))
                .bodyJson()
                .extractingPath("$[0].notices[0]")
                .isEqualTo("It is planned for 2026-W50, after its due day in 2026-W49.");
        assertThat(mvc.get().uri("/api/orders"))
                .bodyJson()
                .extractingPath("$.length()")
                .isEqualTo(2);
        assertThat(mvc.get().uri("/api/orders?week=next"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .isLenientlyEqualTo("{\"errors\": [{\"pointer\": \"/week\", \"value\": \"next\"}]}");
        assertThat(mvc.get().uri("/api/orders/NONE")).hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void refusesAnOrderWithoutDesignAndEverythingElseThatIsWrong() {
        assertThat(post("/api/orders", ORDER))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .isLenientlyEqualTo("""
                        {"errors": [{"pointer": "/design", "field": "design", "value": "WITHY-6",
                          "message": "Design “WITHY-6” is no design; there is no design yet; enter it first."}]}""");
        assertThat(post("/api/orders", """
                        {"quantity": 0, "due": "soon", "priority": 12, "week": "2027-W53", "customer": "x"}"""))
                .bodyJson()
                .extractingPath("$.errors[*].pointer")
                .asArray()
                .containsExactlyInAnyOrder("/customer", "/design", "/quantity", "/due", "/priority", "/week");
        assertThat(post("/api/orders", CSV, "design,quantity,due\nX,0,soon\n"))
                .bodyJson()
                .extractingPath("$.errors[*].pointer")
                .asArray()
                .containsExactlyInAnyOrder("/rows/2/design", "/rows/2/quantity", "/rows/2/due");
    }

    @Test
    void cancelsRestoresAndEditsAnOrder() {
        post("/api/designs", DESIGN);
        post("/api/orders", ORDER);
        assertThat(post("/api/orders/A-101/cancel", ""))
                .hasStatusOk()
                .hasHeader("ETag", "\"1\"")
                .bodyJson()
                .extractingPath("$.state")
                .isEqualTo("cancelled");
        assertThat(put("/api/orders/A-101", "\"1\"", ORDER)).hasStatus(HttpStatus.CONFLICT);
        assertThat(post("/api/orders/A-101/restore", ""))
                .bodyJson()
                .extractingPath("$.state")
                .isEqualTo("open");
        assertThat(put("/api/orders/A-101", "\"2\"", ORDER.replace("2,", "3,")))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.quantity")
                .isEqualTo(3);
        assertThat(put("/api/orders/A-101", "\"2\"", ORDER)).hasStatus(HttpStatus.PRECONDITION_FAILED);
        assertThat(post("/api/orders/NONE/cancel", "")).hasStatus(HttpStatus.NOT_FOUND);
    }
}
