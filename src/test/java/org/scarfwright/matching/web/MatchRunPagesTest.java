package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.nio.charset.StandardCharsets;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.database.OnH2;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What browsers and programs are told about a search. Searches commit, so each test begins with a new shop. */
@OnH2
@SuppressWarnings("NullAway.Init")
class MatchRunPagesTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Flyway flyway;

    @BeforeEach
    void stock() {
        EmptyDatabase.of(flyway);
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
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""")).hasStatus(HttpStatus.CREATED);
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

    private static JsonNode json(MvcTestResult result) throws Exception {
        return MAPPER.readTree(result.getResponse().getContentAsString(StandardCharsets.UTF_8));
    }

    private void row(int id, String state, String message) {
        boolean ended = !state.equals("WAITING") && !state.equals("RUNNING");
        transaction.executeWithoutResult(s -> jdbc.sql(
                        "insert into match_run (id, week, state, asked_at, ended_at, message) values (:id, '2026-W49', :state,"
                                + " timestamp '2026-11-25 10:00:00', "
                                + (ended ? "timestamp '2026-11-25 10:00:00'" : "null")
                                + ", :message)")
                .param("id", id)
                .param("state", state)
                .param("message", message.isEmpty() ? null : message)
                .update());
    }

    private JsonNode ended(String path) throws Exception {
        JsonNode run = json(mvc.get().uri(path).exchange());
        for (int i = 0; i < 2_000 && run.get("endedAt").isNull(); i++) {
            Thread.sleep(10);
            run = json(mvc.get().uri(path).exchange());
        }
        return run;
    }

    @Test
    void startsASearchAndLeadsToItsPlan() throws Exception {
        MvcTestResult asked = post("/api/match-runs", "{\"week\": \"2026-W49\"}");
        assertThat(asked).hasStatus(HttpStatus.ACCEPTED);
        String path = "/api/match-runs/" + json(asked).get("id").asLong();
        assertThat(asked).hasHeader("Location", path);
        JsonNode run = ended(path);
        assertThat(run.get("state").asString()).isEqualTo("done");
        long plan = run.get("plan").asLong();
        assertThat(mvc.get().uri("/api/plans/" + plan)).hasStatusOk();
        assertThat(json(post(path + "/stop", "")).get("state").asString()).isEqualTo("done");

        String page = path.replace("/api/match-runs", "/match/runs");
        assertThat(mvc.get().uri(page)).hasStatus(HttpStatus.SEE_OTHER).hasRedirectedUrl("/match/" + plan);
        assertThat(mvc.get().uri(page).header("HX-Request", "true"))
                .hasStatus(HttpStatus.NO_CONTENT)
                .hasHeader("HX-Redirect", "/match/" + plan);
    }

    @Test
    void aQuickSearchLeadsStraightToThePlan() {
        // The first search of a process also loads the solver; the page may then be the search's own.
        assertThat(mvc.post().uri("/match").param("week", "2026-W49").with(csrf()))
                .hasStatus(HttpStatus.SEE_OTHER)
                .redirectedUrl()
                .matches("/match/(runs/)?\\d+");
    }

    @Test
    void tellsHowASearchGoesAsEvents() throws Exception {
        JsonNode asked = json(post("/api/match-runs", "{\"week\": \"2026-W49\"}"));
        String path = "/api/match-runs/" + asked.get("id").asLong();
        ended(path);
        MvcTestResult events = mvc.get().uri(path + "/events").exchange();
        for (int i = 0; i < 1_000 && !text(events).contains("ended"); i++) {
            Thread.sleep(10);
        }
        assertThat(events.getResponse().getContentType()).startsWith("text/event-stream");
        assertThat(text(events)).contains("event:ended").contains("\"state\":\"done\"");
    }

    private static String text(MvcTestResult result) throws Exception {
        return result.getResponse().getContentAsString(StandardCharsets.UTF_8);
    }

    @Test
    void aPageWithoutScriptLooksAgainByItself() throws Exception {
        row(901, "WAITING", "");
        row(902, "RUNNING", "");
        for (int id : new int[] {901, 902}) {
            String page = text(mvc.get().uri("/match/runs/" + id).exchange());
            assertThat(page)
                    .contains("<noscript><meta http-equiv=\"refresh\" content=\"2\"></noscript>")
                    .contains("data-events=\"/api/match-runs/" + id + "/events\"")
                    .contains("Stop the search")
                    .contains("You may close this page");
        }
    }

    @Test
    void aSearchThatWasLostSaysSoAndOffersAnother() throws Exception {
        row(901, "LOST", "The program ended before this search did.");
        MvcTestResult page = mvc.get().uri("/match/runs/901").exchange();
        assertThat(page).hasStatusOk();
        assertThat(text(page))
                .contains("The program ended before this search did.")
                .contains("Match again")
                .doesNotContain("http-equiv=\"refresh\"");
    }

    @Test
    void refusesWhatIsNoWeekAndTellsThatThereIsNoSuchSearch() {
        assertThat(post("/api/match-runs", "{\"week\": \"soon\"}"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyJson()
                .extractingPath("$.errors[0].pointer")
                .isEqualTo("/week");
        assertThat(post("/api/match-runs", "")).hasStatus(HttpStatus.BAD_REQUEST);
        assertThat(mvc.get().uri("/api/match-runs/987654")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/match-runs/987654/events")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post("/api/match-runs/987654/stop", "")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/match/runs/987654")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/match-runs/first")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }
}
