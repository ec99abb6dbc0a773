package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.RackImport;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

/** Giving a neck up on its page and over the API. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class GiveUpPagesTest {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    Plans plans;

    private long plan;

    @BeforeEach
    void anAcceptedPlan() {
        rackImport.save("""
                code,wood,length,width,thickness,unit
                N1,maple_sugar,1800,90,25,mm
                """.getBytes(StandardCharsets.UTF_8));
        api("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        api("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        plan = plans.accept(plans.make(new IsoWeek(2026, 49)).id()).id();
    }

    private MvcTestResult api(String path, String json) {
        return mvc.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    private String neck() {
        return "/match/" + plan + "/necks/O-1/1";
    }

    private MvcTestResult send(String path, String who, String why) {
        return mvc.post()
                .uri(path)
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("who", who)
                .param("why", why)
                .exchange();
    }

    @Test
    void theNecksOfAnAcceptedPlanLeadToTheirPage() {
        assertThat(mvc.get().uri("/match/" + plan))
                .hasStatusOk()
                .bodyText()
                .contains(neck(), "Give this neck up")
                .doesNotContain("Decide by hand");
        assertThat(mvc.get().uri(neck()))
                .hasStatusOk()
                .bodyText()
                .contains("Neck O-1 no. 1", "it is free on the rack again", "Give the neck up");
    }

    @Test
    void aNeckIsGivenUpForAReasonAndTakenUpAgain() {
        assertThat(send(neck(), "Ada", " "))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("write in a few words what happened", "value=\"Ada\"");
        assertThat(send(neck(), "Ada", "The head <split>."))
                .hasStatus(HttpStatus.SEE_OTHER)
                .hasRedirectedUrl(neck());
        assertThat(mvc.get().uri(neck()))
                .bodyText()
                .contains("The head &lt;split&gt;.", "Match O-1 again", "Undo: make it of this wood after all")
                .doesNotContain("Give the neck up");
        assertThat(mvc.get().uri("/match/" + plan)).bodyText().contains("Given up");
        assertThat(mvc.get().uri("/match?week=2026-W49")).bodyText().contains("not matched yet");
        assertThat(send(neck() + "/make-after-all", "", "")).hasStatus(HttpStatus.SEE_OTHER);
        assertThat(plans.givenUp(plan)).isEmpty();
    }

    @Test
    void theApiDoesTheSame() {
        String path = "/api/plans/" + plan + "/necks/O-1/1";
        assertThat(api(path + "/give-up", "{\"why\": \"\"}"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/why");
        assertThat(api(path + "/give-up", "{\"who\": \"Ada\", \"why\": \"split\"}"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.freed")
                .asArray()
                .containsExactly("N1");
        assertThat(mvc.get().uri("/api/plans/" + plan + "/given-up"))
                .bodyJson()
                .extractingPath("$[0].why")
                .isEqualTo("split");
        assertThat(mvc.get().uri(path))
                .bodyJson()
                .extractingPath("$.wood[0].fate")
                .isEqualTo("NOT_HELD");
        assertThat(api(path + "/make-after-all", "")).hasStatusOk();
        assertThat(mvc.get().uri(path))
                .bodyJson()
                .extractingPath("$.wood[0].fate")
                .isEqualTo("FREED");
    }

    @Test
    void whatIsNoNeckOfThePlanIsSaid() {
        assertThat(mvc.get().uri("/match/" + plan + "/necks/O-9/1"))
                .hasStatus(HttpStatus.NOT_FOUND)
                .bodyText()
                .contains("makes no neck");
        assertThat(send("/match/" + plan + "/necks/O-1/7", "", "split")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/match/987654/necks/O-1/1")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(api("/api/plans/987654/necks/O-1/1/give-up", "{\"why\": \"split\"}"))
                .hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/plans/987654/given-up")).hasStatus(HttpStatus.NOT_FOUND);
    }
}
