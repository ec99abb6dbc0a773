package org.scarfwright.shop.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scarfwright.database.OnH2;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.shop.WorkshopBook.VersionedWorkshop;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class WorkshopPagesTest {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    WorkshopBook book;

    private MvcTestResult send(String uri, Map<String, String> fields) {
        var request = mvc.post().uri(uri).with(csrf());
        fields.forEach(request::param);
        return request.exchange();
    }

    private Map<String, String> now(String name, String value) {
        VersionedWorkshop now = book.workshop();
        WorkshopForm form = WorkshopForm.of(now.version(), now.workshop());
        Map<String, String> fields = new java.util.HashMap<>(form.texts());
        fields.put("version", form.version());
        fields.put(name, value);
        return fields;
    }

    @Test
    void hoursAreReadAsPeopleWriteThem() {
        assertThat(send("/shop/workshop", now("saturday", "9 – 12.30; 13-24:00")))
                .hasRedirectedUrl("/shop/workshop");
        Workshop kept = book.workshop().workshop();
        assertThat(kept.hours().get(DayOfWeek.SATURDAY))
                .isEqualTo(List.of(
                        new Stretch(LocalTime.of(9, 0), LocalTime.of(12, 30)),
                        new Stretch(LocalTime.of(13, 0), LocalTime.MIDNIGHT)));
        assertThat(send("/shop/workshop", now("saturday", ""))).hasRedirectedUrl("/shop/workshop");
        assertThat(book.workshop().workshop().hours()).doesNotContainKey(DayOfWeek.SATURDAY);
        assertThat(mvc.get().uri("/shop/workshop").exchange())
                .hasStatusOk()
                .bodyText()
                .contains("08:00-12:00, 13:00-17:00");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            monday      | 12-8           | ends after it begins
            monday      | 8-25           | ends after it begins
            monday      | 8-12, 11-13    | hours that overlap
            monday      | all day        | ends after it begins
            hands       | 0              | write 1 to 20
            clampSets   | -1             | not a whole number
            celsius     | warm           | not a number to one decimal place
            celsius     | 60             | write -10 to 50
            glue        | spit           | no glue of the shop
            cutMinutes  | 0              | write 1 to 480
            cutMinutesFrom | guessed     | is neither “learned” nor “own”
            """)
    void whatIsWrongComesBackWithASentenceAndNothingIsSaved(String name, String typed, String sentence) {
        Workshop before = book.workshop().workshop();
        assertThat(send("/shop/workshop", now(name, typed)))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(sentence);
        assertThat(book.workshop().workshop()).isEqualTo(before);
    }

    @Test
    void aChangeSomebodyElseMadeMeanwhileIsNotReplaced() {
        Map<String, String> old = now("hands", "3");
        send("/shop/workshop", now("hands", "2"));
        assertThat(send("/shop/workshop", old)).hasStatus(HttpStatus.CONFLICT);
        assertThat(book.workshop().workshop().hands()).isEqualTo(2);
    }

    @Test
    void minutesSayWhereTheyComeFromAndAStepCanBeLeftAtTheShopsOwn() {
        assertThat(mvc.get().uri("/shop/workshop").exchange())
                .bodyText()
                .contains("Nobody recorded minutes yet.", "Now laid with 10 min, the shop’s own.");
        assertThat(send("/shop/workshop", now("cutMinutesFrom", "own"))).hasRedirectedUrl("/shop/workshop");
        assertThat(book.workshop().workshop().keepsMinutes()).containsExactly(StepKind.CUT);
        assertThat(mvc.get().uri("/api/shop/workshop").exchange())
                .bodyJson()
                .extractingPath("$.cutMinutesFrom")
                .isEqualTo("own");
        assertThat(send("/shop/workshop", now("cutMinutesFrom", "learned"))).hasRedirectedUrl("/shop/workshop");
        assertThat(book.workshop().workshop().keepsMinutes()).isEmpty();
        assertThat(mvc.get().uri("/api/shop/step-minutes").exchange())
                .hasStatusOk()
                .bodyJson()
                .isLenientlyEqualTo("""
                        [{"key": "flattenMinutes", "own": 20, "learned": null, "records": 0, "laidWith": 20, "from": "own"},
                         {"key": "cutMinutes"}, {"key": "trueMinutes"}, {"key": "fitMinutes"}, {"key": "glueMinutes"},
                         {"key": "unclampMinutes"}, {"key": "squareUpMinutes", "step": "square up"}]""");
    }

    @Test
    void daysOffAndGluesAreAddedAndRemoved() {
        assertThat(send("/shop/days-off", Map.of("day", "2026-12-24", "word", "Holiday")))
                .hasRedirectedUrl("/shop/workshop");
        assertThat(send("/shop/days-off", Map.of("day", "2026-12-24", "word", "again")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("is off already", "again");
        assertThat(send("/shop/days-off", Map.of("day", "24.12.", "word", "")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("“24.12.” is not a day");
        assertThat(send("/shop/days-off/remove", Map.of("day", "2026-12-24"))).hasRedirectedUrl("/shop/workshop");
        Map<String, String> glue = Map.of(
                "code",
                "mine",
                "name",
                "Mine",
                "clampHours",
                "1.5",
                "cureHours",
                "12",
                "lowestCelsius",
                "10",
                "openMinutes",
                "5");
        assertThat(send("/shop/glues", glue)).hasRedirectedUrl("/shop/workshop");
        assertThat(send("/shop/glues", glue)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Map<String, String> tooShort = new java.util.HashMap<>(glue);
        tooShort.put("cureHours", "1");
        tooShort.put("version", "0");
        assertThat(send("/shop/glues/mine", tooShort))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("is less than the time in clamps");
        assertThat(send("/shop/glues/mine/remove", Map.of("version", "0"))).hasRedirectedUrl("/shop/workshop");
        assertThat(book.glue("mine")).isEmpty();
        assertThat(send("/shop/glues/aliphatic/remove", Map.of("version", "0")))
                .hasStatus(HttpStatus.CONFLICT)
                .bodyText()
                .contains("the shop’s own glue");
    }

    @Test
    void theApiCanWhatThePagesCan() {
        assertThat(mvc.get().uri("/api/shop/workshop").exchange())
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.monday")
                .isEqualTo("08:00-12:00, 13:00-17:00");
        assertThat(mvc.put()
                        .uri("/api/shop/workshop")
                        .header("If-Match", "\"0\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"hands\": 2}")
                        .exchange())
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.put()
                        .uri("/api/shop/workshop")
                        .header("If-Match", "\"0\"")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("""
                                {"monday": "7-15", "hands": 2, "clampSets": 4, "celsius": 18.5, "setUpMinutes": 15,
                                 "flattenMinutes": 10, "cutMinutes": 5, "trueMinutes": 5, "fitMinutes": 10, "glueMinutes": 10,
                                 "unclampMinutes": 5, "squareUpMinutes": 10, "glue": "hide"}""")
                        .exchange())
                .hasStatusOk();
        assertThat(book.workshop().workshop().hours()).containsOnlyKeys(DayOfWeek.MONDAY);
        assertThat(mvc.post()
                        .uri("/api/shop/days-off")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"day\": \"2026-12-24\", \"word\": \"Holiday\"}")
                        .exchange())
                .hasStatus(HttpStatus.CREATED);
        assertThat(mvc.delete().uri("/api/shop/days-off/2026-12-24").exchange()).hasStatus(HttpStatus.NO_CONTENT);
        assertThat(mvc.delete().uri("/api/shop/days-off/2026-12-24").exchange()).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/shop/glues/spit").exchange()).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/api/shop/glues/hide").exchange())
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.commonPractice")
                .isEqualTo(true);
    }
}
