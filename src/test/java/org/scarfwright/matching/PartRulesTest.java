package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.matching.Shelf.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Shelf.DesignBuilder;
import org.scarfwright.matching.Shelf.PieceBuilder;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.PieceState;

/**
 * Every rule about one part on one piece, with the sentence people read.
 *
 * <p>Figures: the worked example of the joint (neck underlaid 570.43 long, overlaid 484.04; head underlaid 149.89, overlaid
 * 265.07) and that of the rack (a 700 × 80 × 25 blank with 6 mm of bow keeps 25 − 6·(570/700)² = 21.02 mm over 570 mm and
 * 24.72 mm over 150 mm), worked by hand.
 */
class PartRulesTest {
    private static Trial trial(PieceBuilder piece, DesignBuilder design, Role role, Arrangement arrangement) {
        return trial(piece, design, role, arrangement, Shelf.bareShop());
    }

    private static Trial trial(
            PieceBuilder piece, DesignBuilder design, Role role, Arrangement arrangement, ShopRules shop) {
        Way way = Way.of(design.build()).stream()
                .filter(w -> w.arrangement() == arrangement)
                .findFirst()
                .orElseThrow();
        return Trial.of(role == Role.NECK ? way.neck() : way.head(), piece.build(), shop);
    }

    private static Trial neck(PieceBuilder piece) {
        return trial(piece, Shelf.design(), Role.NECK, Arrangement.UNDERLAID);
    }

    private static Trial head(PieceBuilder piece) {
        return trial(piece, Shelf.design(), Role.HEAD, Arrangement.UNDERLAID);
    }

    private static Verdict.Refused refused(PartRule rule, Trial trial) {
        Verdict verdict = rule.judge(trial);
        assertThat(verdict).isInstanceOf(Verdict.Refused.class);
        Verdict.Refused refused = (Verdict.Refused) verdict;
        assertThat(refused.rule()).isEqualTo(rule.name());
        assertThat(refused.reason()).doesNotEndWith(".");
        return refused;
    }

    private static void fits(PartRule rule, Trial trial) {
        assertThat(rule.judge(trial)).isInstanceOf(Verdict.Fits.class);
    }

    private static PieceBuilder board() {
        return Shelf.piece("B1", "700", "90", "25");
    }

    @Test
    void refusesAPieceThatIsNotFree() {
        fits(new FreeRule(), neck(board()));
        assertThat(refused(new FreeRule(), neck(board().state(PieceState.RESERVED)))
                        .reason())
                .isEqualTo("reserved for another plan");
        assertThat(refused(new FreeRule(), neck(board().state(PieceState.SCRAPPED)))
                        .reason())
                .isEqualTo("scrapped");
    }

    @Test
    void refusesALotThatIsNotReadyYet() {
        fits(new LotReadyRule(), neck(board().lot("L7", Shelf.DAY)));
        fits(new LotReadyRule(), neck(board().lot("L7", null)));
        assertThat(refused(new LotReadyRule(), neck(board().lot("L7", LocalDate.of(2026, 12, 14))))
                        .reason())
                .isEqualTo("its lot L7 is ready on 2026-12-14, and the work starts on 2026-11-30");
    }

    @Test
    void refusesAWoodTheDesignDoesNotAskFor() {
        DesignBuilder walnut = Shelf.design().woods(List.of("walnut_black", "cherry_black"), List.of());
        assertThat(refused(new WoodRule(), trial(board(), walnut, Role.NECK, Arrangement.UNDERLAID))
                        .reason())
                .isEqualTo("it is Hard maple (sugar), and the neck asks for Black walnut or Black cherry");
        fits(new WoodRule(), trial(board(), walnut, Role.HEAD, Arrangement.UNDERLAID));
        fits(new WoodRule(), trial(board().wood("cherry_black"), walnut, Role.NECK, Arrangement.UNDERLAID));
        PieceBuilder mixed = board().strips("walnut_black", "40", "maple_sugar", "10", "walnut_black", "40");
        assertThat(refused(new WoodRule(), trial(mixed, walnut, Role.NECK, Arrangement.UNDERLAID))
                        .reason())
                .startsWith("it is Black walnut and Hard maple (sugar)");
    }

    @Test
    void refusesWoodTooWetOrTooDryToGlueButNotWoodNeverMeasured() {
        assertThat(refused(new MoistureRangeRule(), neck(board().moisture(11.5)))
                        .reason())
                .isEqualTo("at 11.5 % moisture it is 1.5 points too wet to glue; 6 % to 10 % is right");
        assertThat(refused(new MoistureRangeRule(), neck(board().moisture(5))).reason())
                .isEqualTo("at 5 % moisture it is 1 point too dry to glue; 6 % to 10 % is right");
        assertThat(new MoistureRangeRule().judge(neck(board().moisture(10)))).isEqualTo(Verdict.FITS);
        assertThat(new MoistureRangeRule().judge(neck(board())))
                .isEqualTo(new Verdict.Fits("The moisture of B1 was never measured: measure it before gluing."));
    }

    @Test
    void keepsAPieceSetAsideForHeadsUnlessAPersonAllowsIt() {
        assertThat(refused(new SetAsideRule(), neck(board().setAside(false))).reason())
                .isEqualTo("it was set aside as warped and is for heads only, unless you allow it as a neck");
        fits(new SetAsideRule(), neck(board().setAside(true)));
        fits(new SetAsideRule(), head(board().setAside(false)));
    }

    @Test
    void refusesANeckWhoseGrainRunsOut() {
        assertThat(refused(new GrainSlopeRule(), neck(board().slope(12))).reason())
                .isEqualTo("its grain runs at 1 in 12, and a neck needs 1 in 15 or flatter");
        fits(new GrainSlopeRule(), neck(board().slope(15)));
        fits(new GrainSlopeRule(), head(board().slope(8)));
        assertThat(new GrainSlopeRule().judge(neck(board())))
                .isEqualTo(new Verdict.Fits("The slope of grain of B1 was never judged: look at it before cutting."));
    }

    @Test
    void refusesACutNoSawOfTheShopMakes() {
        // On edge the piece is 160 mm wide and the saw cuts 150 mm.
        Trial wide = neck(Shelf.piece("B1", "700", "160", "25"));
        assertThat(refused(new SawRule(), wide).reason())
                .startsWith("no saw makes the cut: Band saw cuts 150 mm deep, but the piece on edge is 160 mm wide");
        Trial flat = trial(board(), Shelf.design().angles(4), Role.NECK, Arrangement.OVERLAID);
        assertThat(refused(new SawRule(), flat).reason())
                .startsWith("no saw makes the cut: Band saw cannot be set to 4°; its shallowest is 5°");
        fits(new SawRule(), neck(board()));
    }

    @Test
    void tellsHowMuchTooShortAndThatTheOtherArrangementFits() {
        Trial t = neck(Shelf.piece("B1", "558.1", "90", "25"));
        Verdict.Refused refused = refused(new LengthRule(), t);
        assertThat(refused.reason()).isEqualTo("12.4 mm too short underlaid; fits overlaid");
        assertThat(Objects.requireNonNull(refused.shortBy()).mm()).isBetween(12.32, 12.34); // 570.426 − 558.1
    }

    @Test
    void leavesTheOtherArrangementOutWhereItIsTooShortAsWell() {
        assertThat(refused(new LengthRule(), neck(Shelf.piece("B1", "480", "90", "25")))
                        .reason())
                .isEqualTo("90.5 mm too short underlaid");
        assertThat(refused(
                                new LengthRule(),
                                trial(
                                        Shelf.piece("B1", "480", "90", "25"),
                                        Shelf.design().only(Arrangement.UNDERLAID),
                                        Role.NECK,
                                        Arrangement.UNDERLAID))
                        .reason())
                .isEqualTo("90.5 mm too short underlaid");
    }

    @Test
    void namesTheAngleWhereTheDesignLeavesAChoice() {
        Trial t = trial(
                Shelf.piece("B1", "480", "90", "25"),
                Shelf.design().angles(10, 13).only(Arrangement.UNDERLAID),
                Role.NECK,
                Arrangement.UNDERLAID);
        assertThat(refused(new LengthRule(), t).reason()).isEqualTo("90.5 mm too short underlaid at 10°");
    }

    @Test
    void takesEndTrimsOffTheLength() {
        fits(new LengthRule(), neck(Shelf.piece("B1", "600", "90", "25").trims("10", "10")));
        assertThat(refused(
                                new LengthRule(),
                                neck(Shelf.piece("B1", "600", "90", "25").trims("20", "20")))
                        .reason())
                .isEqualTo("10.5 mm too short underlaid; fits overlaid"); // 570.426 − 560
    }

    @Test
    void needsNothingMoreThanItsLength() {
        fits(new LengthRule(), neck(Shelf.piece("B1", "570.426", "90", "25")));
        refused(new LengthRule(), neck(Shelf.piece("B1", "570.425", "90", "25")));
    }

    @Test
    void tellsWhichFlawLeavesTooLittleClear() {
        Trial t = neck(board().knot("300", "320", true));
        assertThat(refused(new DefectRule(), t).reason())
                .isEqualTo("a knot at 300.0 to 320.0 mm leaves 380.0 mm clear, 190.5 mm too short underlaid");
        fits(new LengthRule(), t);
        fits(new DefectRule(), neck(board().knot("300", "320", false)));
        fits(new DefectRule(), neck(board().knot("600", "620", true)));
    }

    @Test
    void refusesTooNarrowAndSaysWhatWouldHelp() {
        // Without wings the neck must be 78 mm wide underlaid; 70 mm wide it is enough for the 60 mm neck overlaid.
        PieceBuilder narrow = Shelf.piece("B1", "700", "70", "25");
        Trial both = trial(narrow, Shelf.design().noWings(), Role.NECK, Arrangement.UNDERLAID);
        Verdict.Refused refused = refused(new WidthRule(), both);
        assertThat(refused.reason())
                .isEqualTo("8.0 mm too narrow underlaid: 70.0 mm wide once its edges are straight, 78.0 mm needed;"
                        + " fits overlaid");
        assertThat(refused.shortBy()).isEqualTo(mm("8"));
        Trial only =
                trial(narrow, Shelf.design().noWings().only(Arrangement.UNDERLAID), Role.NECK, Arrangement.UNDERLAID);
        assertThat(refused(new WidthRule(), only).reason()).endsWith("; would fit with wings");
        fits(new WidthRule(), trial(narrow, Shelf.design(), Role.NECK, Arrangement.UNDERLAID));
    }

    @Test
    void takesTheCrookOfThePartOffTheWidth() {
        // 8 mm of crook over 700: 8·(149.89/700)² = 0.367 over the head, 8·(570.43/700)² = 5.312 over the neck.
        PieceBuilder crooked = Shelf.piece("B1", "700", "79", "25").warp("0", "8", "0", "0");
        fits(new WidthRule(), head(crooked));
        Trial neck = trial(crooked, Shelf.design().noWings(), Role.NECK, Arrangement.UNDERLAID);
        assertThat(refused(new WidthRule(), neck).reason())
                .startsWith("4.4 mm too narrow underlaid: 73.6 mm wide once its edges are straight, 78.0 mm needed");
    }

    @Test
    void refusesABowedNeckAndTakesTheHead() {
        // 6·(570.43/700)² = 3.984 mm over the neck.
        PieceBuilder bowed = board().bow("6");
        Verdict.Refused refused = refused(new StraightnessRule(), neck(bowed));
        assertThat(refused.reason())
                .isEqualTo("a neck from it is out of straight by 4.0 mm underlaid, 3.0 mm more than a neck may be");
        assertThat(Objects.requireNonNull(refused.shortBy()).mm()).isBetween(2.98, 2.99);
        fits(new StraightnessRule(), head(bowed));
    }

    @Test
    void saysThatAWarpNobodyMeasuredCountsAsNone() {
        assertThat(new StraightnessRule().judge(head(board().warpUnmeasured())))
                .isEqualTo(new Verdict.Fits(
                        "The warp of B1 was never measured and counts as none: sight along it before cutting."));
        assertThat(new StraightnessRule().judge(head(board()))).isEqualTo(Verdict.FITS);
    }

    @Test
    void keepsTheRacksWorkedThicknesses() {
        PieceBuilder bowed = Shelf.piece("B1", "700", "80", "25").bow("6");
        Trial t = neck(bowed);
        assertThat(t.thicknessOver(mm("570")).mm()).isBetween(21.020, 21.022);
        assertThat(t.thicknessOver(mm("150")).mm()).isBetween(24.724, 24.725);
    }

    @Test
    void refusesAPieceTooThinOnceItIsFlat() {
        // 21 − 6·(570.426/700)² = 17.016 mm left of the 20 mm a neck needs; the head keeps 20.72 of 15 mm.
        PieceBuilder thin = Shelf.piece("B1", "700", "80", "21").bow("6");
        Verdict.Refused refused = refused(new ThicknessRule(), neck(thin));
        assertThat(refused.reason())
                .isEqualTo("3.0 mm too thin for a neck underlaid at 10°: 17.0 mm left once 570.4 mm of it is flat,"
                        + " 20.0 mm needed");
        assertThat(Objects.requireNonNull(refused.shortBy()).mm()).isBetween(2.98, 2.99);
        fits(new ThicknessRule(), head(thin));
    }

    @Test
    void takesPlaningOffBothFaces() {
        Trial t = trial(
                Shelf.piece("B1", "700", "80", "21.9"), Shelf.design(), Role.NECK, Arrangement.UNDERLAID, Shelf.shop());
        assertThat(refused(new ThicknessRule(), t).shortBy()).isEqualTo(mm("0.1"));
    }

    @Test
    void refusesAPartThickerThanThePieceIsBroughtTo() {
        Trial t = neck(board());
        Trial thin = new Trial(t.need(), t.piece(), mm("15"), t.saw(), t.shop());
        assertThat(refused(new ThicknessRule(), thin).reason())
                .isEqualTo("5.0 mm too thin when the piece is brought to 15.0 mm");
    }

    @Test
    void neverPutsAShortPieceOnThePlaner() {
        // 280 mm is shorter than the 300 mm the planer may hold; 25 − 15 = 10 mm would have to come off by hand.
        Verdict.Refused refused = refused(new ShortestMachinedRule(), head(Shelf.piece("B1", "280", "90", "25")));
        assertThat(refused.reason())
                .isEqualTo(
                        "at 280.0 mm it is 20.0 mm shorter than the planer may hold, and 10.0 mm is more than comes off"
                                + " by hand (6.0 mm)");
        assertThat(refused.shortBy()).isEqualTo(mm("20"));
        assertThat(new ShortestMachinedRule().judge(head(Shelf.piece("B1", "280", "90", "20"))))
                .isEqualTo(
                        new Verdict.Fits("Take B1 to thickness by hand or on a carrier: at 280.0 mm it is shorter than"
                                + " the 300.0 mm the planer may hold."));
    }

    @Test
    void planesLongAndCrosscutsLast() {
        assertThat(new ShortestMachinedRule().judge(head(board())))
                .isEqualTo(new Verdict.Fits(
                        "Plane B1 long and crosscut it last; finish the 149.9 mm section by hand or on a"
                                + " carrier, never alone on the planer."));
        assertThat(new ShortestMachinedRule().judge(neck(board()))).isEqualTo(Verdict.FITS);
    }

    @Test
    void noShortfallReadsZero() {
        assertThat(Words.atLeast(Length.ofUm(1))).isEqualTo("0.1 mm");
        assertThat(Words.atMost(Length.ofUm(19_999))).isEqualTo("19.9 mm");
    }
}
