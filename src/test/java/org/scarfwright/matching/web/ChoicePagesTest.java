package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Objects;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Near-equal plans, locked orders and two plans side by side, over the API and on their pages. Searches commit. */
@OnH2
@SuppressWarnings("NullAway.Init")
class ChoicePagesTest {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    MatchRuns runs;

    @Autowired
    Flyway flyway;

    private String id = "";

    @BeforeEach
    void stock() throws Exception {
        EmptyDatabase.of(flyway);
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,620,90,25,mm
                N2,maple_sugar,630,90,25,mm
                N3,maple_sugar,640,90,25,mm
                N4,maple_sugar,650,90,25,mm
                H1,maple_sugar,290,90,22,mm
                H2,maple_sugar,300,90,22,mm
                H3,maple_sugar,310,90,22,mm
                H4,maple_sugar,320,90,22,mm
                """.getBytes(StandardCharsets.UTF_8));
        assertThat(post("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""")).hasStatus(HttpStatus.CREATED);
        for (String code : new String[] {"O-1", "O-2"}) {
            assertThat(post("/api/orders", """
                    {"code": "%s", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""".formatted(code))).hasStatus(HttpStatus.CREATED);
        }
        id = json(post("/api/plans", "{\"week\": \"2026-W49\"}")).get("id").asString();
    }

    @AfterEach
    void leaveNothing() {
        EmptyDatabase.of(flyway);
    }

    private MvcTestResult post(String path, String json) {
        return mvc.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    private MvcTestResult sent(String path, String name, String... values) {
        return mvc.post().uri(path).with(csrf()).param(name, values).exchange();
    }

    private static JsonNode json(MvcTestResult result) throws Exception {
        return MAPPER.readTree(text(result));
    }

    private static String text(MvcTestResult result) throws Exception {
        return result.getResponse().getContentAsString(StandardCharsets.UTF_8);
    }

    private String page(String path) throws Exception {
        MvcTestResult result = mvc.get().uri(path).exchange();
        assertThat(result).hasStatusOk();
        return text(result);
    }

    @Test
    void reasonsAreFoldedOnThePlanAndOpenOnTheSheet() throws Exception {
        assertThat(page("/match/" + id))
                .contains("<details class=\"why\">")
                .contains("Why this wood<span class=\"unseen\"> for neck 1</span>")
                .contains("clear.</li>");
        assertThat(page("/match/" + id + "/print"))
                .contains("<details class=\"why\" open=\"open\">")
                .doesNotContain("<details class=\"why\">");
    }

    @Test
    void looksForNearEqualPlansAndShowsThemBesideTheirOrigin() throws Exception {
        assertThat(page("/match/" + id)).contains("/match/" + id + "/near-equal");
        assertThat(page("/match/" + id + "/near-equal")).contains("Extra cost allowed");
        MvcTestResult asked = post("/api/plans/" + id + "/near-equal", "{\"extra\": \"100 %\"}");
        assertThat(asked).hasStatus(HttpStatus.ACCEPTED);
        JsonNode run = json(asked);
        assertThat(asked)
                .hasHeader("Location", "/api/match-runs/" + run.get("id").asString());
        assertThat(run.get("kind").asString()).isEqualTo("near-equal");
        assertThat(run.get("origin").asString()).isEqualTo(id);
        runs.await(run.get("id").asLong(), PATIENCE);
        JsonNode near = json(mvc.get().uri("/api/plans/" + id + "/near-equal").exchange());
        assertThat(near.size()).isBetween(1, 3);
        JsonNode first = near.get(0);
        assertThat(first.get("differing").asInt()).isPositive();
        assertThat(first.get("orders").size()).isEqualTo(first.get("differing").asInt());
        assertThat(first.get("extraCost").decimalValue().signum()).isNotNegative();
        String plan = first.get("plan").asString();
        assertThat(page("/match/" + id + "/near-equal"))
                .contains("fill as much within that cost.")
                .contains("/match/compare?a=" + id + "&amp;b=" + plan)
                .contains(" instead of ");
        assertThat(page("/match/" + plan))
                .contains("this is near to")
                .contains("/match/compare?a=" + id + "&amp;b=" + plan);
        JsonNode kept = json(mvc.get().uri("/api/plans/" + plan).exchange());
        assertThat(kept.get("origin").get("kind").asString()).isEqualTo("near-equal");
        assertThat(kept.get("origin").get("plan").asString()).isEqualTo(id);
        assertThat(page("/match?week=2026-W49"))
                .as("the week still stands where it stood")
                .contains("/match/" + id + "\">Look at the plan on file");
        assertThat(mvc.get().uri("/match/runs/" + run.get("id").asString()))
                .hasStatus(HttpStatus.SEE_OTHER)
                .hasRedirectedUrl("/match/" + id + "/near-equal");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''      | Extra cost is missing; write for example 2.50 or 5 %.",
                "lots    | Extra cost is not right: “lots” is not a number",
                "-3      | is negative",
                "400 %   | “400 %” is more than 100 %; write for example 5 %",
                "<b>     | Extra cost is not right: “<b>” is not a number"
            })
    void refusesACostThatIsNone(String typed, String sentence) throws Exception {
        MvcTestResult refused = post("/api/plans/" + id + "/near-equal", "{\"extra\": \"" + typed + "\"}");
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(json(refused).get("errors").get(0).get("pointer").asString()).isEqualTo("/extra");
        MvcTestResult page = sent("/match/" + id + "/near-equal", "extra", typed);
        assertThat(page).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        String escaped = typed.replace("<", "&lt;").replace(">", "&gt;");
        assertThat(text(page))
                .contains(sentence.replace("<", "&lt;").replace(">", "&gt;"))
                .contains("value=\"" + escaped + "\"");
    }

    @Test
    void locksSomeOrdersAndLeadsToTheOthers() throws Exception {
        assertThat(page("/match/" + id + "/lock")).contains("id=\"orders-O-1\"").contains("id=\"orders-O-2\"");
        JsonNode done = json(post("/api/plans/" + id + "/lock", "{\"orders\": [\"O-1\"]}"));
        JsonNode locked = done.get("accepted");
        assertThat(locked.get("state").asString()).isEqualTo("accepted");
        assertThat(locked.get("origin").get("kind").asString()).isEqualTo("locked");
        assertThat(locked.get("filled").asInt()).isEqualTo(1);
        JsonNode remainder = done.get("remainder");
        assertThat(remainder.get("kind").asString()).isEqualTo("remainder");
        long plan = Objects.requireNonNull(
                runs.await(remainder.get("id").asLong(), PATIENCE).plan());
        assertThat(page("/match/" + plan)).contains("whose other orders were locked");
        assertThat(page("/match/" + locked.get("id").asString()))
                .contains("locked orders")
                .contains("They were not searched for by themselves")
                .contains("Undo: free the pieces again");
        assertThat(page("/match/" + id)).contains("holds the locked orders").contains("is the remainder");
        assertThat(post("/api/plans/" + id + "/lock", "{\"orders\": [\"O-1\"]}"))
                .as("twice")
                .hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void thePageLocksAndGivesBackWhatWasTicked() throws Exception {
        MvcTestResult none =
                mvc.post().uri("/match/" + id + "/lock").with(csrf()).exchange();
        assertThat(none).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(none)).contains("Orders are missing; name at least one that the plan makes a neck of.");
        MvcTestResult wrong = sent("/match/" + id + "/lock", "orders", "O-2", "<b>");
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(wrong))
                .contains("“&lt;b&gt;” has no neck in plan " + id)
                .contains("id=\"orders-O-2\" value=\"O-2\" checked=\"checked\"");
        MvcTestResult done = sent("/match/" + id + "/lock", "orders", "O-2");
        assertThat(done).hasStatus(HttpStatus.SEE_OTHER);
        assertThat(sent("/match/" + id + "/lock", "orders", "O-2")).hasStatus(HttpStatus.CONFLICT);
        runs.open(IsoWeek.parse("2026-W49")).forEach(r -> runs.await(r.id(), PATIENCE));
    }

    @Test
    void putsTwoPlansSideBySide() throws Exception {
        String other = json(post("/api/plans", "{\"week\": \"2026-W49\", \"orders\": [\"O-2\"]}"))
                .get("id")
                .asString();
        JsonNode c =
                json(mvc.get().uri("/api/plans/compare?a=" + id + "&b=" + other).exchange());
        assertThat(c.get("first").get("plan").asString()).isEqualTo(id);
        assertThat(c.get("second").get("levels").size()).isEqualTo(5);
        assertThat(c.get("orders").get(0).get("second").size()).isZero();
        assertThat(c.get("orders").get(0).get("differences").get(0).asString()).startsWith("One neck less: not ");
        assertThat(c.get("onlyFirst").size()).isPositive();
        assertThat(page("/match/compare?a=" + id + "&b=" + other))
                .contains("Levels, in the order they count")
                .contains("Net yield".toLowerCase(Locale.ROOT))
                .contains("Saw kerf")
                .contains("not matched here")
                .contains("Only plan " + id)
                .contains("data-label=\"Plan " + other + "\"");
        assertThat(page("/match/compare")).contains("First plan").doesNotContain("role=\"alert\"");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a=1x&b=    | First plan “1x” is no number of a plan; write for example 3.",
                "a=&b=5     | First plan is missing; write the number of a plan.",
                "a=98765&b=98766 | First plan 98765 does not exist; choose one that does.",
                "a=<b>&b=-1 | Second plan “-1” is no number of a plan"
            })
    void refusesWhatIsNoPlan(String query, String sentence) throws Exception {
        String encoded = query.replace("<", "%3C").replace(">", "%3E");
        MvcTestResult page =
                mvc.get().uri(URI.create("/match/compare?" + encoded)).exchange();
        assertThat(page).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(text(page)).contains(sentence);
        assertThat(mvc.get().uri(URI.create("/api/plans/compare?" + encoded)))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void whatDoesNotExistIsToldSo() {
        for (String path :
                new String[] {"/match/987654/near-equal", "/match/987654/lock", "/api/plans/987654/near-equal"}) {
            assertThat(mvc.get().uri(path)).hasStatus(HttpStatus.NOT_FOUND);
        }
        assertThat(post("/api/plans/987654/near-equal", "{\"extra\": \"5 %\"}")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post("/api/plans/987654/lock", "{\"orders\": [\"O-1\"]}")).hasStatus(HttpStatus.NOT_FOUND);
    }
}
