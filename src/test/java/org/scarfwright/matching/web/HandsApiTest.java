package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.database.OnH2;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Decisions by hand over the API and by the buttons of the pages. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class HandsApiTest {
    private static final String HANDS = "/api/weeks/2026-W49/hands";
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @BeforeEach
    void stock() {
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                N2,maple_sugar,700,90,25,mm
                H1,maple_sugar,420,90,22,mm
                H2,maple_sugar,440,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        assertThat(post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""")).hasStatus(HttpStatus.CREATED);
        for (String code : new String[] {"O-1", "O-2"}) {
            assertThat(post("/api/orders", """
                    {"code": "%s", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""".formatted(code))).hasStatus(HttpStatus.CREATED);
        }
    }

    private MvcTestResult post(String path, String json) {
        return mvc.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    private static JsonNode json(MvcTestResult result) throws Exception {
        return MAPPER.readTree(text(result));
    }

    private static String text(MvcTestResult result) throws Exception {
        return result.getResponse().getContentAsString(StandardCharsets.UTF_8);
    }

    private JsonNode plan() throws Exception {
        return json(post("/api/plans", "{\"week\": \"2026-W49\"}"));
    }

    @Test
    void aPinIsKeptShownAndTakenBack() throws Exception {
        MvcTestResult made =
                post(HANDS, "{\"kind\": \"pin\", \"order\": \"O-2\", \"neckPiece\": \"n2\", \"headPiece\": \"H2\"}");
        assertThat(made).hasStatus(HttpStatus.CREATED);
        JsonNode pin = json(made);
        assertThat(made).hasHeader("Location", HANDS + "/" + pin.get("id").asLong());
        assertThat(pin.get("neckPiece").asString()).isEqualTo("N2");
        assertThat(pin.get("text").asString())
                .isEqualTo("Pinned by hand: O-2 takes its neck from N2 and its head from H2.");
        assertThat(json(mvc.get().uri(HANDS).exchange()).get(0)).isEqualTo(pin);

        JsonNode plan = plan();
        assertThat(plan.get("filled").asInt()).isEqualTo(2);
        for (JsonNode pairing : plan.get("pairings")) {
            if (pairing.get("order").asString().equals("O-2")) {
                assertThat(pairing.get("neck").get("piece").asString()).isEqualTo("N2");
                assertThat(pairing.get("head").get("piece").asString()).isEqualTo("H2");
            }
        }
        assertThat(plan.get("hands").get(0).asString())
                .isEqualTo(pin.get("text").asString());
        String page = text(mvc.get().uri("/match/" + plan.get("id").asLong()).exchange());
        assertThat(page)
                .contains("Decided by hand")
                .contains("Pinned by hand: O-2 takes its neck from N2 and its head from H2.")
                .contains("/match/hands/" + pin.get("id").asLong() + "/undo");

        String one = HANDS + "/" + pin.get("id").asLong();
        assertThat(mvc.delete().uri(one)).hasStatus(HttpStatus.NO_CONTENT);
        assertThat(mvc.delete().uri(one)).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(json(mvc.get().uri(HANDS).exchange()).size()).isZero();
    }

    @Test
    void anAcceptedPinIsDoneAndDoesNotHoldUpTheRest() throws Exception {
        post(HANDS, "{\"kind\": \"pin\", \"order\": \"O-1\", \"neckPiece\": \"N1\", \"headPiece\": \"H1\"}");
        assertThat(post(HANDS, "{\"kind\": \"leave-out\", \"order\": \"O-2\"}")).hasStatus(HttpStatus.CREATED);
        JsonNode first = plan();
        assertThat(first.get("ordered").asInt()).as("O-2 is left out").isEqualTo(1);
        assertThat(post("/api/plans/" + first.get("id").asLong() + "/accept", ""))
                .hasStatusOk();
        JsonNode hands = json(mvc.get().uri(HANDS).exchange());
        assertThat(mvc.delete().uri(HANDS + "/" + hands.get(1).get("id").asLong()))
                .hasStatus(HttpStatus.NO_CONTENT);
        JsonNode rest = plan();
        assertThat(rest.get("ordered").asInt()).isEqualTo(1);
        assertThat(rest.get("pairings").get(0).get("order").asString()).isEqualTo("O-2");
        assertThat(rest.get("pairings").get(0).get("neck").get("piece").asString())
                .isEqualTo("N2");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{} | /kind | is none; write one of pin, forbid, forbid-pair, keep, arrange, leave-out",
                "{\"kind\": \"glue\"} | /kind | “glue” is none",
                "{\"kind\": \"pin\", \"order\": \"O-1\", \"neckPiece\": \"N1\"} | /headPiece | is missing",
                "{\"kind\": \"pin\", \"order\": \"O-9\", \"neckPiece\": \"N1\", \"headPiece\": \"H1\"} | /order | “O-9” is no order of week 2026-W49",
                "{\"kind\": \"forbid\", \"piece\": \"NOPE\"} | /piece | “NOPE” is no piece of the rack",
                "{\"kind\": \"forbid\", \"piece\": \"<b>\"} | /piece | is no piece of the rack",
                "{\"kind\": \"arrange\", \"order\": \"O-1\"} | /arrangement | is missing",
                "{\"kind\": \"arrange\", \"order\": \"O-1\", \"arrangement\": \"sideways\"} | /arrangement | write underlaid or overlaid",
                "{\"kind\": \"arrange\", \"order\": \"O-1\", \"angle\": \"13\"} | /angle | is not allowed by design D-1, which takes 10°",
                "{\"kind\": \"arrange\", \"order\": \"O-1\", \"angle\": \"steep\"} | /angle | is not right",
                "{\"kind\": \"pin\", \"order\": \"O-1\", \"neckPiece\": \"H1\", \"headPiece\": \"H2\"} | /neckPiece | cannot hold: H1 as the neck: "
            })
    void refusesWhatIsWrongAndSaysWhatWouldBeRight(String body, String pointer, String message) throws Exception {
        MvcTestResult refused = post(HANDS, body);
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        JsonNode error = json(refused).get("errors").get(0);
        assertThat(error.get("pointer").asString()).isEqualTo(pointer);
        assertThat(error.get("message").asString()).contains(message);
        assertThat(json(mvc.get().uri(HANDS).exchange()).size()).isZero();
    }

    @Test
    void refusesAContradiction() throws Exception {
        post(HANDS, "{\"kind\": \"keep\", \"piece\": \"N1\", \"order\": \"O-2\"}");
        MvcTestResult refused =
                post(HANDS, "{\"kind\": \"pin\", \"order\": \"O-1\", \"neckPiece\": \"N1\", \"headPiece\": \"H1\"}");
        assertThat(json(refused).get("errors").get(0).get("message").asString())
                .isEqualTo(
                        "Decision cannot be pinned for one order and kept for another (N1 is kept for O-2 by hand); undo that first.");
    }

    @Test
    void theButtonsOfAPlanDoTheSame() throws Exception {
        JsonNode plan = plan();
        String id = plan.get("id").asString();
        JsonNode first = plan.get("pairings").get(0);
        String neck = first.get("neck").get("piece").asString();
        String page = text(mvc.get().uri("/match/" + id).exchange());
        assertThat(page).contains("Pin " + neck).contains("Leave " + neck + " alone this week");
        assertThat(mvc.post()
                        .uri("/match/hands")
                        .with(csrf())
                        .param("week", "2026-W49")
                        .param("plan", id)
                        .param("kind", "arrange")
                        .param("order", "O-1")
                        .param("arrangement", first.get("arrangement").asString())
                        .param("angle", first.get("angle").asString() + "°"))
                .hasStatus(HttpStatus.SEE_OTHER)
                .hasRedirectedUrl("/match/" + id + "#hands");
        JsonNode hand = json(mvc.get().uri(HANDS).exchange()).get(0);
        assertThat(hand.get("kind").asString()).isEqualTo("arrange");
        assertThat(text(mvc.get().uri("/match?week=2026-W49").exchange()))
                .contains(hand.get("text").asString());
        assertThat(mvc.post()
                        .uri("/match/hands/" + hand.get("id").asLong() + "/undo")
                        .with(csrf())
                        .param("week", "2026-W49"))
                .hasStatus(HttpStatus.SEE_OTHER)
                .hasRedirectedUrl("/match?week=2026-W49");
        assertThat(json(mvc.get().uri(HANDS).exchange()).size()).isZero();
        assertThat(mvc.post()
                        .uri("/match/hands")
                        .with(csrf())
                        .param("week", "2026-W49")
                        .param("plan", id)
                        .param("kind", "keep")
                        .param("piece", "NOPE")
                        .param("order", "O-1"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("“NOPE” is no piece of the rack");
    }

    @Test
    void answersWhyAPieceIsNotTaken() throws Exception {
        String id = plan().get("id").asString();
        JsonNode why = json(mvc.get()
                .uri("/api/plans/" + id + "/why-not?order=O-1&piece=h1")
                .exchange());
        assertThat(why.get("piece").asString()).isEqualTo("H1");
        JsonNode first = why.get("answers").get(0);
        assertThat(first.get("part").asString()).isEqualTo("neck");
        assertThat(first.get("fits").asBoolean()).isFalse();
        assertThat(first.get("rule").asString()).isEqualTo("length");
        assertThat(first.get("shortByMm").decimalValue()).isPositive();
        assertThat(text(mvc.get().uri("/match/" + id + "?order=O-1&piece=H1").exchange()))
                .contains(first.get("text").asString());
        MvcTestResult wrong =
                mvc.get().uri("/match/" + id + "?order=O-1&piece=<b>").exchange();
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(wrong)).contains("“&lt;b&gt;” is no piece of the rack; name one that is");
        assertThat(mvc.get().uri("/api/plans/" + id + "/why-not?order=O-9&piece=H1"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/plans/" + id + "/why-not?order=O-1"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/plans/987654/why-not?order=O-1&piece=H1"))
                .hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void answersWhatOneMoreBlankWouldGive() throws Exception {
        assertThat(post("/api/orders", """
                {"code": "O-3", "design": "D-1", "quantity": 9, "due": "2026-12-04", "week": "2026-W49"}""")).hasStatus(HttpStatus.CREATED);
        String id = plan().get("id").asString();
        JsonNode answers = json(mvc.get()
                .uri("/api/plans/" + id + "/one-more?blankLength=900&blankWidth=90&blankThickness=1 in")
                .exchange());
        assertThat(answers.get(0).get("order").asString()).isEqualTo("O-3");
        assertThat(answers.get(0).get("fills").asBoolean()).isTrue();
        assertThat(text(mvc.get()
                        .uri("/match/" + id + "?blankLength=900&blankWidth=90&blankThickness=25")
                        .exchange()))
                .contains(answers.get(0).get("text").asString());
        MvcTestResult wrong = mvc.get()
                .uri("/match/" + id + "?blankLength=long&blankWidth=&blankThickness=3 km")
                .exchange();
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(wrong))
                .contains("value=\"long\"")
                .contains("value=\"3 km\"")
                .contains("is missing");
        assertThat(mvc.get().uri("/api/plans/" + id + "/one-more")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/plans/987654/one-more?blankLength=9&blankWidth=9&blankThickness=9"))
                .hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void showsALongPlanPageByPageAndFindsInIt() throws Exception {
        StringBuilder rack = new StringBuilder("code,wood,length,width,thickness,unit\n");
        for (int i = 10; i < 35; i++) {
            rack.append("L").append(i).append(",maple_sugar,760,90,25,mm\n");
        }
        rackImport.save(rack.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(post("/api/orders", """
                {"code": "O-3", "design": "D-1", "quantity": 22, "due": "2026-12-04", "week": "2026-W49"}""")).hasStatus(HttpStatus.CREATED);
        JsonNode plan = plan();
        assertThat(plan.get("filled").asInt()).isEqualTo(24);
        String page = "/match/" + plan.get("id").asString();
        assertThat(text(mvc.get().uri(page).exchange()))
                .contains("1 to 20 of 24 necks")
                .contains("Next necks");
        assertThat(text(mvc.get().uri(page + "?page=2").exchange()))
                .contains("21 to 24 of 24 necks")
                .contains("Earlier necks");
        assertThat(text(mvc.get().uri(page + "?page=99").exchange())).contains("21 to 24 of 24 necks");
        assertThat(text(mvc.get().uri(page + "?page=-1&q=o-2").exchange())).contains("1 to 1 of 1 neck");
        assertThat(text(mvc.get().uri(page + "?q=nothing").exchange())).contains("0 to 0 of 0 necks");
        assertThat(text(mvc.get().uri(page + "/print").exchange())).doesNotContain("Next necks");
    }
}
