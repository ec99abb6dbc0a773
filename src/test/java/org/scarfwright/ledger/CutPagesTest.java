package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.shop.StepKind;
import org.scarfwright.web.ConflictException;
import org.scarfwright.week.Bench;
import org.scarfwright.week.WeekWork;
import org.scarfwright.week.WorkStep;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

/** From a cut that is done at the bench to a record of it, its rests on the rack, books that close, and back again. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class CutPagesTest {
    private static final IsoWeek WEEK = new IsoWeek(2026, 49);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    RackImport rackImport;

    @Autowired
    Rack rack;

    @Autowired
    Plans plans;

    @Autowired
    WeekWork work;

    @Autowired
    Bench bench;

    @Autowired
    Ledger ledger;

    @Autowired
    Verification verification;

    @Autowired
    CutRecording recording;

    private Plan plan;
    private String code;

    /** Both necks lie on one long blank, so that there is more than one section to cut from it. */
    @BeforeEach
    void accepted() {
        rackImport.save("""
                code,wood,length,width,thickness,unit,place,cost,lot
                N1,maple_sugar,1800,90,25,mm,bay 3,30.00,L-7
                """.getBytes(StandardCharsets.UTF_8));
        create("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        create("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 2, "due": "2026-12-04", "week": "2026-W49"}""");
        plan = plans.accept(plans.make(WEEK).id());
        code = plan.layouts().get(0).piece();
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

    private MvcTestResult json(String path, String json) {
        return mvc.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .content(json)
                .exchange();
    }

    private String seen() {
        return String.valueOf(rack.find(code).orElseThrow().version());
    }

    private String shown() {
        return String.join(
                " ",
                recording.propose(code, List.of()).chosen().stream()
                        .map(String::valueOf)
                        .toList());
    }

    private static Volume sum(List<Outcome> outcomes, Outcome.Kind kind) {
        return outcomes.stream()
                .filter(o -> o.kind() == kind)
                .map(Outcome::volume)
                .reduce(Volume.ZERO, Volume::plus);
    }

    private Entry newest() {
        return ledger.entry(ledger.newest(code, 1).acts().get(0).entry()).orElseThrow();
    }

    @Test
    void fromTheBenchToTheRackAndBack() {
        List<WorkStep> steps =
                work.lay(WEEK).days().stream().flatMap(d -> d.steps().stream()).toList();
        steps.stream()
                .filter(s -> s.kind() == StepKind.FLATTEN)
                .forEach(s -> bench.done(s.id(), OptionalInt.empty(), ""));
        WorkStep cut =
                steps.stream().filter(s -> s.kind() == StepKind.CUT).findFirst().orElseThrow();
        assertThat(mvc.get().uri("/bench/" + cut.id()))
                .bodyText()
                .contains("/rack/" + code + "/cut", "Record what " + code + " gave");
        assertThat(mvc.get().uri("/rack/" + code + "/cut"))
                .hasStatusOk()
                .bodyText()
                .contains("plan " + plan.id(), "O-1 no. 1, neck", "back to the rack");

        String[] form = {"seen", seen(), "shown", shown(), "section-1", "true", "section-2", "true", "who", "Ada"};
        MvcTestResult recorded = post("/rack/" + code + "/cut", form);
        assertThat(recorded).hasStatus(HttpStatus.FOUND);
        Entry entry = newest();
        assertThat(recorded).hasRedirectedUrl("/ledger/" + entry.id());
        assertThat(entry.who()).isEqualTo("Ada");

        // What was not touched stands as planned: the plan's own books, checked when it was made, say how much.
        Plan.Books books = plan.layouts().get(0).books();
        assertThat(sum(entry.outcomes(), Outcome.Kind.PART)).isEqualTo(books.parts());
        assertThat(sum(entry.outcomes(), Outcome.Kind.REST)).isEqualTo(books.usableRest());
        assertThat(sum(entry.outcomes(), Outcome.Kind.UNEXPLAINED)).isEqualTo(Volume.ZERO);
        assertThat(entry.outcomes().stream().map(Outcome::volume).reduce(Volume.ZERO, Volume::plus))
                .isEqualTo(books.input());
        assertThat(entry.outcomes().stream()
                        .filter(o -> o.cost() != null)
                        .mapToLong(o -> o.cost().cents())
                        .sum())
                .isEqualTo(3000);
        String rest = Objects.requireNonNull(entry.outcomes().stream()
                .filter(o -> o.kind() == Outcome.Kind.REST)
                .findFirst()
                .orElseThrow()
                .toPiece());
        Piece onRack = rack.find(rest).orElseThrow();
        assertThat(onRack.state()).isEqualTo(PieceState.ON_RACK);
        assertThat(onRack.place()).isEqualTo("bay 3");
        assertThat(onRack.lot()).isEqualTo("L-7");
        assertThat(rack.find(code).orElseThrow().state()).isEqualTo(PieceState.USED_UP);
        assertThat(ledger.balance().closes()).isTrue();
        assertThat(verification.run().faults()).isEmpty();
        assertThat(mvc.get().uri("/ledger/" + entry.id()))
                .bodyText()
                .contains("Print the labels of " + rest, "O-1 no. 1, neck", "Take it back");
        // The rest of the week goes on: the bench lets the step be done.
        assertThat(bench.card(cut.id()).waitsFor()).isEmpty();

        assertThatThrownBy(() -> plans.undo(plan.id()))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("Undo those cuts in the ledger first.");

        assertThat(post("/ledger/" + entry.id() + "/undo", "who", "Ada", "why", "Wrong piece."))
                .hasStatus(HttpStatus.FOUND);
        assertThat(rack.find(rest)).isEmpty();
        assertThat(rack.find(code).orElseThrow().state()).isEqualTo(PieceState.RESERVED);
        assertThat(ledger.balance().closes()).isTrue();
        assertThat(verification.run().faults()).isEmpty();
        assertThat(plans.undo(plan.id()).state()).isEqualTo(Plan.State.UNDONE);
        assertThat(mvc.get().uri("/ledger/check")).hasStatusOk().bodyText().contains("Everything is sound.");
    }

    @Test
    void aPieceIsCutOverTwoDaysAndTheBooksOfThePlanComeOut() {
        CutRecording.Recorded first = recording.record(code, Long.parseLong(seen()), List.of(1), Map.of());
        assertThat(rack.find(code).orElseThrow().state()).isEqualTo(PieceState.AT_BENCH);
        assertThat(mvc.get().uri("/match/" + plan.id()))
                .hasStatusOk()
                .bodyText()
                .contains("The piece changed since this plan was made, so it is not drawn.");
        assertThat(recording.propose(code, List.of()).sections())
                .extracting(CutRecording.Section::cut)
                .containsExactly(true, false);
        assertThat(verification.run().faults()).isEmpty();
        CutRecording.Recorded second = recording.record(code, Long.parseLong(seen()), List.of(2), Map.of());
        Plan.Books books = plan.layouts().get(0).books();
        assertThat(sum(first.entry().outcomes(), Outcome.Kind.PART)
                        .plus(sum(second.entry().outcomes(), Outcome.Kind.PART)))
                .isEqualTo(books.parts());
        assertThat(sum(first.entry().outcomes(), Outcome.Kind.WASTE)
                        .plus(sum(second.entry().outcomes(), Outcome.Kind.WASTE)))
                .isEqualTo(books.input().minus(books.parts()).minus(books.usableRest()));
        assertThat(second.entry().outcomes()).extracting(Outcome::kind).doesNotContain(Outcome.Kind.UNEXPLAINED);
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void whatIsTypedCountsAndWhatDoesNotAddUpIsShown() {
        CutRecording.Proposal proposal = recording.propose(code, List.of());
        Volume kerf = proposal.wastes().get(0).planned();
        CutRecording.Recorded recorded = recording.record(
                code, Long.parseLong(seen()), List.of(), Map.of("waste-kerf", "1.5", "rest-1-place", "Bay 9"));
        assertThat(sum(recorded.entry().outcomes(), Outcome.Kind.UNEXPLAINED))
                .isEqualTo(kerf.minus(
                        new Volume(new BigDecimal("1.5").movePointRight(12).toBigIntegerExact())));
        assertThat(rack.find(recorded.restCodes().get(0)).orElseThrow().place()).isEqualTo("Bay 9");
        assertThat(mvc.get().uri("/ledger/" + recorded.entry().id())).bodyText().contains("Unexplained difference");
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void badInputComesBackAsTypedWithASentenceAndNothingIsSaved() {
        long before = ledger.newest("", 1).total();
        assertThat(post(
                        "/rack/" + code + "/cut",
                        "seen",
                        seen(),
                        "shown",
                        shown(),
                        "section-1",
                        "true",
                        "section-2",
                        "true",
                        "rest-1-length",
                        "a lot",
                        "waste-kerf",
                        "minus one",
                        "rest-1-code",
                        "much too long a code"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains(
                        "a lot",
                        "minus one",
                        "has the unit “lot”",
                        "Saw kerf “minus one” is not a number",
                        "1 to 12 letters");
        assertThat(post(
                        "/rack/" + code + "/cut",
                        "seen",
                        "99",
                        "shown",
                        shown(),
                        "section-1",
                        "true",
                        "section-2",
                        "true"))
                .hasStatus(HttpStatus.CONFLICT)
                .bodyText()
                .contains("was changed since you opened it");
        // The figures shown were those of both sections: they are shown anew before anything is kept.
        assertThat(post("/rack/" + code + "/cut", "seen", seen(), "shown", shown(), "section-1", "true"))
                .hasStatusOk();
        assertThat(ledger.newest("", 1).total()).isEqualTo(before);
    }

    @Test
    void whatIsKeptOfASpoiltPartIsAskedForAndRefusedWithItsField() {
        recording.record(code, Long.parseLong(seen()), List.of(), Map.of());
        String page = "/ledger/necks/" + plan.id() + "/O-1/1";
        assertThat(post(page, "neck", "true", "neck-length", "abc", "neck-width", "40", "why", "Split <b>"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("Length kept of the neck", "write all three sizes", "abc", "Split &lt;b&gt;");
        assertThat(post(page, "head", "true", "neck-length", "1", "neck-width", "1", "neck-thickness", "1", "why", "x"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("the neck is not written off");
        String api = "/api/ledger/necks/" + plan.id() + "/O-1/1/write-off";
        assertThat(json(api, """
                {"parts": ["neck"], "why": "x", "kept": [{"part": "neck", "length": "900", "width": "40", "thickness": "18"}]}"""))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("is more than the neck had");
        assertThat(json(api, """
                {"parts": ["neck"], "why": "x", "kept": [{"part": "neck", "length": "9"}, {"part": "neck", "length": "8"}]}"""))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("names the neck twice");
        assertThat(json(api, """
                {"parts": ["neck"], "why": "It split.",
                 "kept": [{"part": "neck", "length": "4 3/4 in", "width": "40", "thickness": "18", "place": "bay 9"}]}""")).hasStatus(HttpStatus.CREATED);
        Entry entry = ledger.entry(verification.run().entries()).orElseThrow();
        String kept = entry.outcomes().stream()
                .filter(o -> o.kind() == Outcome.Kind.REST)
                .map(Outcome::toPiece)
                .findFirst()
                .orElseThrow();
        assertThat(mvc.get().uri("/ledger/" + entry.id()))
                .hasStatusOk()
                .bodyText()
                .contains(kept);
        assertThat(rack.find(kept).orElseThrow().length().length().mm()).isEqualTo(120.65);
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void apiProposesRecordsAndTakesBack() {
        MvcTestResult proposal =
                mvc.get().uri("/api/rack/pieces/" + code + "/cut").exchange();
        assertThat(proposal).hasStatusOk();
        String tag = Objects.requireNonNull(proposal.getResponse().getHeader("ETag"));
        var cut = mvc.post().uri("/api/rack/pieces/" + code + "/cuts").contentType(MediaType.APPLICATION_JSON);
        assertThat(cut.content("{}").exchange()).hasStatus(HttpStatus.PRECONDITION_REQUIRED);
        assertThat(mvc.post()
                        .uri("/api/rack/pieces/" + code + "/cuts")
                        .header("If-Match", tag)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"fields\": {\"waste-kerv\": \"1\"}}"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("/fields/waste-kerv");
        MvcTestResult made = mvc.post()
                .uri("/api/rack/pieces/" + code + "/cuts")
                .header("If-Match", tag)
                .header("Idempotency-Key", "cut-1")
                .contentType(MediaType.APPLICATION_JSON)
                .content("{\"who\": \"Kit\", \"fields\": {\"rest-1-length\": \"100\"}}")
                .exchange();
        assertThat(made).hasStatus(HttpStatus.CREATED);
        Matcher id = Pattern.compile("/api/ledger/entries/(\\d+)")
                .matcher(String.valueOf(made.getResponse().getHeader("Location")));
        assertThat(id.matches()).isTrue();
        assertThat(mvc.get().uri("/api/ledger/entries/" + id.group(1)))
                .hasStatusOk()
                .bodyText()
                .contains("\"kind\":\"cut\"", "\"kind\":\"unexplained\"");
        assertThat(mvc.post()
                        .uri("/api/ledger/entries/" + id.group(1) + "/undo")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"why\": \"Not this one.\"}"))
                .hasStatus(HttpStatus.CREATED);
        assertThat(mvc.post().uri("/api/ledger/verification"))
                .hasStatusOk()
                .bodyText()
                .contains("\"sound\":true");
    }
}
