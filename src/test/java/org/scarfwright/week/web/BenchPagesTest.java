package org.scarfwright.week.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.RackImport;
import org.scarfwright.shop.StepKind;
import org.scarfwright.week.Bench;
import org.scarfwright.week.WeekWork;
import org.scarfwright.week.WorkStep;
import org.scarfwright.wood.Caution;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

/** The bench's pages and API, and the sheets of a plan. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class BenchPagesTest {
    private static final IsoWeek WEEK = new IsoWeek(2026, 49);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    Plans plans;

    @Autowired
    WeekWork work;

    @Autowired
    Bench bench;

    private Plan plan;
    private List<WorkStep> steps;

    @BeforeEach
    void acceptedAndLaid() {
        rackImport.save("""
                code,wood,length,width,thickness,unit,place
                N1,maple_sugar,620,90,25,mm,bay 3
                H1,maple_sugar,420,90,22,mm,
                """.getBytes(StandardCharsets.UTF_8));
        create("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        create("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        plan = plans.accept(plans.make(WEEK).id());
        steps = work.lay(WEEK).days().stream().flatMap(d -> d.steps().stream()).toList();
    }

    private void create(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    private MvcTestResult post(String path, String... pairs) {
        var request = mvc.post().uri(path).with(SecurityMockMvcRequestPostProcessors.csrf());
        for (int i = 0; i < pairs.length; i += 2) {
            request = request.param(pairs[i], pairs[i + 1]);
        }
        return request.exchange();
    }

    private WorkStep first(StepKind kind) {
        return steps.stream().filter(s -> s.kind() == kind).findFirst().orElseThrow();
    }

    private void doBefore(StepKind kind) {
        steps.stream()
                .filter(s -> s.kind().compareTo(kind) < 0)
                .forEach(s -> bench.done(s.id(), OptionalInt.empty(), ""));
    }

    @Test
    void aDayWithoutWorkLeadsToTheNextThatHasSome() {
        assertThat(mvc.get().uri("/bench?day=2026-11-25"))
                .hasStatusOk()
                .bodyText()
                .contains("Nothing is planned for this day.", "/bench?day=2026-11-30", "Mon 30 Nov 2026");
        assertThat(mvc.get().uri("/bench?day=2026-11-30")).bodyText().doesNotContain("Go on with");
        assertThat(bench.next(LocalDate.of(2027, 6, 1))).isEmpty();
    }

    @Test
    void showsWhatToFetchAndTheSawSettingAndTheCautionOfACut() {
        WorkStep cut = first(StepKind.CUT);
        assertThat(mvc.get().uri("/bench/" + cut.id()))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "Caution.",
                        "piece on edge, at 10°",
                        "Jig wedge: base",
                        "It waits for",
                        cut.needs().piece().orElseThrow());
        WorkStep flatten = steps.stream()
                .filter(s -> s.kind() == StepKind.FLATTEN
                        && s.needs().piece().orElseThrow().equals("N1"))
                .findFirst()
                .orElseThrow();
        assertThat(mvc.get().uri("/bench/" + flatten.id())).bodyText().contains("bay 3", "<svg");
    }

    @Test
    void aStepDoneOnTheBenchIsDoneAndCanBeUndone() {
        WorkStep flatten = first(StepKind.FLATTEN);
        assertThat(post("/bench/" + flatten.id() + "/done", "who", "Ada", "minutes", "18"))
                .hasStatus(HttpStatus.SEE_OTHER)
                .hasRedirectedUrl("/bench");
        WorkStep.Progress done = bench.card(flatten.id()).step().progress();
        assertThat(done.who()).contains("Ada");
        assertThat(done.minutes()).hasValue(18);
        assertThat(post("/bench/" + flatten.id() + "/back")).hasStatus(HttpStatus.SEE_OTHER);
        assertThat(bench.card(flatten.id()).step().progress().state()).isEqualTo(WorkStep.State.OPEN);
    }

    @Test
    void nothingIsGluedBeforeItsFacesAreTrueAndTheSentenceSaysSo() {
        WorkStep glue = first(StepKind.GLUE);
        assertThat(post("/bench/" + glue.id() + "/done", "who", "", "minutes", ""))
                .hasStatus(HttpStatus.CONFLICT)
                .bodyText()
                .contains("It waits for");
        assertThat(bench.card(glue.id()).step().isDone()).isFalse();
    }

    @Test
    void aGluedJointShowsItsClockAndStaysInClamps() {
        doBefore(StepKind.GLUE);
        assertThat(post("/bench/" + first(StepKind.GLUE).id() + "/done", "who", "", "minutes", "9"))
                .hasStatus(HttpStatus.SEE_OTHER);
        assertThat(mvc.get().uri("/bench")).hasStatusOk().bodyText().contains("in clamps for", "O-1 no. 1");
        assertThat(post("/bench/" + first(StepKind.UNCLAMP).id() + "/done", "who", "", "minutes", ""))
                .hasStatus(HttpStatus.CONFLICT)
                .bodyText()
                .contains("stays in clamps until");
        assertThat(mvc.get().uri("/api/bench/curing"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$[0].opened")
                .isEqualTo(false);
    }

    @Test
    void somethingElseStopsTheNeckUntilAPersonLetsItGoOn() {
        WorkStep cut = first(StepKind.CUT);
        assertThat(post("/bench/" + cut.id() + "/else", "who", "Ada", "reason", "the piece split"))
                .hasStatus(HttpStatus.SEE_OTHER);
        assertThat(mvc.get().uri("/bench/" + cut.id())).bodyText().contains("the piece split", "Let it go on");
        assertThat(post("/bench/" + cut.id() + "/on")).hasStatus(HttpStatus.SEE_OTHER);
        assertThat(bench.card(cut.id()).step().progress().state()).isEqualTo(WorkStep.State.OPEN);
    }

    @Test
    void wrongMinutesComeBackAsTypedWithASentence() {
        WorkStep flatten = first(StepKind.FLATTEN);
        assertThat(post("/bench/" + flatten.id() + "/done", "who", "Ada", "minutes", "a quarter"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("value=\"a quarter\"", "must be whole minutes from 0 to 1440, for example 25");
        assertThat(post("/bench/" + flatten.id() + "/done", "who", "x".repeat(41), "minutes", ""))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("must have at most 40 characters");
        assertThat(post("/bench/" + flatten.id() + "/else", "who", "", "reason", " "))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(bench.card(flatten.id()).step().isDone()).isFalse();
    }

    @Test
    void aStepThatIsNotThereIsNotFoundAndAWrongDayIsNamed() {
        assertThat(mvc.get().uri("/bench/999999999")).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.get().uri("/bench?day=soon")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/bench?day=soon")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(mvc.get().uri("/api/steps/999999999")).hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void theApiDoesWhatThePageDoes() {
        WorkStep flatten = first(StepKind.FLATTEN);
        assertThat(mvc.post()
                        .uri("/api/steps/" + flatten.id() + "/done")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"who\":\"Ada\",\"minutes\":7}"))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.step.state")
                .isEqualTo("done");
        assertThat(mvc.post()
                        .uri("/api/steps/" + flatten.id() + "/done")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"minutes\":99999}"))
                .hasStatus4xxClientError();
        assertThat(mvc.post().uri("/api/steps/" + flatten.id() + "/take-back")).hasStatusOk();
    }

    @Test
    void sheetsOfAPlanPrintAsPdfAndAsAPage() throws Exception {
        byte[] pdf = mvc.get()
                .uri("/match/" + plan.id() + "/cut-sheets.pdf?paper=letter&measured=98.7")
                .exchange()
                .getResponse()
                .getContentAsByteArray();
        try (var document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document)).contains("N1", "H1", "Order of work", "D-1");
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
        }
        assertThat(mvc.get().uri("/match/" + plan.id() + "/sheets"))
                .hasStatusOk()
                .bodyText()
                .contains("100 mm", "Order of work");
        assertThat(mvc.get().uri("/match/" + plan.id() + "/sheets?what=jig"))
                .hasStatusOk()
                .bodyText()
                .contains("Jig wedge 10°");
        assertThat(mvc.get().uri("/api/plans/" + plan.id() + "/jig-templates"))
                .hasStatusOk()
                .hasContentType(MediaType.APPLICATION_PDF);
    }

    @Test
    void aWrongPaperOrBarIsNamedAndAPlanThatIsNotThereIsNotFound() {
        assertThat(mvc.get().uri("/match/" + plan.id() + "/sheets?paper=A5&measured=98"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("must be A4 or Letter");
        assertThat(mvc.get().uri("/api/plans/" + plan.id() + "/cut-sheets?measured=80"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .hasContentType(MediaType.APPLICATION_PROBLEM_JSON)
                .bodyText()
                .contains("must be a length from 95 to 105 mm");
        assertThat(mvc.get().uri("/match/999999/cut-sheets.pdf")).hasStatus(HttpStatus.NOT_FOUND);
    }

    /** 20 mm at 10°: the bevel's run is 20 · cot 10° = 113.43 mm, and 100 mm to bear on, in whole centimetres: 220 mm. */
    @Test
    void theJointPageOffersItsJigWedgeOnPaper() throws Exception {
        assertThat(mvc.get().uri("/joint"))
                .hasStatusOk()
                .bodyText()
                .containsPattern("/joint/jig-template\\.pdf\\?angle=[^\"]*thickness=[^\"]*paper=A4")
                .containsPattern("/joint/jig-template\\.pdf\\?angle=[^\"]*thickness=[^\"]*paper=Letter");
        for (String path : List.of(
                "/joint/jig-template.pdf?angle=10°&thickness=20 mm&paper=Letter",
                "/api/joint/jig-template?angle=10&thicknessMm=20&paper=Letter")) {
            MvcTestResult sheet = mvc.get().uri(path).exchange();
            assertThat(sheet).hasStatusOk().hasContentType(MediaType.APPLICATION_PDF);
            try (var pdf = Loader.loadPDF(sheet.getResponse().getContentAsByteArray())) {
                assertThat(new PDFTextStripper().getText(pdf)).contains("10°", "220");
            }
        }
    }

    @Test
    void aJigWedgeNobodyCutsIsRefusedWithASentenceForEveryField() {
        assertThat(mvc.get().uri("/api/joint/jig-template?angle=0.1&thicknessMm=500&paper=A3&measured=80"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "is not between 3° and 30°",
                        "is not between 1 mm and 100 mm",
                        "must be A4 or Letter",
                        "from 95 to 105 mm");
        assertThat(mvc.get().uri("/api/joint/jig-template"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/angle", "/thicknessMm");
    }

    @Test
    void theCautionAtTheSawStandsWhereverACutIsShown() throws Exception {
        String caution = Caution.AT_THE_SAW.text();
        assertThat(caution)
                .contains("clamp the piece", "never force the feed", "hands clear", "manual", "licensed practice");
        for (String page : List.of(
                "/match/" + plan.id(),
                "/match/" + plan.id() + "/print",
                "/bench/" + first(StepKind.CUT).id())) {
            assertThat(mvc.get().uri(page)).bodyText().contains(caution);
        }
        try (var pdf = Loader.loadPDF(mvc.get()
                .uri("/match/" + plan.id() + "/cut-sheets.pdf")
                .exchange()
                .getResponse()
                .getContentAsByteArray())) {
            assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
                    .contains(caution);
        }
    }
}
