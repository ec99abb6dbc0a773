package org.scarfwright.week.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.ShopStart;
import org.scarfwright.week.Bench;
import org.scarfwright.week.WorkStep;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class WeekPagesTest {
    private static final Pattern STEP = Pattern.compile("/week/steps/(\\d+)");

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ShopStart start;

    @Autowired
    Plans plans;

    private MvcTestResult get(String uri) {
        return mvc.get().uri(uri).exchange();
    }

    private MvcTestResult post(String uri, String name, String value) {
        return mvc.post().uri(uri).param(name, value).with(csrf()).exchange();
    }

    private String laidDemo() {
        start.loadDemo();
        plans.accept(plans.make(new IsoWeek(2026, 49)).id());
        assertThat(post("/week", "week", "2026-W49")).hasRedirectedUrl("/week?week=2026-W49");
        return body(get("/week?week=2026-W49"));
    }

    private static String body(MvcTestResult result) {
        try {
            return result.getResponse().getContentAsString();
        } catch (java.io.UnsupportedEncodingException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void theDemoWeekIsLaidAndShownDayByDay() {
        String page = laidDemo();
        assertThat(page)
                .contains(
                        "Mon 30 Nov",
                        "Sun 6 Dec",
                        "flatten and thickness",
                        "set up ",
                        "In clamps",
                        "url(#hatch-day-2026-12-0")
                .contains("Lay the work again from now");
        String step = step(page);
        assertThat(get("/week/steps/" + step)).hasStatusOk().bodyText().contains("Move it to a day");
        assertThat(post("/week/steps/" + step + "/day", "day", "2026-12-04")).hasRedirectedUrl("/week?week=2026-W49");
        assertThat(body(get("/week/steps/" + step))).contains("It is pinned to", "Fri 4 Dec 2026");
        assertThat(post("/week/steps/" + step + "/free", "x", "")).hasStatus(HttpStatus.FOUND);
        assertThat(get("/week/calendar?week=2026-W49"))
                .hasStatusOk()
                .hasContentType(MediaType.parseMediaType("text/calendar;charset=UTF-8"))
                .bodyText()
                .startsWith("BEGIN:VCALENDAR\r\n");
        assertThat(get("/api/weeks/2026-W49/schedule"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.laying.levels.length()")
                .isEqualTo(3);
    }

    private static String step(String page) {
        Matcher m = STEP.matcher(page);
        assertThat(m.find()).isTrue();
        return m.group(1);
    }

    @Test
    void aWrongWeekComesBackWithASentence() {
        for (MvcTestResult refused :
                new MvcTestResult[] {get("/week?week=next"), post("/week", "week", "next"), get("/week?week=2026-W60")
                }) {
            assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        assertThat(body(get("/week?week=next"))).contains("“next” is not a week; write for example 2026-W49");
        assertThat(get("/api/weeks/next/schedule")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(get("/week/calendar?week=next")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void aWeekWithoutAPlanSaysWhatToDoFirst() {
        assertThat(post("/week", "week", "2026-W49"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("has no accepted plan");
        assertThat(mvc.post().uri("/api/weeks/2026-W49/schedule").exchange())
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void aWrongDayIsRefusedBesideItsField() {
        String step = step(laidDemo());
        assertThat(post("/week/steps/" + step + "/day", "day", "Friday"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("“Friday” is not a day; write for example 2026-12-04");
        assertThat(post("/week/steps/" + step + "/day", "day", "2026-12-05"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("is no working day");
        assertThat(pin(step, "{\"day\": \"2026-12-05\"}")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(pin(step, "{\"day\": 5}")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(pin(step, "[]")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(pin("999999999", "{\"day\": \"2026-12-04\"}")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(pin(step, "{\"day\": \"2026-12-04\"}"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.pinnedDay")
                .isEqualTo("2026-12-04");
        assertThat(mvc.delete().uri("/api/steps/" + step + "/day").exchange()).hasStatusOk();
        assertThat(get("/week/steps/999999999")).hasStatus(HttpStatus.NOT_FOUND);
    }

    private MvcTestResult pin(String step, String json) {
        return mvc.put()
                .uri("/api/steps/" + step + "/day")
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    @Test
    void theGlueOfADesignIsChosenFromTheShops() {
        start.loadDemo();
        assertThat(mvc.post()
                        .uri("/week/glues")
                        .param("design", "WITHY-6")
                        .param("glue", "hide")
                        .with(csrf())
                        .exchange())
                .hasRedirectedUrl("/week/glues");
        assertThat(get("/api/designs/WITHY-6/glue"))
                .bodyJson()
                .extractingPath("$.glue")
                .isEqualTo("hide");
        assertThat(mvc.post()
                        .uri("/week/glues")
                        .param("design", "WITHY-6")
                        .param("glue", "spit")
                        .with(csrf())
                        .exchange())
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("“spit” is no glue of the shop");
        assertThat(mvc.put()
                        .uri("/api/designs/WITHY-6/glue")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"glue\": null}")
                        .exchange())
                .hasStatusOk();
        assertThat(get("/week/glues")).hasStatusOk();
    }

    /** The description says what the API takes: what it allows is taken, what it does not is refused. */
    @Test
    void theDescriptionOfTheApiNamesWhatAWeekAStepAndMinutesMayBe() throws Exception {
        var description = tools.jackson.databind.json.JsonMapper.builder()
                .build()
                .readTree(mvc.get().uri("/api/openapi").exchange().getResponse().getContentAsString());
        String week = description
                .at("/paths/~1api~1weeks~1{week}~1schedule/get/parameters/0/schema/pattern")
                .stringValue();
        assertThat("2026-W49").matches(week);
        assertThat("2026-W54").doesNotMatch(week);
        assertThat(mvc.get().uri("/api/weeks/2026-W54/schedule").exchange())
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(description
                        .at("/paths/~1api~1steps~1{id}~1done/post/parameters/0/schema/minimum")
                        .intValue())
                .isEqualTo(1);
        assertThat(description
                        .at("/components/schemas/ActJson/properties/minutes/maximum")
                        .intValue())
                .isEqualTo(Bench.LONGEST);
        assertThat(description.at("/components/schemas/PinJson/required/0").stringValue())
                .isEqualTo("day");
        assertThat(description
                        .at("/components/schemas/StepJson/properties/state/enum")
                        .size())
                .isEqualTo(WorkStep.State.values().length);
        assertThat(description
                        .at("/components/schemas/StepJson/properties/kind/enum")
                        .size())
                .isEqualTo(org.scarfwright.shop.StepKind.values().length);
    }
}
