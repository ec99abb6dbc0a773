package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.database.OnH2;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What programs are told about plans. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class PlansApiTest {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    private MvcTestResult post(String path, String json) {
        return mvc.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    private static JsonNode json(MvcTestResult result) throws Exception {
        return MAPPER.readTree(result.getResponse().getContentAsString(StandardCharsets.UTF_8));
    }

    private void stock() {
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                H1,maple_sugar,420,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        assertThat(post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""")).hasStatus(HttpStatus.CREATED);
        assertThat(post("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 2, "due": "2026-12-04", "week": "2026-W49"}""")).hasStatus(HttpStatus.CREATED);
    }

    @Test
    void givesAPlanWithEveryKey() throws Exception {
        stock();
        MvcTestResult made = post("/api/plans", "{\"week\": \"2026-W49\"}");
        assertThat(made).hasStatus(HttpStatus.CREATED);
        JsonNode plan = json(made);
        String path = "/api/plans/" + plan.get("id").asLong();
        assertThat(made).hasHeader("Location", path);
        assertThat(plan.get("week").asString()).isEqualTo("2026-W49");
        assertThat(plan.get("state").asString()).isEqualTo("proposed");
        assertThat(plan.get("status").asString()).isEqualTo("PROVED");
        assertThat(plan.get("filled").asInt()).isEqualTo(1);
        assertThat(plan.get("ordered").asInt()).isEqualTo(2);
        assertThat(plan.get("levels")).hasSize(5);
        for (JsonNode level : plan.get("levels")) {
            assertThat(level.propertyNames()).containsExactlyInAnyOrder("name", "value", "bound", "unit");
        }
        JsonNode pairing = plan.get("pairings").get(0);
        assertThat(pairing.propertyNames()).contains("order", "arrangement", "angle", "neck", "head", "reasons");
        assertThat(pairing.get("arrangement").asString()).isIn("underlaid", "overlaid");
        assertThat(pairing.get("angle").decimalValue()).isEqualByComparingTo("10");
        for (String part : List.of("neck", "head")) {
            assertThat(pairing.get(part).propertyNames())
                    .contains("piece", "lane", "fromMm", "toMm", "shortMm", "longMm", "widthMm", "thicknessMm");
        }
        assertThat(pairing.get("reasons").size()).isPositive();
        JsonNode unfilled = plan.get("unfilled").get(0);
        assertThat(unfilled.get("order").asString()).isEqualTo("O-1");
        assertThat(unfilled.get("misses").get(0).propertyNames())
                .containsExactlyInAnyOrder("piece", "rule", "shortByMm", "text");
        for (String share : List.of("netYield", "recovery", "rescue")) {
            assertThat(plan.get(share).asDouble()).isBetween(0.0, 1.0);
        }
        assertThat(json(mvc.get().uri(path).exchange())).isEqualTo(plan);
    }

    @Test
    void booksCloseToTheLastDigitOverTheApi() throws Exception {
        stock();
        JsonNode books = json(post("/api/plans", "{\"week\": \"2026-W49\"}")).get("books");
        BigDecimal sum = List.of(
                        "partsMm3",
                        "kerfMm3",
                        "bevelMm3",
                        "edgeMm3",
                        "trimMm3",
                        "planingMm3",
                        "usableRestMm3",
                        "unusableRestMm3")
                .stream()
                .map(key -> books.get(key).decimalValue())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(sum).isEqualByComparingTo(books.get("inputMm3").decimalValue());
        // Two boards as measured: 620 × 90 × 25 and 420 × 90 × 22.
        assertThat(sum).isIn(new BigDecimal("2226600.000000000"), new BigDecimal("1395000.000000000"));
    }

    @Test
    void acceptsAndUndoes() throws Exception {
        stock();
        String path = "/api/plans/"
                + json(post("/api/plans", "{\"week\": \"2026-W49\"}")).get("id").asLong();
        assertThat(json(post(path + "/accept", "")).get("state").asString()).isEqualTo("accepted");
        assertThat(json(post(path + "/accept", "")).get("state").asString()).isEqualTo("accepted");
        assertThat(json(post(path + "/undo", "")).get("state").asString()).isEqualTo("undone");
        assertThat(json(mvc.get().uri("/api/plans?week=2026-W49").exchange()).size())
                .isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{}",
                "{\"week\": null}",
                "{\"week\": \"\"}",
                "{\"week\": \"next week\"}",
                "{\"week\": \"2026-W60\"}",
                "{\"week\": \"2026-49\"}",
                "{\"week\": \"2026-W49\"}"
            })
    void refusesAWeekThatIsNoneOrHasNoOrders(String body) {
        assertThat(post("/api/plans", body))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .extractingPath("$.errors[0].pointer")
                .isEqualTo("/week");
    }

    @Test
    void refusesWhatIsNoJsonAndAnIdThatIsNoNumber() {
        assertThat(post("/api/plans", "week 49")).hasStatus(HttpStatus.BAD_REQUEST);
        assertThat(post("/api/plans", "")).hasStatus(HttpStatus.BAD_REQUEST);
        assertThat(mvc.get().uri("/api/plans/first")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/plans")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void tellsThatThereIsNoSuchPlan() {
        assertThat(mvc.get().uri("/api/plans/987654")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post("/api/plans/987654/accept", "")).hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void aPlanThatWasNotAcceptedCannotBeUndone() throws Exception {
        stock();
        long id = json(post("/api/plans", "{\"week\": \"2026-W49\"}")).get("id").asLong();
        assertThat(post("/api/plans/" + id + "/undo", ""))
                .hasStatus(HttpStatus.CONFLICT)
                .bodyJson()
                .extractingPath("$.detail")
                .isEqualTo("Plan " + id + " was not accepted; there is nothing to undo.");
    }
}
