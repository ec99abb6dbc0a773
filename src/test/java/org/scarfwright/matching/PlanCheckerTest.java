package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.matching.Plan.Cut;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Stretch;
import org.scarfwright.matching.PlanCheck.Facts;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;
import org.scarfwright.shop.ShopSettings;

/**
 * A plan laid out by hand from the check values of the joint (N 457, H 180, t 20, h 15, 10°, overlaid: neck front 370.62,
 * head front 180.00) passes; the same plan with one thing wrong does not.
 */
class PlanCheckerTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final PlanChecker CHECKER = new PlanChecker();

    // ---- the plan by hand ------------------------------------------------------------------------------------------

    private static final ShopSettings SETTINGS = new ShopSettings(
            LengthUnit.MM,
            "EUR",
            um(500),
            mm(1),
            mm(1),
            mm(300),
            mm(120),
            mm(40),
            15,
            Moisture.ofPercent(6),
            Moisture.ofPercent(10),
            new MoistureChange(200));
    private static final Saw BAND = new Saw(
            "BAND",
            "Band saw",
            SawKind.BAND,
            mm(1),
            mm(150),
            mm(300),
            Angle.ofDegrees(5),
            Angle.ofDegrees(45),
            mm(2),
            new Angle(500));
    private static final NeckDesign DESIGN = design(MatchRule.ANY, List.of());
    private static final NeckOrder ORDER =
            new NeckOrder(1, 0, "O-1", "D-1", 1, LocalDate.of(2026, 12, 4), 5, new IsoWeek(2026, 49), "");
    private static final Piece LONG = piece("LONG", 700, 62, 22);
    private static final Piece WIDE = piece("WIDE", 400, 80, 18);

    /** 1 / sin 10° = 5.7588 mm of kerf along the piece; 21 / tan 10° = 119.0970; 17 / tan 10° = 96.4119. */
    private static final Part NECK =
            new Part("LONG", 1, um(5_759), um(500_857), true, mm(376), um(495_098), mm(59), mm(21));

    private static final Part HEAD =
            new Part("WIDE", 1, um(5_759), um(287_172), true, mm(185), um(281_413), mm(78), mm(17));

    private static Length um(long um) {
        return Length.ofUm(um);
    }

    private static Length mm(long mm) {
        return Length.ofMm(mm);
    }

    private static TypedLength typed(long mm) {
        return TypedLength.of(mm(mm));
    }

    private static NeckDesign design(MatchRule match, List<String> headWoods) {
        return new NeckDesign(
                1,
                0,
                "D-1",
                "Design",
                typed(457),
                typed(43),
                typed(57),
                typed(20),
                typed(180),
                typed(76),
                typed(15),
                List.of(Angle.ofDegrees(10)),
                List.of(Arrangement.OVERLAID),
                FaceFinish.OPAQUE,
                List.of(),
                headWoods,
                match,
                false,
                false,
                typed(3),
                typed(2));
    }

    private static Piece piece(String code, long length, long width, long thickness) {
        return piece(code, length, width, thickness, new Change());
    }

    /** What a test makes different about a piece. */
    private static final class Change {
        private PieceState state = PieceState.ON_RACK;
        private Warp warp = new Warp(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO, TODAY);
        private int moisture = 800;
        private List<Defect> defects = List.of();
        private Length trimLeft = Length.ZERO;
        private boolean setAside;
        private Integer slope = 20;
        private LocalDate ready = TODAY;
        private long version = 3;
    }

    private static Piece piece(String code, long length, long width, long thickness, Change c) {
        return new Piece(
                1,
                c.version,
                code,
                c.state,
                new PieceWood.Solid(code.equals("LONG") ? "maple_sugar" : "walnut_black"),
                typed(length),
                typed(width),
                typed(thickness),
                GrainCut.FLAT,
                c.slope,
                new MoistureReading(new Moisture(c.moisture), TODAY, MoistureReading.Meter.PIN),
                c.warp,
                c.trimLeft,
                Length.ZERO,
                c.defects,
                c.setAside,
                false,
                code,
                c.ready,
                null,
                null,
                "",
                TODAY);
    }

    private static Volume twoSides(Part p) {
        return Volume.of(p.shortSide().plus(p.longSide()), p.thickness(), p.width())
                .halfDown();
    }

    private static PieceLayout layout(Piece piece, Part part, long restFromUm, Length sawn) {
        Volume input = piece.volume();
        Volume parts = twoSides(part);
        Length end = piece.length().length();
        Volume rest = Volume.of(
                end.minus(um(restFromUm)),
                piece.width().length(),
                piece.thickness().length());
        boolean usable = end.um() - restFromUm >= 120_000;
        // 21 / tan 10° and 17 / tan 10° are what is between the short side and the bevel's far end; the kerf lies
        // before it.
        Length run = part.longSide().minus(part.shortSide());
        Length kerfRun = part.from();
        Volume kerf = Volume.of(mm(1), piece.width().length(), piece.thickness().length())
                .plus(Volume.of(kerfRun, piece.width().length(), sawn));
        Volume wedge = Volume.of(run, piece.width().length(), sawn).halfDown();
        Volume planing = Volume.of(
                part.to(), piece.width().length(), piece.thickness().length().minus(sawn));
        Volume edge = input.minus(parts).minus(rest).minus(kerf).minus(wedge).minus(planing);
        Books books = new Books(
                input,
                parts,
                kerf,
                wedge,
                edge,
                Volume.ZERO,
                planing,
                usable ? rest : Volume.ZERO,
                usable ? Volume.ZERO : rest,
                Volume.ZERO);
        return new PieceLayout(
                piece.code(),
                piece.version(),
                piece.length().length(),
                piece.width().length(),
                piece.thickness().length(),
                sawn,
                "BAND",
                List.of(
                        new Cut(1, Length.ZERO, part.to().minus(part.shortSide()), Angle.ofDegrees(10), false),
                        new Cut(1, part.to(), part.to().plus(mm(1)), null, false)),
                List.of(new Stretch(1, um(restFromUm), end, piece.width().length(), usable)),
                List.of(),
                books);
    }

    private static Plan plan(List<Pairing> pairings, List<PieceLayout> layouts) {
        Books sum = layouts.stream().map(PieceLayout::books).reduce(Books.NOTHING, Books::plus);
        return new Plan(
                1,
                "2026-W49",
                Plan.State.PROPOSED,
                Plan.Status.PROVED,
                Instant.parse("2026-11-25T08:00:00Z"),
                "by hand",
                0,
                pairings.size(),
                1,
                List.of(),
                pairings,
                layouts,
                List.of(),
                sum);
    }

    private static Pairing pairing(Part neck, Part head) {
        return new Pairing(
                "O-1", 1, "D-1", Arrangement.OVERLAID, Angle.ofDegrees(10), neck, head, null, null, List.of());
    }

    private static final List<PieceLayout> LAYOUTS =
            List.of(layout(LONG, NECK, 501_857, mm(21)), layout(WIDE, HEAD, 288_172, mm(17)));

    private static final Plan GOOD = plan(List.of(pairing(NECK, HEAD)), LAYOUTS);
    private static final Facts FACTS = facts(List.of(LONG, WIDE), DESIGN);

    private static Facts facts(List<Piece> pieces, NeckDesign design) {
        return new Facts(pieces, List.of(design), List.of(ORDER), SETTINGS, List.of(BAND), TODAY);
    }

    @Test
    void passesAPlanLaidOutByHand() {
        assertThat(CHECKER.faults(GOOD, FACTS)).isEmpty();
    }

    // ---- one thing wrong with the plan -----------------------------------------------------------------------------

    private static Part with(Part p, UnaryOperator<long[]> change, boolean bevelAtLeft) {
        long[] v = change.apply(new long[] {
            p.lane(),
            p.from().um(),
            p.to().um(),
            p.shortSide().um(),
            p.longSide().um(),
            p.width().um(),
            p.thickness().um()
        });
        return new Part(p.piece(), (int) v[0], um(v[1]), um(v[2]), bevelAtLeft, um(v[3]), um(v[4]), um(v[5]), um(v[6]));
    }

    private static Plan withNeck(UnaryOperator<long[]> change) {
        Part neck = with(NECK, change, true);
        return plan(
                List.of(pairing(neck, HEAD)), List.of(layout(LONG, neck, 501_857, neck.thickness()), LAYOUTS.get(1)));
    }

    private static Plan withHead(UnaryOperator<long[]> change) {
        Part head = with(HEAD, change, true);
        return plan(
                List.of(pairing(NECK, head)), List.of(LAYOUTS.get(0), layout(WIDE, head, 288_172, head.thickness())));
    }

    private static long[] set(long[] v, int at, long value) {
        v[at] = value;
        return v;
    }

    private static long[] shift(long[] v, long by, int... at) {
        for (int i : at) {
            v[i] += by;
        }
        return v;
    }

    private static Plan withBooks(UnaryOperator<Books> change) {
        PieceLayout l = LAYOUTS.get(0);
        PieceLayout wrong = new PieceLayout(
                l.piece(),
                l.pieceVersion(),
                l.length(),
                l.width(),
                l.thickness(),
                l.sawnThickness(),
                l.saw(),
                l.cuts(),
                l.rests(),
                l.trims(),
                change.apply(l.books()));
        return plan(GOOD.pairings(), List.of(wrong, LAYOUTS.get(1)));
    }

    private static Books moved(Books b, long um3) {
        Volume v = new Volume(BigInteger.valueOf(um3));
        return new Books(
                b.input(),
                b.parts().plus(v),
                b.kerf().minus(v),
                b.bevel(),
                b.edge(),
                b.trim(),
                b.planing(),
                b.usableRest(),
                b.unusableRest(),
                b.rescued());
    }

    static Stream<Arguments> wrongPlans() {
        List<Arguments> all = new ArrayList<>();
        all.add(Arguments.of("too short", withNeck(v -> shift(v, -1_000, 2, 3, 4))));
        all.add(Arguments.of("too short", withHead(v -> shift(v, -1_000, 2, 3, 4))));
        all.add(Arguments.of("sides that do not fit", withNeck(v -> shift(v, 100, 4, 2))));
        all.add(Arguments.of("length it has", withNeck(v -> shift(v, 500, 2))));
        all.add(Arguments.of("sawn too thin", withHead(v -> set(shift(v, -12_000, 2, 4), 6, 14_900))));
        all.add(Arguments.of("once it is flat", withNeck(v -> shift(set(v, 6, 21_500), 2_836, 2, 4))));
        all.add(Arguments.of("width it needs", withNeck(v -> set(v, 5, 58_000))));
        all.add(Arguments.of("width it needs", withHead(v -> set(v, 5, 79_500))));
        all.add(Arguments.of("past the sound wood", withNeck(v -> shift(v, -6_000, 1, 2))));
        all.add(Arguments.of("lies on a rest", withNeck(v -> shift(v, 2_000, 1, 2))));
        all.add(Arguments.of(
                "books of LONG do not close",
                withBooks(b -> new Books(
                        b.input(),
                        b.parts(),
                        b.kerf(),
                        Volume.ofUm3(1),
                        b.edge(),
                        b.trim(),
                        b.planing(),
                        b.usableRest(),
                        b.unusableRest(),
                        b.rescued()))));
        all.add(Arguments.of("another volume", withBooks(b -> moved(b, 2))));
        all.add(Arguments.of(
                "another piece",
                withBooks(b -> new Books(
                        b.input().plus(Volume.ofUm3(7)),
                        b.parts(),
                        b.kerf().plus(Volume.ofUm3(7)),
                        b.bevel(),
                        b.edge(),
                        b.trim(),
                        b.planing(),
                        b.usableRest(),
                        b.unusableRest(),
                        b.rescued()))));
        all.add(Arguments.of("made twice", plan(List.of(pairing(NECK, HEAD), pairing(NECK, HEAD)), LAYOUTS)));
        all.add(Arguments.of("overlap", plan(List.of(pairing(NECK, HEAD), pairing(NECK, HEAD)), LAYOUTS)));
        all.add(Arguments.of("asks for 1", plan(List.of(), LAYOUTS)));
        all.add(Arguments.of("which is not cut", plan(GOOD.pairings(), LAYOUTS.subList(0, 1))));
        all.add(Arguments.of(
                "cut twice", plan(GOOD.pairings(), List.of(LAYOUTS.get(0), LAYOUTS.get(0), LAYOUTS.get(1)))));
        all.add(Arguments.of(
                "does not allow underlaid",
                plan(
                        List.of(new Pairing(
                                "O-1",
                                1,
                                "D-1",
                                Arrangement.UNDERLAID,
                                Angle.ofDegrees(10),
                                NECK,
                                HEAD,
                                null,
                                null,
                                List.of())),
                        LAYOUTS)));
        return all.stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void wrongPlans(String said, Plan plan) {
        assertThat(CHECKER.faults(plan, FACTS)).anyMatch(f -> f.contains(said));
    }

    // ---- one thing wrong with the world ----------------------------------------------------------------------------

    private static Facts withLong(java.util.function.Consumer<Change> change) {
        Change c = new Change();
        change.accept(c);
        return facts(List.of(piece("LONG", 700, 62, 22, c), WIDE), DESIGN);
    }

    private static Warp warp(long bowUm, long crookUm, long cupUm, long twistUm) {
        return new Warp(um(bowUm), um(crookUm), um(cupUm), um(twistUm), TODAY);
    }

    static Stream<Arguments> wrongFacts() {
        Defect knot = new Defect(Defect.Kind.KNOT, mm(400), mm(420), mm(10), mm(20), true);
        return Stream.of(
                Arguments.of("not on the rack", facts(List.of(WIDE), DESIGN)),
                Arguments.of("not free", withLong(c -> c.state = PieceState.RESERVED)),
                Arguments.of("not the piece the plan was made for", withLong(c -> c.version = 4)),
                Arguments.of("lot of LONG is not ready", withLong(c -> c.ready = TODAY.plusDays(1))),
                // 700 mm long, part 495.098: a bow of 0.1 mm keeps 0.05 mm too little
                Arguments.of("once it is flat", withLong(c -> c.warp = warp(100, 0, 0, 0))),
                Arguments.of("is out by", withLong(c -> c.warp = warp(2_100, 0, 0, 0))),
                Arguments.of("width it needs", withLong(c -> c.warp = warp(0, 4_500, 0, 0))),
                Arguments.of("once it is flat", withLong(c -> c.warp = warp(0, 0, 100, 0))),
                Arguments.of("once it is flat", withLong(c -> c.warp = warp(0, 0, 0, 200))),
                Arguments.of("lies on a flaw", withLong(c -> c.defects = List.of(knot))),
                Arguments.of("past the sound wood", withLong(c -> c.trimLeft = mm(6))),
                Arguments.of("laid aside", withLong(c -> c.setAside = true)),
                Arguments.of("too steep", withLong(c -> c.slope = 12)),
                Arguments.of("moisture to glue", withLong(c -> c.moisture = 1_050)),
                Arguments.of("points of moisture", withLong(c -> c.moisture = 599)),
                Arguments.of("not matched", facts(List.of(LONG, WIDE), design(MatchRule.SAME_WOOD, List.of()))),
                Arguments.of("not matched", facts(List.of(LONG, WIDE), design(MatchRule.SAME_LOT, List.of()))),
                Arguments.of("not matched", facts(List.of(LONG, WIDE), design(MatchRule.SAME_PIECE, List.of()))),
                Arguments.of("not a wood", facts(List.of(LONG, WIDE), design(MatchRule.ANY, List.of("maple_sugar")))));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void wrongFacts(String said, Facts facts) {
        assertThat(CHECKER.faults(GOOD, facts)).anyMatch(f -> f.contains(said));
    }

    @Test
    void passesTwoPartsThatShareABevelAndNotTwoThatAreTooClose() {
        // Heads from one piece: the first with its bevel at the right, the second at the left, 1 mm of kerf between.
        Part first = new Part("WIDE", 1, mm(0), um(281_413), false, mm(185), um(281_413), mm(78), mm(17));
        long start = 281_413 - 96_412 + 5_759;
        Part second = new Part("WIDE", 1, um(start), um(start + 281_413), true, mm(185), um(281_413), mm(78), mm(17));
        Part close = new Part(
                "WIDE", 1, um(start - 100), um(start - 100 + 281_413), true, mm(185), um(281_413), mm(78), mm(17));
        assertThat(CHECKER.faults(twoHeads(first, second), FACTS)).noneMatch(f -> f.contains("overlap on WIDE"));
        assertThat(CHECKER.faults(twoHeads(first, close), FACTS)).anyMatch(f -> f.contains("overlap on WIDE"));
    }

    private static Plan twoHeads(Part first, Part second) {
        Pairing other = new Pairing(
                "O-1", 2, "D-1", Arrangement.OVERLAID, Angle.ofDegrees(10), NECK, second, null, null, List.of());
        return plan(List.of(pairing(NECK, first), other), LAYOUTS);
    }
}
