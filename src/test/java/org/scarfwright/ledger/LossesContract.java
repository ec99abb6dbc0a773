package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.ledger.FamilyTree.Branch;
import org.scarfwright.ledger.FamilyTree.Kind;
import org.scarfwright.ledger.Losses.LostPart;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.RackImport;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** Wood that went another way than planned, and where the wood of a neck came from. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class LossesContract {
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
    CutRecording recording;

    @Autowired
    Losses losses;

    @Autowired
    NeckOrigins origins;

    @Autowired
    FamilyTree family;

    @Autowired
    Ledger ledger;

    @Autowired
    Verification verification;

    private Plan plan;
    private Losses.Neck neck;

    @BeforeEach
    void cut() {
        rackImport.save("""
                code,wood,length,width,thickness,unit,place,cost,lot
                N1,maple_sugar,1800,90,25,mm,bay 3,30.01,L-7
                X1,wenge,300,60,20,mm,,,
                """);
        create("/api/designs", """
                {"code": "D-1", "name": "Plain six-string", "neckLengthMm": 457, "nutWidthMm": 44, "heelWidthMm": 60,
                 "neckThicknessMm": 20, "headLengthMm": 180, "headWidthMm": 78, "headThicknessMm": 15, "angles": [10],
                 "arrangements": ["underlaid", "overlaid"], "finish": "opaque", "wingsAllowed": true}""");
        create("/api/orders", """
                {"code": "O-1", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        plan = plans.accept(plans.make(WEEK).id());
        neck = new Losses.Neck(plan.id(), "O-1", 1);
        assertThat(origins.of(neck)).isEmpty();
        recording.record("N1", rack.find("N1").orElseThrow().version(), List.of(), Map.of());
    }

    private void create(String path, String json) {
        assertThat(mvc.post().uri(path).contentType(MediaType.APPLICATION_JSON).content(json))
                .hasStatus(HttpStatus.CREATED);
    }

    private static Money cost(Branch branch) {
        return branch.branches().stream()
                .map(b -> b.cost() == null ? Money.ZERO : b.cost())
                .reduce(Money.ZERO, Money::plus);
    }

    private Branch root() {
        return family.of("N1").orElseThrow().root();
    }

    @Test
    void aNeckKnowsItsWoodAndItsShareOfTheCostAddsUp() {
        NeckOrigins.Origin origin = origins.of(neck).orElseThrow();
        assertThat(origin.design()).isEqualTo("D-1");
        assertThat(origin.parts()).extracting(NeckOrigins.Part::head).containsExactlyInAnyOrder(true, false);
        assertThat(origin.parts())
                .allMatch(p -> "L-7".equals(p.lot()) && p.pieces().equals(List.of("N1")));
        assertThat(root().cost()).isEqualTo(new Money(3001));
        assertThat(cost(root())).isEqualTo(new Money(3001));
        assertThat(origin.cost())
                .isEqualTo(root().branches().stream()
                        .filter(b -> b.kind() != Kind.PIECE)
                        .map(b -> b.cost() == null ? Money.ZERO : b.cost())
                        .reduce(Money.ZERO, Money::plus));
        // 1800 mm × 90 mm × 25 mm
        assertThat(root().volume().toMm3()).isEqualByComparingTo("4050000");
    }

    @Test
    void aSpoiltNeckIsMadeAgainOfOtherWood() {
        losses.writeOff(neck, List.of(LostPart.whole(true), LostPart.whole(false)), "Ada", "The joint opened.");
        PlannedNeck given = new PlannedNeck(plan.id(), "O-1", 1);
        assertThat(plans.neck(given).wood()).extracting(Plans.Wood::fate).containsOnly(Plans.Fate.CUT);
        assertThat(plans.giveUp(given, "Ada", "The joint opened.").freed()).isEmpty();

        Plan again = plans.accept(plans.make(WEEK).id());

        assertThat(again.pairings())
                .singleElement()
                .satisfies(p -> assertThat(p.of(plan.id())).isEqualTo(given));
        for (String piece : again.pairings().get(0).pieces()) {
            recording.record(piece, rack.find(piece).orElseThrow().version(), List.of(), Map.of());
        }
        assertThat(origins.of(new Losses.Neck(again.id(), "O-1", 1))
                        .orElseThrow()
                        .parts())
                .hasSize(2)
                .noneMatch(NeckOrigins.Part::spoilt);
        assertThat(origins.of(neck).orElseThrow().parts()).allMatch(NeckOrigins.Part::spoilt);
        assertThat(ledger.balance().closes()).isTrue();
        assertThat(verification.run().isSound()).isTrue();
    }

    /** 120 × 40 × 18 mm are 86,400 mm³ of the neck's volume; its cost is shared by volume, so both shares are its cost again. */
    @Test
    void whatCanStillBeUsedOfASpoiltPartComesBackToTheRack() {
        NeckOrigins.Part before = origins.of(neck).orElseThrow().parts().stream()
                .filter(p -> !p.head())
                .findFirst()
                .orElseThrow();
        Cutting.Size size = new Cutting.Size(mm(120), mm(40), mm(18));
        Entry entry = losses.writeOff(
                neck,
                List.of(new LostPart(false, List.of(new Cutting.Rest(size, "K-1", null, "bay 9", "", null)))),
                "Ada",
                "The joint opened.");

        Piece kept = rack.find("K-1").orElseThrow();
        assertThat(kept.volume().toMm3()).isEqualByComparingTo("86400");
        assertThat(kept.place()).isEqualTo("bay 9");
        assertThat(kept.lot()).isEqualTo("L-7");
        assertThat(kept.wood()).isEqualTo(rack.find("N1").orElseThrow().wood());
        Outcome waste = entry.outcomes().stream()
                .filter(o -> o.cause() == Outcome.Cause.SPOILT)
                .findFirst()
                .orElseThrow();
        assertThat(waste.volume().plus(kept.volume())).isEqualTo(before.volume());
        assertThat(Objects.requireNonNull(waste.cost()).plus(Objects.requireNonNull(kept.cost())))
                .isEqualTo(before.cost());
        assertThat(cost(root())).as("shares of the blank's cost").isEqualTo(new Money(3001));
        assertThat(root().branches()).extracting(Branch::name).contains("K-1");
        assertThat(ledger.balance().closes()).isTrue();
        assertThat(verification.run().faults()).isEmpty();
        ledger.undo(entry.id(), "", "It holds after all.");
        assertThat(rack.find("K-1")).isEmpty();
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void noMoreIsKeptOfAPartThanItWas() {
        NeckOrigins.Part part = origins.of(neck).orElseThrow().parts().get(0);
        for (Cutting.Size size : List.of(
                new Cutting.Size(mm(900), mm(40), mm(18)),
                new Cutting.Size(mm(120), mm(95), mm(18)),
                new Cutting.Size(mm(120), mm(40), mm(26)))) {
            assertThatThrownBy(() -> losses.writeOff(
                            neck,
                            List.of(new LostPart(
                                    part.head(), List.of(new Cutting.Rest(size, null, null, null, "", null)))),
                            "",
                            "Split."))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("is more than the " + (part.head() ? "head" : "neck") + " had");
        }
        assertThat(origins.of(neck).orElseThrow().parts()).noneMatch(NeckOrigins.Part::spoilt);
    }

    private static TypedLength mm(int mm) {
        return TypedLength.of(Length.ofMm(mm));
    }

    @Test
    void freedWoodIsReleasedInTheBooks() {
        create("/api/orders", """
                {"code": "O-2", "design": "D-1", "quantity": 1, "due": "2026-12-04", "week": "2026-W49"}""");
        Plan second = plans.accept(plans.make(WEEK).id());
        List<String> freed = plans.giveUp(new PlannedNeck(second.id(), "O-2", 1), "Ada", "A knot came out.")
                .freed();
        assertThat(freed).isNotEmpty();
        Act act = ledger.newest(freed.get(0), 1).acts().get(0);
        assertThat(act.kind()).isEqualTo(PieceChanged.Kind.RELEASED);
        assertThat(act.detail()).isEqualTo("Released from plan " + second.id() + ": O-2 no. 1 is given up.");
        Entry entry = ledger.entry(act.entry()).orElseThrow();
        assertThat(entry.who()).isEqualTo("Ada");
        assertThat(entry.why()).isEqualTo("A knot came out.");
        assertThat(verification.run().isSound()).isTrue();
    }

    @Test
    void aRestThatIsCutAgainStandsBelowItsPiece() {
        String rest = root().branches().stream()
                .filter(b -> b.kind() == Kind.PIECE)
                .findFirst()
                .orElseThrow()
                .name();
        CutRecording.Recorded again = recording.record(
                rest,
                rack.find(rest).orElseThrow().version(),
                List.of(),
                Map.of("rest-1-length", "200", "rest-2-length", "150", "waste-kerf", "1"));
        assertThat(again.restCodes()).hasSize(2);
        Branch below = root().branches().stream()
                .filter(b -> b.name().equals(rest))
                .findFirst()
                .orElseThrow();
        assertThat(below.branches()).extracting(Branch::name).containsExactlyInAnyOrderElementsOf(again.restCodes());
        assertThat(cost(below)).isEqualTo(below.cost());
        assertThat(family.of(again.restCodes().get(0)).orElseThrow().root().name())
                .isEqualTo("N1");
        assertThat(mvc.get().uri("/ledger/tree/" + rest))
                .hasStatusOk()
                .bodyText()
                .contains("The family of", "O-1 no. 1, head", "<svg");
        assertThat(mvc.get().uri("/api/ledger/tree/" + rest))
                .hasStatusOk()
                .bodyText()
                .contains("\"kind\":\"neck\"");
        ledger.undo(again.entry().id(), "", "");
        assertThat(root().branches().stream()
                        .filter(b -> b.name().equals(rest))
                        .findFirst()
                        .orElseThrow()
                        .branches())
                .isEmpty();
    }

    @Test
    void aFailedJointIsAnEntryWithAReasonAndTheBooksClose() {
        Entry entry =
                losses.writeOff(neck, List.of(LostPart.whole(false), LostPart.whole(true)), "Kit", "The joint opened.");
        assertThat(entry.why()).isEqualTo("The joint opened.");
        assertThat(entry.outcomes().stream().map(Outcome::volume).reduce(Volume.ZERO, Volume::plus))
                .isEqualTo(Volume.ZERO);
        assertThat(root().branches().stream().filter(b -> b.kind() == Kind.SPOILT))
                .hasSize(2);
        assertThat(cost(root())).isEqualTo(new Money(3001));
        assertThat(verification.run().faults()).isEmpty();
        assertThatThrownBy(() -> losses.writeOff(neck, List.of(LostPart.whole(true)), "", "Again."))
                .isInstanceOf(ConflictException.class)
                .hasMessage("The head of O-1 no. 1 was written off or taken back already.");
        long cut = entry.id() - 1;
        assertThat(ledger.refusal(cut).orElseThrow()).contains("(part lost, by Kit) came after it on piece N1");
        ledger.undo(entry.id(), "", "");
        assertThat(root().branches().stream().filter(b -> b.kind() == Kind.SPOILT))
                .isEmpty();
        losses.writeOff(neck, List.of(LostPart.whole(true)), "", "After all.");
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void aPartCutWrongIsWasteFromTheStart() {
        Entry cut = ledger.entry(ledger.newest("N1", 1).acts().get(0).entry()).orElseThrow();
        ledger.undo(cut.id(), "", "");
        CutRecording.Recorded recorded = recording.record(
                "N1",
                rack.find("N1").orElseThrow().version(),
                List.of(),
                Map.of("part-1-1-spoilt", "true", "why", "Cut at 12° instead of 10°."));
        assertThat(recorded.entry().outcomes()).anyMatch(o -> o.cause() == Outcome.Cause.SPOILT && o.neck() != null);
        assertThat(recorded.entry().outcomes()).noneMatch(o -> o.kind() == Outcome.Kind.UNEXPLAINED);
        assertThat(origins.of(neck).orElseThrow().parts()).anyMatch(NeckOrigins.Part::spoilt);
        assertThat(verification.run().faults()).isEmpty();
    }

    @Test
    void refusesWithASentenceAndSavesNothing() {
        long before = ledger.newest("", 1).total();
        assertThatThrownBy(() -> losses.writeOff(neck, List.of(), "", ""))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("Parts are none; name the neck, the head or both. Why is empty; write in a few words what"
                        + " happened.");
        assertThatThrownBy(() -> losses.writeOff(
                        new Losses.Neck(plan.id(), "O-1", 2), List.of(LostPart.whole(true)), "", "Split."))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("The head of O-1 no. 2 was not recorded as cut for plan " + plan.id() + ".");
        assertThatThrownBy(() -> losses.remove(
                        List.of(new Rack.PieceStamp("X1", 9), new Rack.PieceStamp("N1", 1)),
                        PieceState.SCRAPPED,
                        "",
                        "Worms."))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("Piece N1 is used up already.")
                .hasMessageContaining("Piece X1 was changed since")
                .hasMessageEndingWith("Nothing was saved.");
        assertThat(ledger.newest("", 1).total()).isEqualTo(before);
    }

    @Test
    void pagesAndApiScrapSellAndWriteOff() {
        Piece piece = rack.find("X1").orElseThrow();
        assertThat(mvc.get().uri("/rack/X1/away")).hasStatusOk().bodyText().contains("Scrap or sell");
        assertThat(mvc.post()
                        .uri("/rack/X1/away")
                        .with(SecurityMockMvcRequestPostProcessors.csrf())
                        .param("seen", "0")
                        .param("way", "sold")
                        .param("price", "much"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT)
                .bodyText()
                .contains("Price “much” is not a number");
        assertThat(mvc.post()
                        .uri("/rack/X1/away")
                        .with(SecurityMockMvcRequestPostProcessors.csrf())
                        .param("seen", String.valueOf(piece.version()))
                        .param("way", "sold")
                        .param("price", "12"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(rack.find("X1").orElseThrow().state()).isEqualTo(PieceState.SOLD);
        assertThat(mvc.get().uri("/ledger/necks/" + plan.id() + "/O-1/1"))
                .hasStatusOk()
                .bodyText()
                .contains("Where", "N1", "L-7", "Write off");
        assertThat(mvc.get().uri("/api/ledger/necks/" + plan.id() + "/O-1/1"))
                .hasStatusOk()
                .bodyText()
                .contains("\"lot\":\"L-7\"");
        assertThat(mvc.post()
                        .uri("/ledger/necks/" + plan.id() + "/O-1/1")
                        .with(SecurityMockMvcRequestPostProcessors.csrf())
                        .param("head", "true")
                        .param("why", "It split."))
                .hasStatus(HttpStatus.FOUND);
        assertThat(mvc.post()
                        .uri("/api/ledger/necks/" + plan.id() + "/O-1/1/write-off")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content("{\"parts\": [\"neck\"], \"why\": \"It split too.\"}"))
                .hasStatus(HttpStatus.CREATED);
        assertThat(
                        mvc.post()
                                .uri("/api/ledger/removals")
                                .contentType(MediaType.APPLICATION_JSON)
                                .content(
                                        "{\"pieces\": [{\"code\": \"X1\", \"version\": 1}], \"as\": \"scrapped\", \"why\": \"x\"}"))
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(verification.run().faults()).isEmpty();
    }
}
