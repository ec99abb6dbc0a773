package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.matching.Plan.Cut;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Stretch;
import org.scarfwright.matching.search.FallbackSearch;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.shop.ShopSettings;

/**
 * Good plans are spoilt in one place each, in every way we could think of; the independent checker must reject every one. The
 * plans before the change pass it, so that it is the change that is rejected. Some stay as they are, and it is the piece, the
 * order or the shop that is no longer what they were made for.
 */
class MutatedPlansTest {
    private static final int SPOILT = 2_800;

    /** The design whose lines must meet, how far apart the lines of a glued piece are, and how thick a head is. */
    private static final String LINED = "D-4";

    private static final long STRIP_UM = 12_000;
    private static final long HEAD_UM = 15_000;

    /** A way to spoil a plan; nothing when this plan has no place for it. */
    private interface Spoil {
        @Nullable
        Plan spoil(Plan plan, Random random);
    }

    /** A way to change what a plan was made from, with the words the checker must find. */
    private interface Turn {
        PlanCheck.@Nullable Facts turn(Good good, Random random);
    }

    private static final Map<String, Spoil> SPOILS = new LinkedHashMap<>();
    private static final Map<String, Turn> TURNS = new LinkedHashMap<>();
    /** By name of the turn: the only fault there is, so that no other one hides that this is not seen. */
    private static final Map<String, String> ONLY = new LinkedHashMap<>();

    static {
        // parts that lie elsewhere, or are of another size
        part("moved part", (p, r) -> moved(p, anyway(r)));
        part("part shortened", (p, r) -> {
            long by = by(r);
            return new Part(
                    p.piece(),
                    p.lane(),
                    p.from(),
                    um(p.to().um() - by),
                    p.bevelAtLeft(),
                    um(p.shortSide().um() - by),
                    um(p.longSide().um() - by),
                    p.width(),
                    p.thickness());
        });
        part(
                "part turned round",
                (p, r) -> new Part(
                        p.piece(),
                        p.lane(),
                        p.from(),
                        p.to(),
                        !p.bevelAtLeft(),
                        p.shortSide(),
                        p.longSide(),
                        p.width(),
                        p.thickness()));
        part("part too narrow", (p, r) -> sized(p, um(p.width().um() - by(r)), p.thickness()));
        part("part wider than its books", (p, r) -> sized(p, um(p.width().um() + by(r)), p.thickness()));
        part(
                "part of another thickness",
                (p, r) -> sized(p, p.width(), um(p.thickness().um() + anyway(r))));
        part(
                "part in another lane",
                (p, r) -> new Part(
                        p.piece(),
                        p.lane() + 1,
                        p.from(),
                        p.to(),
                        p.bevelAtLeft(),
                        p.shortSide(),
                        p.longSide(),
                        p.width(),
                        p.thickness()));
        part("part on a piece that is not cut", (p, r) -> on(p, "NOWHERE"));
        SPOILS.put("parts of two pieces swapped", (plan, r) -> {
            Pairing p = any(plan.pairings(), r);
            return p.neck().piece().equals(p.head().piece())
                    ? null
                    : with(
                            plan,
                            p,
                            pairing(
                                    p,
                                    on(p.neck(), p.head().piece()),
                                    on(p.head(), p.neck().piece())));
        });
        SPOILS.put("neck and head swapped", (plan, r) -> {
            Pairing p = any(plan.pairings(), r);
            return with(plan, p, pairing(p, p.head(), p.neck()));
        });
        SPOILS.put("one part for two necks", (plan, r) -> {
            Pairing p = any(plan.pairings(), r);
            Pairing q = any(plan.pairings(), r);
            return p.equals(q) ? null : with(plan, q, pairing(q, p.neck(), q.head()));
        });

        // joints
        pairing(
                "wrong angle",
                (p, r) -> new Pairing(
                        p.order(),
                        p.number(),
                        p.design(),
                        p.arrangement(),
                        new Angle(p.angle().millidegrees() + (r.nextBoolean() ? 500 : -500)),
                        p.neck(),
                        p.head(),
                        p.wingWidth(),
                        p.seamFromNut(),
                        p.reasons()));
        pairing(
                "other arrangement",
                (p, r) -> new Pairing(
                        p.order(),
                        p.number(),
                        p.design(),
                        p.arrangement().other(),
                        p.angle(),
                        p.neck(),
                        p.head(),
                        p.wingWidth(),
                        p.seamFromNut(),
                        p.reasons()));
        pairing("seam elsewhere", (p, r) -> {
            Length seam = p.seamFromNut();
            return joint(p, p.wingWidth(), seam == null ? Length.ofMm(100) : um(seam.um() + anyway(r)));
        });
        pairing("seam forgotten", (p, r) -> p.seamFromNut() == null ? null : joint(p, p.wingWidth(), null));
        pairing("wings forgotten", (p, r) -> p.wingWidth() == null ? null : joint(p, null, p.seamFromNut()));
        pairing("wings too narrow", (p, r) -> {
            Length wing = p.wingWidth();
            return wing == null ? null : joint(p, um(wing.um() / 2), p.seamFromNut());
        });

        // counts
        pairing("neck nobody asked for", (p, r) -> numbered(p, p.order() + "X", p.number()));
        SPOILS.put("one neck made twice", (plan, r) -> {
            List<Pairing> all = new ArrayList<>(plan.pairings());
            all.add(any(all, r));
            return with(plan, all, plan.layouts(), plan.books());
        });
        SPOILS.put("neck dropped", (plan, r) -> {
            List<Pairing> all = new ArrayList<>(plan.pairings());
            all.remove(r.nextInt(all.size()));
            return with(plan, all, plan.layouts(), plan.books());
        });
        SPOILS.put("two numbers alike", (plan, r) -> {
            Pairing p = any(plan.pairings(), r);
            Pairing q = any(plan.pairings(), r);
            boolean spoils = !p.equals(q) && p.order().equals(q.order());
            return spoils ? with(plan, q, numbered(q, q.order(), p.number())) : null;
        });
        SPOILS.put("filled told wrong", (plan, r) -> counted(plan, plan.filled() + 1, plan.ordered()));
        SPOILS.put("ordered told wrong", (plan, r) -> counted(plan, plan.filled(), plan.ordered() + 1));

        // pieces
        layout("piece cut twice", (plan, l, r) -> {
            List<PieceLayout> all = new ArrayList<>(plan.layouts());
            all.add(l);
            return with(plan, plan.pairings(), all, plan.books().plus(l.books()));
        });
        layout("layout dropped", (plan, l, r) -> {
            List<PieceLayout> all = new ArrayList<>(plan.layouts());
            all.remove(l);
            return with(plan, plan.pairings(), all, plan.books());
        });
        change("another piece under the parts", (l, r) -> named(l, "NOWHERE", l.pieceVersion()));
        change("piece of another version", (l, r) -> named(l, l.piece(), l.pieceVersion() + 1));
        change(
                "piece of another size",
                (l, r) -> shaped(l, um(l.length().um() + anyway(r)), l.sawnThickness(), l.saw()));
        change(
                "another thickness at the saw",
                (l, r) -> shaped(l, l.length(), um(l.sawnThickness().um() + anyway(r)), l.saw()));
        change("a saw nobody has", (l, r) -> shaped(l, l.length(), l.sawnThickness(), "chain"));
        change("a saw of another kerf", (l, r) -> shaped(l, l.length(), l.sawnThickness(), "wide"));
        change("cut moved", (l, r) -> {
            long by = anyway(r);
            return cuts(l, r, c -> cut(c, c.from().um() + by, c.to().um() + by));
        });
        change("cut widened", (l, r) -> cuts(l, r, c -> cut(c, c.from().um(), c.to().um() + by(r))));
        change("cut dropped", (l, r) -> {
            List<Cut> all = new ArrayList<>(l.cuts());
            all.remove(r.nextInt(all.size()));
            return of(l, all, l.rests(), l.trims(), l.books());
        });
        change(
                "cut at another angle",
                (l, r) -> cuts(
                        l,
                        r,
                        c -> new Cut(
                                c.lane(),
                                c.from(),
                                c.to(),
                                c.angle() == null
                                        ? Angle.ofDegrees(10)
                                        : new Angle(c.angle().millidegrees() + 1_000),
                                c.shared())));
        change(
                "shared told wrong",
                (l, r) -> cuts(
                        l,
                        r,
                        c -> c.angle() == null
                                ? cut(c, c.from().um() + 1_000, c.to().um() + 1_000)
                                : new Cut(c.lane(), c.from(), c.to(), c.angle(), !c.shared())));
        change(
                "cut in another lane",
                (l, r) -> cuts(l, r, c -> new Cut(c.lane() + 1, c.from(), c.to(), c.angle(), c.shared())));

        // what is left
        change("rest shrunk", (l, r) -> rests(l, r, x -> stretch(x, x.from().um() + by(r), x.to().um(), x.usable())));
        change("rest grown", (l, r) -> rests(l, r, x -> stretch(x, x.from().um() - by(r), x.to().um(), x.usable())));
        change(
                "rest past the end",
                (l, r) -> rests(l, r, x -> stretch(x, x.from().um(), x.to().um() + by(r), x.usable())));
        change("rest moved", (l, r) -> {
            long by = anyway(r);
            return rests(l, r, x -> stretch(x, x.from().um() + by, x.to().um() + by, x.usable()));
        });
        change(
                "rest narrowed",
                (l, r) -> rests(
                        l,
                        r,
                        x -> new Stretch(
                                x.lane(), x.from(), x.to(), um(x.width().um() - by(r)), x.usable())));
        change(
                "rest to the rack or not",
                (l, r) -> rests(l, r, x -> stretch(x, x.from().um(), x.to().um(), !x.usable())));
        change("rest dropped", (l, r) -> {
            if (l.rests().isEmpty()) {
                return null;
            }
            List<Stretch> all = new ArrayList<>(l.rests());
            all.remove(r.nextInt(all.size()));
            return of(l, l.cuts(), all, l.trims(), l.books());
        });
        change("rest twice", (l, r) -> {
            if (l.rests().isEmpty()) {
                return null;
            }
            List<Stretch> all = new ArrayList<>(l.rests());
            all.add(any(all, r));
            return of(l, l.cuts(), all, l.trims(), l.books());
        });
        change("trim forgotten", (l, r) -> {
            if (l.trims().isEmpty()) {
                return null;
            }
            List<Stretch> all = new ArrayList<>(l.trims());
            all.remove(r.nextInt(all.size()));
            return of(l, l.cuts(), l.rests(), all, l.books());
        });

        // books: a litre's worth of hundredths moved from one line to another, here and in the sum alike
        SPOILS.put("books that do not close", (plan, r) -> {
            PieceLayout l = any(plan.layouts(), r);
            Books b = l.books();
            return books(plan, l, moved(b, -1, r.nextInt(8), some(r)));
        });
        SPOILS.put("wood booked under another name", (plan, r) -> {
            PieceLayout l = any(plan.layouts(), r);
            int from = r.nextInt(8);
            int to = r.nextInt(8);
            return from == to ? null : books(plan, l, moved(l.books(), from, to, some(r)));
        });
        SPOILS.put(
                "sum that is not the pieces'",
                (plan, r) -> with(
                        plan,
                        plan.pairings(),
                        plan.layouts(),
                        moved(plan.books(), r.nextInt(4), 4 + r.nextInt(4), some(r))));
    }

    static {
        turn("a line of glue where none goes on", "do not go on in", (good, r) -> {
            List<Pairing> asked = good.plan().pairings().stream()
                    .filter(p -> p.design().equals(LINED))
                    .toList();
            if (asked.isEmpty()) {
                return null;
            }
            Pairing p = any(asked, r);
            String code = r.nextBoolean() ? p.neck().piece() : p.head().piece();
            long off = 600L + r.nextInt(20_000);
            return withPiece(good.facts(), code, piece -> lined(piece, r.nextBoolean() ? off : -off));
        });
        turn("lines of glue that lie elsewhere", "do not go on in", (good, r) -> {
            List<Pairing> asked = good.plan().pairings().stream()
                    .filter(p -> p.design().equals(LINED)
                            && !p.neck().piece().equals(p.head().piece()))
                    .filter(p -> wood(good, p.neck()) instanceof PieceWood.Lamination
                            && wood(good, p.head()) instanceof PieceWood.Lamination)
                    .toList();
            if (asked.isEmpty()) {
                return null;
            }
            Pairing p = any(asked, r);
            long half = STRIP_UM / 2 + 600 + r.nextInt(8_000);
            return withPiece(
                    good.facts(), r.nextBoolean() ? p.neck().piece() : p.head().piece(), piece -> glued(piece, half));
        });
        turn("a planer that holds longer pieces only", "too short for the planer", (good, r) -> {
            PieceLayout l = any(good.plan().layouts(), r);
            boolean byHand = good.plan().pairings().stream()
                    .anyMatch(p -> p.head().piece().equals(l.piece())
                            && l.thickness().um() > HEAD_UM + 6_000
                            && good.plan().layouts().stream()
                                    .allMatch(o -> o.equals(l)
                                            || o.length().um() > l.length().um()));
            return byHand ? withPlaner(good.facts(), um(l.length().um() + by(r) % 1_000 + 1)) : null;
        });
        turn("a lot that comes later", "is not ready", (good, r) -> {
            String code = any(good.plan().layouts(), r).piece();
            return withPiece(
                    good.facts(),
                    code,
                    p -> stocked(p, good.facts().today().plusDays(1 + r.nextInt(300)), p.moisture()));
        });
        turn("wood that is too wet or too dry", "is not at a moisture to glue at", (good, r) -> {
            String code = any(good.plan().layouts(), r).piece();
            int percent = r.nextBoolean() ? 11 + r.nextInt(20) : r.nextInt(6);
            return withPiece(good.facts(), code, p -> stocked(p, p.lotReadyOn(), reading(percent)));
        });
        turn("parts that are not as dry as each other", "points of moisture", (good, r) -> {
            Pairing p = any(good.plan().pairings(), r);
            if (p.neck().piece().equals(p.head().piece())) {
                return null;
            }
            boolean up = r.nextBoolean();
            double apart = 2.01 + r.nextInt(190) / 100.0;
            return withPiece(
                    withPiece(good.facts(), p.neck().piece(), x -> stocked(x, x.lotReadyOn(), reading(up ? 6 : 10))),
                    p.head().piece(),
                    x -> stocked(x, x.lotReadyOn(), reading(up ? 6 + apart : 10 - apart)));
        });
    }

    private static void turn(String name, String words, Turn turn) {
        TURNS.put(name, turn);
        ONLY.put(name, words);
    }

    private static MoistureReading reading(double percent) {
        return new MoistureReading(Moisture.ofPercent(percent), Shelf.DAY, MoistureReading.Meter.PIN);
    }

    private static PieceWood wood(Good good, Part part) {
        return good.facts().pieces().stream()
                .filter(p -> p.code().equals(part.piece()))
                .findFirst()
                .orElseThrow()
                .wood();
    }

    // ---- the plans -------------------------------------------------------------------------------------------------

    private record Good(Plan plan, PlanCheck.Facts facts) {}

    private static List<Good> goods() {
        List<Good> goods = new ArrayList<>();
        for (int seed = 0; seed < 12; seed++) {
            Random random = new Random(seed);
            MatchInput input = input(random);
            Plan plan =
                    new PlanMaker(new FallbackSearch()).make(input, Instant.EPOCH, Duration.ofSeconds(20), () -> false);
            PlanCheck.Facts facts = facts(input);
            assertThat(new PlanChecker().faults(plan, facts))
                    .as("before the change")
                    .isEmpty();
            if (plan.filled() > 1) {
                goods.add(new Good(plan, facts));
            }
        }
        assertThat(goods).hasSizeGreaterThan(8);
        return goods;
    }

    private static MatchInput input(Random random) {
        List<NeckDesign> designs = List.of(
                Shelf.design().code("D-1").angles(8 + random.nextInt(6)).build(),
                Shelf.design()
                        .code("D-2")
                        .angles(10, 13)
                        .match(MatchRule.SAME_PIECE)
                        .allowances("2", "2")
                        .build(),
                Shelf.design().code("D-3").only(Arrangement.OVERLAID).noWings().build(),
                Shelf.design().code(LINED).linesMeet().build());
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            Shelf.PieceBuilder piece = Shelf.piece(
                    "P" + (char) ('A' + i),
                    String.valueOf(260 + random.nextInt(1_000)),
                    String.valueOf(66 + random.nextInt(30)),
                    String.valueOf(23 + random.nextInt(4)));
            if (random.nextInt(3) == 0) {
                piece.trims(String.valueOf(random.nextInt(20)), String.valueOf(random.nextInt(20)));
            }
            if (random.nextInt(4) == 0) {
                piece.knot("130", "150", true);
            }
            pieces.add(i % 3 == 0 ? glued(piece.build(), STRIP_UM / 2) : piece.build());
        }
        ShopRules shop = Shelf.shop();
        List<MatchInput.Line> lines = List.of(
                Shelf.line("O-1", designs.get(0), 2),
                Shelf.line("O-2", designs.get(1), 2),
                Shelf.line("O-3", designs.get(2), 2),
                Shelf.line("O-4", designs.get(3), 2));
        return new MatchInput(
                Shelf.WEEK,
                lines,
                designs,
                pieces,
                shop.settings(),
                List.of(shop.saws().get(0), Shelf.saw("wide", "3", "1.5")),
                Shelf.DAY,
                Shelf.WOODS);
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
    void rejectsEveryPlanThatWasSpoilt() {
        List<Good> goods = goods();
        List<String> names = new ArrayList<>(SPOILS.keySet());
        names.addAll(TURNS.keySet());
        Map<String, Integer> told = new LinkedHashMap<>();
        List<String> passed = new ArrayList<>();
        Random random = new Random(2_026);
        int spoilt = 0;
        for (int i = 0; spoilt < SPOILT; i++) {
            String name = names.get(i % names.size());
            Good good = any(goods, random);
            Spoil spoil = SPOILS.get(name);
            Turn turn = TURNS.get(name);
            Plan plan = spoil == null ? good.plan() : spoil.spoil(good.plan(), random);
            PlanCheck.Facts facts = turn == null ? good.facts() : turn.turn(good, random);
            if (plan == null || facts == null || new Good(plan, facts).equals(good)) {
                continue;
            }
            spoilt++;
            told.merge(name, 1, Integer::sum);
            List<String> faults = new PlanChecker().faults(plan, facts);
            if (faults.isEmpty()) {
                passed.add(name + " (" + i + ")");
            }
            assertThat(faults).as(name).allMatch(f -> f.contains(ONLY.getOrDefault(name, "")));
        }
        assertThat(passed).isEmpty();
        assertThat(told.keySet()).as("every way was tried").containsExactlyInAnyOrderElementsOf(names);
    }

    // ---- what a plan was made from ---------------------------------------------------------------------------------

    private static PlanCheck.Facts withPiece(PlanCheck.Facts f, String code, UnaryOperator<Piece> change) {
        return new PlanCheck.Facts(
                f.pieces().stream()
                        .map(p -> p.code().equals(code) ? change.apply(p) : p)
                        .toList(),
                f.designs(),
                f.orders(),
                f.settings(),
                f.saws(),
                f.today());
    }

    private static PlanCheck.Facts withPlaner(PlanCheck.Facts f, Length shortest) {
        ShopSettings s = f.settings();
        ShopSettings longer = new ShopSettings(
                s.unit(),
                s.currency(),
                s.planingPerFace(),
                s.edgeAllowance(),
                s.neckStraightness(),
                shortest,
                s.usableRestLength(),
                s.usableRestWidth(),
                s.neckGrainSlope(),
                s.driest(),
                s.wettest(),
                s.moistureApart());
        return new PlanCheck.Facts(f.pieces(), f.designs(), f.orders(), longer, f.saws(), f.today());
    }

    /** A line of glue on either side of the middle, so far from it. */
    private static Piece glued(Piece p, long half) {
        long side = p.width().length().um() / 2 - half;
        return of(p, strips(p, side, 2 * half), p.lotReadyOn(), p.moisture());
    }

    /** One line of glue, so far off the middle. */
    private static Piece lined(Piece p, long off) {
        return of(p, strips(p, p.width().length().um() / 2 + off), p.lotReadyOn(), p.moisture());
    }

    private static PieceWood strips(Piece p, long... widths) {
        List<PieceWood.LaminationStrip> strips = new ArrayList<>();
        long left = p.width().length().um();
        for (long width : widths) {
            strips.add(new PieceWood.LaminationStrip("maple_sugar", um(width), GrainCut.UNKNOWN));
            left -= width;
        }
        strips.add(new PieceWood.LaminationStrip("maple_sugar", um(left), GrainCut.UNKNOWN));
        return new PieceWood.Lamination(strips);
    }

    private static Piece stocked(Piece p, @Nullable LocalDate ready, @Nullable MoistureReading moisture) {
        return of(p, p.wood(), ready, moisture);
    }

    private static Piece of(Piece p, PieceWood wood, @Nullable LocalDate ready, @Nullable MoistureReading moisture) {
        return new Piece(
                p.id(),
                p.version(),
                p.code(),
                p.state(),
                wood,
                p.length(),
                p.width(),
                p.thickness(),
                p.grain(),
                p.grainSlope(),
                moisture,
                p.warp(),
                p.trimLeft(),
                p.trimRight(),
                p.defects(),
                p.setAside(),
                p.neckAllowed(),
                p.lot(),
                ready,
                p.place(),
                p.cost(),
                p.note(),
                p.since());
    }

    // ---- changing one thing ----------------------------------------------------------------------------------------

    private interface PartChange {
        Part change(Part part, Random random);
    }

    private interface PairingChange {
        @Nullable
        Pairing change(Pairing pairing, Random random);
    }

    private interface LayoutSpoil {
        @Nullable
        Plan spoil(Plan plan, PieceLayout layout, Random random);
    }

    private interface LayoutChange {
        @Nullable
        PieceLayout change(PieceLayout layout, Random random);
    }

    private static void part(String name, PartChange change) {
        pairing(
                name,
                (p, r) -> r.nextBoolean()
                        ? pairing(p, change.change(p.neck(), r), p.head())
                        : pairing(p, p.neck(), change.change(p.head(), r)));
    }

    private static void pairing(String name, PairingChange change) {
        SPOILS.put(name, (plan, r) -> {
            Pairing p = any(plan.pairings(), r);
            Pairing changed = change.change(p, r);
            return changed == null ? null : with(plan, p, changed);
        });
    }

    private static void layout(String name, LayoutSpoil spoil) {
        SPOILS.put(name, (plan, r) -> spoil.spoil(plan, any(plan.layouts(), r), r));
    }

    private static void change(String name, LayoutChange change) {
        layout(name, (plan, l, r) -> {
            PieceLayout changed = change.change(l, r);
            return changed == null ? null : with(plan, l, changed);
        });
    }

    private static <T> T any(List<T> list, Random random) {
        return list.get(random.nextInt(list.size()));
    }

    private static Length um(long um) {
        return Length.ofUm(um);
    }

    /** A tenth of a millimetre to twenty. */
    private static long by(Random random) {
        return 100L + random.nextInt(20_000);
    }

    private static long anyway(Random random) {
        return random.nextBoolean() ? by(random) : -by(random);
    }

    /** One to fifty cubic centimetres. */
    private static Volume some(Random random) {
        return Volume.of(Length.ofMm(10), Length.ofMm(10), Length.ofMm(10 + random.nextInt(500)));
    }

    private static Part moved(Part p, long by) {
        return new Part(
                p.piece(),
                p.lane(),
                um(p.from().um() + by),
                um(p.to().um() + by),
                p.bevelAtLeft(),
                p.shortSide(),
                p.longSide(),
                p.width(),
                p.thickness());
    }

    private static Part sized(Part p, Length width, Length thickness) {
        return new Part(
                p.piece(), p.lane(), p.from(), p.to(), p.bevelAtLeft(), p.shortSide(), p.longSide(), width, thickness);
    }

    private static Part on(Part p, String piece) {
        return new Part(
                piece,
                p.lane(),
                p.from(),
                p.to(),
                p.bevelAtLeft(),
                p.shortSide(),
                p.longSide(),
                p.width(),
                p.thickness());
    }

    private static Pairing pairing(Pairing p, Part neck, Part head) {
        return new Pairing(
                p.order(),
                p.number(),
                p.design(),
                p.arrangement(),
                p.angle(),
                neck,
                head,
                p.wingWidth(),
                p.seamFromNut(),
                p.reasons());
    }

    private static Pairing joint(Pairing p, @Nullable Length wing, @Nullable Length seam) {
        return new Pairing(
                p.order(),
                p.number(),
                p.design(),
                p.arrangement(),
                p.angle(),
                p.neck(),
                p.head(),
                wing,
                seam,
                p.reasons());
    }

    private static Pairing numbered(Pairing p, String order, int number) {
        return new Pairing(
                order,
                number,
                p.design(),
                p.arrangement(),
                p.angle(),
                p.neck(),
                p.head(),
                p.wingWidth(),
                p.seamFromNut(),
                p.reasons());
    }

    private static PieceLayout named(PieceLayout l, String piece, long version) {
        return new PieceLayout(
                piece,
                version,
                l.length(),
                l.width(),
                l.thickness(),
                l.sawnThickness(),
                l.saw(),
                l.cuts(),
                l.rests(),
                l.trims(),
                l.books());
    }

    private static PieceLayout shaped(PieceLayout l, Length length, Length sawn, String saw) {
        return new PieceLayout(
                l.piece(),
                l.pieceVersion(),
                length,
                l.width(),
                l.thickness(),
                sawn,
                saw,
                l.cuts(),
                l.rests(),
                l.trims(),
                l.books());
    }

    private static PieceLayout of(
            PieceLayout l, List<Cut> cuts, List<Stretch> rests, List<Stretch> trims, Books books) {
        return new PieceLayout(
                l.piece(),
                l.pieceVersion(),
                l.length(),
                l.width(),
                l.thickness(),
                l.sawnThickness(),
                l.saw(),
                cuts,
                rests,
                trims,
                books);
    }

    private static Cut cut(Cut c, long from, long to) {
        return new Cut(c.lane(), um(from), um(to), c.angle(), c.shared());
    }

    private static PieceLayout cuts(PieceLayout l, Random random, UnaryOperator<Cut> change) {
        List<Cut> all = new ArrayList<>(l.cuts());
        all.replaceAll(one(all, random, change));
        return of(l, all, l.rests(), l.trims(), l.books());
    }

    private static @Nullable PieceLayout rests(PieceLayout l, Random random, UnaryOperator<Stretch> change) {
        if (l.rests().isEmpty()) {
            return null;
        }
        List<Stretch> all = new ArrayList<>(l.rests());
        all.replaceAll(one(all, random, change));
        return of(l, l.cuts(), all, l.trims(), l.books());
    }

    private static Stretch stretch(Stretch s, long from, long to, boolean usable) {
        return new Stretch(s.lane(), um(from), um(to), s.width(), usable);
    }

    private static <T> UnaryOperator<T> one(List<T> all, Random random, UnaryOperator<T> change) {
        T chosen = any(all, random);
        return t -> t.equals(chosen) ? change.apply(t) : t;
    }

    /** The line with this number among the eight; input when below 0. */
    private static Books moved(Books b, int from, int to, Volume volume) {
        Volume[] lines = {
            b.parts(), b.kerf(), b.bevel(), b.edge(), b.trim(), b.planing(), b.usableRest(), b.unusableRest()
        };
        if (from >= 0) {
            lines[from] = lines[from].minus(volume);
        }
        lines[to] = lines[to].plus(volume);
        return new Books(
                b.input(), lines[0], lines[1], lines[2], lines[3], lines[4], lines[5], lines[6], lines[7], b.rescued());
    }

    private static Plan books(Plan plan, PieceLayout layout, Books books) {
        return with(plan, layout, of(layout, layout.cuts(), layout.rests(), layout.trims(), books));
    }

    private static Plan with(Plan plan, Pairing old, Pairing changed) {
        List<Pairing> all = new ArrayList<>(plan.pairings());
        all.set(all.indexOf(old), changed);
        return with(plan, all, plan.layouts(), plan.books());
    }

    /** The sum follows, so that it is the layout that is wrong and not the sum. */
    private static Plan with(Plan plan, PieceLayout old, PieceLayout changed) {
        List<PieceLayout> all = new ArrayList<>(plan.layouts());
        all.set(all.indexOf(old), changed);
        return with(
                plan, plan.pairings(), all, all.stream().map(PieceLayout::books).reduce(Books.NOTHING, Books::plus));
    }

    private static Plan with(Plan p, List<Pairing> pairings, List<PieceLayout> layouts, Books books) {
        return new Plan(
                p.id(),
                p.week(),
                p.state(),
                p.status(),
                p.madeAt(),
                p.engine(),
                p.seconds(),
                pairings.size(),
                p.ordered(),
                p.levels(),
                pairings,
                layouts,
                p.unfilled(),
                books);
    }

    private static Plan counted(Plan p, int filled, int ordered) {
        return new Plan(
                p.id(),
                p.week(),
                p.state(),
                p.status(),
                p.madeAt(),
                p.engine(),
                p.seconds(),
                filled,
                ordered,
                p.levels(),
                p.pairings(),
                p.layouts(),
                p.unfilled(),
                p.books());
    }
}
