package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.scarfwright.matching.Shelf.mm;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.FallbackSearch;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.OrToolsSearch;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;

/** Whole plans: real search, and the independent checker looks at every one. */
class PlanMakerTest {
    private static final Instant NOW = Instant.parse("2026-11-25T08:00:00Z");

    private static Plan make(MatchInput input) {
        return make(input, new OrToolsSearch());
    }

    private static Plan make(MatchInput input, MatchSearch search) {
        return make(input, search, Duration.ofSeconds(20));
    }

    private static Plan make(MatchInput input, MatchSearch search, Duration limit) {
        Plan plan = new PlanMaker(search).make(input, NOW, limit, () -> false);
        assertThat(new PlanChecker().faults(plan, facts(input))).isEmpty();
        return plan;
    }

    private static PlanCheck.Facts facts(MatchInput input) {
        List<NeckOrder> orders = input.lines().stream()
                .map(l -> new NeckOrder(
                        1,
                        0,
                        l.order(),
                        l.design().code(),
                        l.numbers().size(),
                        LocalDate.of(2026, 12, 4),
                        l.priority(),
                        input.week(),
                        ""))
                .toList();
        return new PlanCheck.Facts(
                input.pieces(), input.designs(), orders, input.settings(), input.saws(), input.day());
    }

    @Test
    void makesANeckFromOneBlankWithOneSharedCut() {
        // 457 + 180 − 20·tan 5° is 635.25 without saw and allowances; the saw takes 1 / sin 10° = 5.76, and two truings
        // of 1.5.
        NeckDesign design = Shelf.design().noWings().build();
        Plan plan = make(Shelf.input(
                Shelf.shop(), List.of(Shelf.piece("B1", "650", "90", "25").build()), Shelf.line("O1", design, 1)));
        assertThat(plan.status()).isEqualTo(Plan.Status.PROVED);
        assertThat(plan.filled()).isEqualTo(1);
        Plan.Pairing neck = plan.pairings().get(0);
        assertThat(neck.neck().piece()).isEqualTo("B1");
        assertThat(neck.head().piece()).isEqualTo("B1");
        assertThat(plan.layouts().get(0).cuts()).anyMatch(c -> c.angle() != null && c.shared());
        assertThat(neck.reasons())
                .contains("Neck and head both come from B1 and share one bevel cut.")
                .contains("B1 is the only piece that can be this neck.");
    }

    @Test
    void doesNotFitWhereTheBlankIsATenthTooShort() {
        NeckDesign design = Shelf.design().noWings().build();
        // Head at h = 15 in a piece brought to 20 for the neck: 457 + 64.825 + 113.43 + 5.76 + 3 = 644.01 underlaid.
        Plan fits = make(Shelf.input(
                Shelf.shop(), List.of(Shelf.piece("B1", "644.1", "90", "25").build()), Shelf.line("O1", design, 1)));
        assertThat(fits.filled()).isEqualTo(1);
        Plan misses = make(Shelf.input(
                Shelf.shop(), List.of(Shelf.piece("B1", "643.9", "90", "25").build()), Shelf.line("O1", design, 1)));
        assertThat(misses.filled()).isZero();
        assertThat(misses.status()).isEqualTo(Plan.Status.INFEASIBLE);
    }

    @Test
    void rescuesABowedBlankAsAHeadAndSaysSo() {
        NeckDesign design = Shelf.design().build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("BENT", "700", "90", "25")
                                .bow("6")
                                .setAside(false)
                                .build(),
                        Shelf.piece("GOOD", "600", "90", "25").build(),
                        Shelf.piece("LONG", "1000", "90", "25").build()),
                Shelf.line("O1", design, 1)));
        Plan.Pairing neck = plan.pairings().get(0);
        assertThat(neck.neck().piece()).isEqualTo("GOOD");
        assertThat(neck.head().piece()).isEqualTo("BENT");
        assertThat(neck.reasons())
                .anyMatch(r -> r.startsWith("Rescue: BENT was set aside as warped; of its 6.0 mm of bow"));
        assertThat(plan.books().rescued()).isEqualTo(partVolume(neck.head()));
        assertThat(plan.books().rescue()).isBetween(0.05, 0.5);
    }

    /** The trapezoid of a part, as a person would measure it. */
    private static Volume partVolume(Plan.Part p) {
        return Volume.of(p.shortSide().plus(p.longSide()), p.thickness(), p.width())
                .halfDown();
    }

    @Test
    void takesTheShortBlankOverlaidAndTellsWhyNotUnderlaid() {
        NeckDesign design = Shelf.design().build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("HEAD", "400", "90", "25").build(),
                        Shelf.piece("SHORT", "560", "90", "25").build()),
                Shelf.line("O1", design, 1)));
        Plan.Pairing neck = plan.pairings().get(0);
        assertThat(neck.arrangement()).isEqualTo(Arrangement.OVERLAID);
        assertThat(neck.neck().piece()).isEqualTo("SHORT");
        // 457 + 1.5 + 113.426 + 5.759 = 577.685 against 560.
        assertThat(neck.reasons()).contains("SHORT would not do underlaid: 17.7 mm too short.");
        assertThat(neck.seamFromNut()).isNull();
    }

    @Test
    void givesANarrowNeckWings() {
        NeckDesign design = Shelf.design()
                .only(Arrangement.UNDERLAID)
                .finish(FaceFinish.CLEAR)
                .build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("HEAD", "320", "90", "18").build(),
                        Shelf.piece("NECK", "620", "66", "25").build()),
                Shelf.line("O1", design, 1)));
        Plan.Pairing neck = plan.pairings().get(0);
        assertThat(neck.neck().width()).isEqualTo(mm("60"));
        assertThat(neck.wingWidth()).isEqualTo(mm("9"));
        assertThat(neck.reasons())
                .anyMatch(r -> r.endsWith("two wings of 9.0 mm widen it up to the seam."))
                .contains("Underlaid, a seam crosses the head's front face 115.2 mm from the nut, and under a clear"
                        + " finish it shows.");
    }

    @Test
    void tellsTheNearestMissesAndTheSmallestChange() {
        NeckDesign design = Shelf.design().only(Arrangement.UNDERLAID).build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("A", "560", "90", "25").build(),
                        Shelf.piece("B", "540", "90", "25").build(),
                        Shelf.piece("C", "500", "90", "25").build(),
                        Shelf.piece("D", "400", "90", "25").build()),
                Shelf.line("O1", design, 1)));
        assertThat(plan.status()).isEqualTo(Plan.Status.INFEASIBLE);
        Plan.Unfilled unfilled = plan.unfilled().get(0);
        assertThat(unfilled.missing()).isEqualTo(1);
        assertThat(unfilled.misses()).extracting(Plan.Miss::piece).containsExactly("A", "B", "C");
        assertThat(unfilled.misses().get(0).rule()).isEqualTo("length");
        assertThat(unfilled.misses().get(0).text()).isEqualTo("A as the neck: 17.7 mm too short underlaid.");
        assertThat(unfilled.relaxation()).isEqualTo("If the head may be overlaid, A would be the neck and B the head.");
    }

    @Test
    void proposesLessPlaningWhereThatIsTheSmallestChange() {
        // 21.6 − 2 = 19.6 mm left of 20.
        NeckDesign design = Shelf.design().build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("A", "700", "90", "21.6").build(),
                        Shelf.piece("B", "400", "90", "21.6").build()),
                Shelf.line("O1", design, 1)));
        Plan.Unfilled unfilled = plan.unfilled().get(0);
        assertThat(unfilled.misses().get(0).rule()).isEqualTo("thickness");
        assertThat(unfilled.relaxation()).startsWith("With 0.5 mm less planing in all, A would ");
    }

    @Test
    void saysWhoseTheWoodIsWhenOthersHaveIt() {
        NeckDesign design = Shelf.design().noWings().build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(Shelf.piece("B1", "650", "90", "25").build()),
                Shelf.line("O1", design, 1),
                Shelf.line("O2", design, 1)));
        assertThat(plan.filled()).isEqualTo(1);
        assertThat(plan.status()).isEqualTo(Plan.Status.PROVED);
        String made = plan.pairings().get(0).order();
        assertThat(plan.unfilled().get(0).misses())
                .singleElement()
                .satisfies(m -> assertThat(m.text()).isEqualTo("B1 fits as the neck, but is cut for " + made + "."));
    }

    @Test
    void tellsHowMuchOnePieceIsTooShortForBothParts() {
        NeckDesign design = Shelf.design().noWings().match(MatchRule.SAME_PIECE).build();
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        Shelf.piece("B1", "640", "90", "25").build(),
                        Shelf.piece("B2", "640", "90", "25").build()),
                Shelf.line("O1", design, 1)));
        Plan.Unfilled unfilled = plan.unfilled().get(0);
        assertThat(unfilled.misses().get(0).rule()).isEqualTo("same piece");
        // 457 + 64.825 + 3 of truing + 113.426 + 5.759 = 644.010.
        assertThat(unfilled.misses().get(0).text())
                .isEqualTo("B1: neck and head together take 644.0 mm, 4.1 mm too short underlaid.");
    }

    @Test
    void twoHeadsOfABowedBlankMayShareACutOnlyWhereTheirSectionIsFlatEnough() {
        // Alone a head section of 157 mm keeps its thickness; a pair of 222 mm does not.
        NeckDesign design = Shelf.design().only(Arrangement.UNDERLAID).build();
        Piece bent = Shelf.piece("BENT", "700", "90", "17.6")
                .bow("8")
                .setAside(false)
                .build();
        PartNeed head = Way.of(design).get(0).head();
        List<Preparations.Prepared> prepared = new Preparations(Shelf.shop()).of(bent, List.of(head));
        assertThat(prepared).singleElement().satisfies(p -> {
            assertThat(p.stretches().get(0).shared()).isEmpty();
            assertThat(p.stretches().get(0).alone()).containsExactly(head);
        });
        Plan plan = make(Shelf.input(
                Shelf.shop(),
                List.of(
                        bent,
                        Shelf.piece("N1", "600", "90", "25").build(),
                        Shelf.piece("N2", "600", "90", "25").build()),
                Shelf.line("O1", design, 2)));
        assertThat(plan.filled()).isEqualTo(2);
        assertThat(plan.layouts())
                .filteredOn(l -> l.piece().equals("BENT"))
                .singleElement()
                .satisfies(l -> assertThat(l.cuts()).noneMatch(Plan.Cut::shared));
    }

    @Test
    void theFallbackSearchMakesASoundPlanToo() {
        NeckDesign design = Shelf.design().build();
        Plan plan = make(
                Shelf.input(
                        Shelf.shop(),
                        List.of(
                                Shelf.piece("HEAD", "400", "90", "25").build(),
                                Shelf.piece("NECK", "620", "90", "25").build()),
                        Shelf.line("O1", design, 1)),
                new FallbackSearch());
        assertThat(plan.filled()).isEqualTo(1);
        assertThat(plan.engine()).isEqualTo(FallbackSearch.ENGINE);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16})
    void booksOfRandomRacksCloseAndEveryFigureIsItsShape(long seed) {
        MatchInput input = random(new Random(seed));
        // Long enough for most; the others are plans with a gap, and their books must close as well.
        Plan plan = make(input, new OrToolsSearch(), Duration.ofSeconds(2));
        assertThat(plan.books().difference()).isEqualTo(Volume.ZERO);
        Volume input3 = plan.layouts().stream()
                .map(l -> input.piece(l.piece()).orElseThrow().volume())
                .reduce(Volume.ZERO, Volume::plus);
        assertThat(plan.books().input()).isEqualTo(input3);
        for (Plan.PieceLayout layout : plan.layouts()) {
            shapesAreTheBooks(plan, layout);
        }
        assertThat(plan.filled()
                        + plan.unfilled().stream()
                                .mapToInt(Plan.Unfilled::missing)
                                .sum())
                .isEqualTo(plan.ordered());
        assertThat(plan.unfilled()).allSatisfy(u -> assertThat(u.misses()).isNotEmpty());
        assertThat(plan.pairings()).allSatisfy(p -> assertThat(p.reasons()).hasSizeGreaterThanOrEqualTo(4));
        // What is kept is what was made.
        assertThat(PlanDocument.read(PlanDocument.write(plan))).isEqualTo(plan);
    }

    /** Every figure again, from the plan's drawing alone, in cubic millimetres as a person would work it out. */
    private static void shapesAreTheBooks(Plan plan, Plan.PieceLayout layout) {
        double w = layout.width().mm();
        double thick = layout.thickness().mm();
        double s = layout.sawnThickness().mm();
        List<Plan.Part> parts = new ArrayList<>();
        plan.pairings().forEach(p -> {
            parts.add(p.neck());
            parts.add(p.head());
        });
        parts.removeIf(p -> !p.piece().equals(layout.piece()));
        double inParts = 0;
        double edge = 0;
        for (Plan.Part p : parts) {
            double side = (p.shortSide().mm() + p.longSide().mm()) / 2 * s;
            inParts += side * p.width().mm();
            edge += side * (w - p.width().mm());
        }
        double kerf = 0;
        double wedges = 0;
        double sections = parts.stream().mapToDouble(p -> p.shortSide().mm()).sum();
        for (Plan.Cut cut : layout.cuts()) {
            double taken = cut.to().minus(cut.from()).mm();
            if (cut.angle() == null) {
                kerf += taken * w * thick;
            } else {
                double run = s / Math.tan(Math.toRadians(cut.angle().toDegrees().doubleValue()));
                kerf += (taken - run) * w * s;
                wedges += cut.shared() ? 0 : run * s / 2 * w;
                sections += taken;
            }
        }
        double trims =
                layout.trims().stream().mapToDouble(t -> stretch(t) * w * thick).sum();
        double back = layout.rests().stream()
                .filter(Plan.Stretch::usable)
                .mapToDouble(r -> stretch(r) * w * thick)
                .sum();
        double waste = layout.rests().stream()
                .filter(r -> !r.usable())
                .mapToDouble(r -> stretch(r) * w * thick)
                .sum();
        Plan.Books b = layout.books();
        // A micrometre of rounding on a run of some 100 mm, through 100 × 30 mm: a few cubic millimetres.
        near(b.parts(), inParts);
        near(b.edge(), edge);
        near(b.kerf(), kerf);
        near(b.bevel(), wedges);
        near(b.planing(), sections * w * (thick - s));
        near(b.trim(), trims);
        near(b.usableRest(), back);
        near(b.unusableRest(), waste);
    }

    private static double stretch(Plan.Stretch s) {
        return s.to().minus(s.from()).mm();
    }

    private static void near(Volume volume, double mm3) {
        assertThat(volume.toMm3().doubleValue()).isCloseTo(mm3, offset(20.0));
    }

    private static MatchInput random(Random r) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            Shelf.PieceBuilder p = Shelf.piece(
                    String.format(Locale.ROOT, "P%02d", i),
                    String.valueOf(200 + r.nextInt(1200)) + "." + r.nextInt(1000),
                    String.valueOf(55 + r.nextInt(60)) + "." + r.nextInt(1000),
                    String.valueOf(15 + r.nextInt(16)) + "." + r.nextInt(1000));
            if (r.nextInt(3) == 0) {
                p.warp(
                        String.valueOf(r.nextInt(8)),
                        String.valueOf(r.nextInt(4)),
                        "0." + r.nextInt(9),
                        "0." + r.nextInt(9));
                if (r.nextBoolean()) {
                    p.setAside(false);
                }
            }
            if (r.nextInt(3) == 0) {
                p.trims(String.valueOf(r.nextInt(30)), String.valueOf(r.nextInt(30)) + ".5");
            }
            if (r.nextInt(3) == 0) {
                int at = 50 + r.nextInt(120);
                p.knot(String.valueOf(at), String.valueOf(at + 5 + r.nextInt(25)), r.nextInt(4) > 0);
            }
            if (r.nextInt(3) > 0) {
                p.moisture(5.5 + r.nextInt(50) / 10.0);
            }
            p.wood(r.nextBoolean() ? "maple_sugar" : "walnut_black");
            p.lot(r.nextBoolean() ? "L" + r.nextInt(2) : null, null);
            pieces.add(p.build());
        }
        List<MatchInput.Line> lines = new ArrayList<>();
        MatchRule[] rules = MatchRule.values();
        for (int i = 0; i < 3; i++) {
            Shelf.DesignBuilder d = Shelf.design()
                    .code("D" + i)
                    .neck(String.valueOf(380 + r.nextInt(120)), String.valueOf(50 + r.nextInt(12)), "20")
                    .head(String.valueOf(150 + r.nextInt(60)), String.valueOf(60 + r.nextInt(25)), "15." + r.nextInt(9))
                    .allowances(String.valueOf(r.nextInt(4)), String.valueOf(r.nextInt(3)))
                    .match(rules[r.nextInt(rules.length)]);
            if (r.nextBoolean()) {
                d.angles(10, 13);
            }
            if (r.nextBoolean()) {
                d.noWings();
            }
            lines.add(Shelf.line("O" + i, d.build(), 1 + r.nextInt(2)));
        }
        return Shelf.input(Shelf.shop(), pieces, lines.toArray(MatchInput.Line[]::new));
    }

    @Test
    void theSameQuestionGivesTheSameAnswer() {
        MatchInput input = random(new Random(18));
        Plan plan = make(input);
        Plan again = make(input);
        assertThat(plan.status()).isEqualTo(Plan.Status.PROVED);
        assertThat(again.pairings()).isEqualTo(plan.pairings());
        assertThat(again.layouts()).isEqualTo(plan.layouts());
        assertThat(again.unfilled()).isEqualTo(plan.unfilled());
    }

    @Test
    void aShopOfTwoSawsMakesEachCutOnTheFirstThatCan() {
        // The first saw cuts 70 mm deep: the 90 mm head piece goes to the second, which leaves more for truing.
        ShopRules shop = new ShopRules(
                Shelf.settings("1", "2"),
                List.of(
                        new Saw(
                                "small",
                                "Small saw",
                                SawKind.MITRE,
                                mm("2.5"),
                                mm("70"),
                                mm("400"),
                                Angle.ofDegrees(5),
                                Angle.ofDegrees(30),
                                mm("1"),
                                new Angle(500)),
                        Shelf.saw("band", "1", "2")),
                Shelf.DAY,
                Shelf.WOODS);
        NeckDesign design = Shelf.design().only(Arrangement.UNDERLAID).build();
        Plan plan = make(Shelf.input(
                shop,
                List.of(
                        Shelf.piece("HEAD", "320", "90", "18").build(),
                        Shelf.piece("NECK", "620", "66", "25").build()),
                Shelf.line("O1", design, 1)));
        assertThat(plan.layouts()).extracting(Plan.PieceLayout::saw).containsExactly("band", "small");
        Length head = plan.pairings().get(0).head().shortSide();
        assertThat(head.mm()).isBetween(66.82, 66.83); // 64.825 + 2
        assertThat(plan.pairings().get(0).neck().shortSide()).isEqualTo(mm("458"));
    }
}
