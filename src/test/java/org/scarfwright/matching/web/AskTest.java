package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plan;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Matching some orders of a week, and another of equally good plans. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class AskTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @BeforeEach
    void stock() {
        // Four blanks that are alike and four heads that are alike: which of them is taken is a tie.
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                N2,maple_sugar,620,90,25,mm
                N3,maple_sugar,620,90,25,mm
                N4,maple_sugar,620,90,25,mm
                H1,maple_sugar,290,90,22,mm
                H2,maple_sugar,290,90,22,mm
                H3,maple_sugar,290,90,22,mm
                H4,maple_sugar,290,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        assertThat(post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""")).hasStatus(HttpStatus.CREATED);
        order("O-1", "2026-W49");
        order("O-2", "2026-W49");
        order("X-1", "2026-W50");
    }

    private void order(String code, String week) {
        assertThat(post("/api/orders", """
                {"code": "%s", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "%s"}""".formatted(code, week))).hasStatus(HttpStatus.CREATED);
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

    private static List<String> orders(JsonNode plan) {
        return plan.get("pairings")
                .valueStream()
                .map(p -> p.get("order").asString())
                .toList();
    }

    @Test
    void matchesOnlyTheOrdersThatAreNamed() throws Exception {
        JsonNode plan = json(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": [\"O-2\", \"O-2\", \" \"]}"));
        assertThat(plan.get("ordered").asInt()).isEqualTo(1);
        assertThat(orders(plan)).containsExactly("O-2");
        assertThat(plan.get("orders")).isEqualTo(MAPPER.readTree("[\"O-2\"]"));
        assertThat(json(mvc.get().uri("/api/plans/" + plan.get("id").asLong()).exchange()))
                .as("as it is kept")
                .isEqualTo(plan);
        assertThat(text(mvc.get().uri("/match/" + plan.get("id").asLong()).exchange()))
                .contains("Only order O-2 of the week was to be matched.");
    }

    @Test
    void namingNoOrderMatchesTheWeek() throws Exception {
        assertThat(orders(json(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": []}"))))
                .containsExactly("O-1", "O-2");
    }

    @Test
    void theSameSeedTakesTheSamePlanAndAnotherSeedMayTakeAnother() throws Exception {
        String first = json(post("/api/plans", "{\"week\": \"2026-W49\"}"))
                .get("pairings")
                .toString();
        String again = json(post("/api/plans", "{\"week\": \"2026-W49\", \"seed\": 0}"))
                .get("pairings")
                .toString();
        assertThat(again).isEqualTo(first);
        boolean another = false;
        for (int seed = 1; seed <= 5; seed++) {
            String body = "{\"week\": \"2026-W49\", \"seed\": " + seed + "}";
            JsonNode one = json(post("/api/plans", body));
            assertThat(one.get("seed").asInt()).isEqualTo(seed);
            assertThat(json(post("/api/plans", body)).get("pairings")).isEqualTo(one.get("pairings"));
            assertThat(one.get("levels").get(1).get("value"))
                    .as("as good")
                    .isEqualTo(
                            json(post("/api/plans", body)).get("levels").get(1).get("value"));
            another |= !one.get("pairings").toString().equals(first);
        }
        assertThat(another).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"orders\": [\"O-9\"] | /orders | “O-9” is no order of week 2026-W49; name one that is",
                "\"orders\": [\"O-1\", \"X-1\"] | /orders | “X-1” is no order of week 2026-W49; name one that is",
                "\"orders\": [\"<b>\"] | /orders | “<b>” is no order of week 2026-W49",
                "\"seed\": -1 | /seed | “-1” is no whole number from 0 to 999999; write for example 7",
                "\"seed\": 1000000 | /seed | “1000000” is no whole number from 0 to 999999",
                "\"seed\": \"lucky\" | /seed | “lucky” is no whole number from 0 to 999999",
            })
    void refusesWhatIsWrongAndSaysWhatWouldBeRight(String part, String pointer, String message) throws Exception {
        for (String path : new String[] {"/api/plans", "/api/match-runs"}) {
            MvcTestResult refused = post(path, "{\"week\": \"2026-W49\", " + part + "}");
            assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            JsonNode error = json(refused).get("errors").get(0);
            assertThat(error.get("pointer").asString()).isEqualTo(pointer);
            assertThat(error.get("message").asString()).contains(message);
        }
        assertThat(json(mvc.get().uri("/api/plans?week=2026-W49").exchange()).size())
                .isZero();
    }

    @Test
    void refusesAnOrderThatIsLeftOutOrAcceptedAlready() throws Exception {
        post("/api/weeks/2026-W49/hands", "{\"kind\": \"leave-out\", \"order\": \"O-2\"}");
        assertThat(text(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": [\"O-2\"]}")))
                .contains("“O-2” is left out by hand; take that back first");
        JsonNode plan = json(post("/api/plans", "{\"week\": \"2026-W49\"}"));
        assertThat(post("/api/plans/" + plan.get("id").asLong() + "/accept", ""))
                .hasStatusOk();
        assertThat(text(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": [\"O-1\"]}")))
                .contains("“O-1” has every neck in an accepted plan; leave it out, or undo that plan");
    }

    @Test
    void twentyWrongOrdersAreToldAndNotAThousand() throws Exception {
        StringBuilder many = new StringBuilder("\"A-0\"");
        for (int i = 1; i < 1000; i++) {
            many.append(", \"A-").append(i).append('"');
        }
        assertThat(json(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": [" + many + "]}"))
                        .get("errors")
                        .size())
                .isEqualTo(20);
    }

    @ParameterizedTest
    @ValueSource(strings = {"<script>", "9999999"})
    void thePageGivesBackWhatWasTickedAndTyped(String seed) throws Exception {
        MvcTestResult refused = mvc.post()
                .uri("/match")
                .with(csrf())
                .param("week", "2026-W49")
                .param("orders", "O-2")
                .param("seed", seed)
                .exchange();
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(refused))
                .contains("id=\"orders-O-2\" value=\"O-2\" checked=\"checked\"")
                .contains("id=\"orders-O-1\" value=\"O-1\">")
                .contains("value=\"" + seed.replace("<", "&lt;").replace(">", "&gt;") + "\"")
                .contains("is no whole number from 0 to 999999");
    }

    @Test
    void theDescriptionOfTheApiGivesTheRangeOfTheSeed() throws Exception {
        JsonNode seed = json(mvc.get().uri("/api/openapi").exchange())
                .get("components")
                .get("schemas")
                .get("AskForm")
                .get("properties")
                .get("seed");
        assertThat(seed.get("type").toString()).contains("integer");
        assertThat(seed.get("minimum").asInt()).isZero();
        assertThat(seed.get("maximum").asInt()).isEqualTo(Plan.Asked.MOST_SEED);
        assertThat(seed.get("default").asInt()).isZero();
    }
}
