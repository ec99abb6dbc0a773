package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.EveryPlan.Rule;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.SawKind;
import org.scarfwright.shop.ShopSettings;

/**
 * Random weeks of a few necks and a few pieces, the same for the same seed. Whatever a rule asks about lies near its limit when
 * the rule is among those a week is about; else it is well within it.
 */
final class RuleWeeks {
    private static final String[] WOODS = {"maple_sugar", "walnut_black", "cherry_black"};

    private final Set<Rule> about;
    private final Random random;
    private final List<NeckDesign> designs = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Hand> hands = new ArrayList<>();

    private RuleWeeks(Set<Rule> about, long seed) {
        this.about = about;
        random = new Random(seed);
    }

    static MatchInput about(Rule rule, long seed) {
        return new RuleWeeks(
                        EnumSet.of(rule), seed * 37 + List.of(Rule.values()).indexOf(rule))
                .week();
    }

    /** A week about every rule with one chance in three. */
    static MatchInput aboutMany(long seed) {
        Random random = new Random(~seed);
        Set<Rule> about = EnumSet.noneOf(Rule.class);
        for (Rule rule : Rule.values()) {
            if (random.nextInt(3) == 0) {
                about.add(rule);
            }
        }
        return new RuleWeeks(about, seed).week();
    }

    private boolean is(Rule rule) {
        return about.contains(rule);
    }

    private boolean chance(int in) {
        return random.nextInt(in) == 0;
    }

    private String mm(double from, double to) {
        return String.format(Locale.ROOT, "%.1f", from + random.nextDouble() * (to - from));
    }

    private MatchInput week() {
        int lines = is(Rule.PRIORITY) || is(Rule.KEPT_BY_HAND) ? 2 : 1 + random.nextInt(2);
        List<MatchInput.Line> asked = new ArrayList<>();
        for (int l = 0; l < lines; l++) {
            NeckDesign design = l > 0 && chance(2) ? designs.get(0) : design("D-" + (l + 1));
            designs.add(design);
            int necks = lines == 1 ? 1 + random.nextInt(2) : 1;
            MatchInput.Line line = Shelf.line("O-" + (l + 1), design, necks);
            asked.add(
                    is(Rule.PRIORITY)
                            ? new MatchInput.Line(line.order(), design, line.numbers(), 1 + random.nextInt(9))
                            : line);
        }
        int count = 2 + random.nextInt(2);
        for (int p = 0; p < count; p++) {
            pieces.add(piece("P" + (p + 1)));
        }
        decideByHand();
        return new MatchInput(
                Shelf.WEEK,
                Plan.Asked.WEEK,
                asked,
                designs.stream().distinct().toList(),
                pieces,
                settings(),
                saws(),
                Shelf.DAY,
                hands,
                List.of(),
                Shelf.WOODS);
    }

    private ShopSettings settings() {
        ShopSettings s = Shelf.settings("1", "2");
        boolean freeRests = !is(Rule.USABLE_RESTS);
        return new ShopSettings(
                s.unit(),
                s.currency(),
                s.planingPerFace(),
                s.edgeAllowance(),
                is(Rule.STRAIGHTNESS) ? s.neckStraightness() : Shelf.mm("20"),
                is(Rule.SHORTEST_MACHINED) ? s.shortestMachined() : Shelf.mm("50"),
                Shelf.mm(freeRests ? "120" : mm(60, 300)),
                Shelf.mm(freeRests || chance(2) ? "40" : "88"),
                s.neckGrainSlope(),
                s.driest(),
                s.wettest(),
                s.moistureApart());
    }

    private List<Saw> saws() {
        if (!is(Rule.SAW)) {
            return Shelf.shop().saws();
        }
        List<Saw> saws = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(2); i++) {
            saws.add(new Saw(
                    "saw " + i,
                    "Saw " + i,
                    SawKind.MITRE,
                    Shelf.mm(i == 0 ? "1" : "2.4"),
                    Shelf.mm(mm(80, 110)),
                    Shelf.mm(mm(80, 140)),
                    Angle.ofDegrees(8 + random.nextInt(4)),
                    Angle.ofDegrees(11 + random.nextInt(4)),
                    Shelf.mm(i == 0 ? "1.5" : "3"),
                    new Angle(500)));
        }
        return saws;
    }

    private NeckDesign design(String code) {
        int angle = 10 + random.nextInt(4);
        Shelf.DesignBuilder d = Shelf.design()
                .code(code)
                .neck(mm(430, 470), is(Rule.WINGS) ? "58" : "70", "20")
                .head(is(Rule.SEAM) ? mm(80, 130) : mm(150, 190), "76", chance(2) ? "20" : "15")
                .allowances(chance(2) ? "0" : "2", "1");
        if (is(Rule.ANGLE_CHOICE)) {
            d.angles(angle, angle + 2);
        } else {
            d.angles(angle);
        }
        if (is(Rule.WINGS)) {
            d.only(Arrangement.UNDERLAID);
        } else if (!is(Rule.ARRANGEMENT_CHOICE) && chance(2)) {
            d.only(is(Rule.SEAM) || chance(2) ? Arrangement.UNDERLAID : Arrangement.OVERLAID);
        }
        if (is(Rule.WIDTH) && chance(2)) {
            d.noWings();
        }
        if (is(Rule.WOOD)) {
            d.woods(woods(), woods());
        }
        if (is(Rule.LINES_MEET)) {
            d.linesMeet();
        }
        List<MatchRule> alike = new ArrayList<>();
        if (is(Rule.SAME_WOOD)) {
            alike.add(MatchRule.SAME_WOOD);
        }
        if (is(Rule.SAME_LOT)) {
            alike.add(MatchRule.SAME_LOT);
        }
        if (is(Rule.SAME_PIECE)) {
            alike.add(MatchRule.SAME_PIECE);
        }
        return d.match(alike.isEmpty() ? MatchRule.ANY : alike.get(random.nextInt(alike.size())))
                .build();
    }

    private List<String> woods() {
        List<String> woods = new ArrayList<>();
        for (String wood : WOODS) {
            if (chance(2)) {
                woods.add(wood);
            }
        }
        return woods;
    }

    private Piece piece(String code) {
        String length = length();
        double wide = is(Rule.WINGS) || is(Rule.WIDTH) ? 62 + random.nextInt(24) : 86 + random.nextInt(10);
        String width = String.format(Locale.ROOT, "%.1f", wide);
        boolean thin = is(Rule.THICKNESS) || is(Rule.PAIRS_FLAT_TOGETHER);
        Shelf.PieceBuilder p = Shelf.piece(code, length, width, thin ? mm(18, 27) : mm(25, 29));
        warp(p);
        mark(p);
        wood(p, wide);
        if (chance(2)) {
            p.cost(300 + random.nextInt(3_000));
        }
        if (chance(5)) {
            p.since(Shelf.DAY.minusYears(2 + random.nextInt(3)).minusDays(random.nextInt(3)));
        }
        return p.build();
    }

    private String length() {
        if (is(Rule.SEVERAL_PARTS) || is(Rule.SHARED_BEVELS) || is(Rule.PAIRS_FLAT_TOGETHER)) {
            return mm(560, 860);
        }
        if (is(Rule.SHORTEST_MACHINED) || is(Rule.SEAM)) {
            return chance(2) ? mm(200, 420) : mm(520, 700);
        }
        if (is(Rule.SAME_PIECE)) {
            return mm(560, 760);
        }
        return chance(3) ? mm(200, 350) : mm(480, 680);
    }

    private void warp(Shelf.PieceBuilder p) {
        if (is(Rule.THICKNESS) || is(Rule.PAIRS_FLAT_TOGETHER)) {
            p.warp(mm(0, 5), mm(0, 2), chance(3) ? mm(0, 1) : "0", chance(3) ? mm(0, 3) : "0");
        } else if (is(Rule.WIDTH)) {
            p.warp("0", mm(0, 6), "0", "0");
        } else if (is(Rule.STRAIGHTNESS)) {
            p.bow(mm(0, 3));
        } else if (is(Rule.SECOND_READING)) {
            p.warp(mm(1, 4), mm(1, 10), "0", mm(0, 4)).middle(mm(0, 2.5), mm(0, 6), mm(0, 3));
        }
    }

    private void mark(Shelf.PieceBuilder p) {
        if (is(Rule.DEFECTS) && !chance(3)) {
            int at = 40 + random.nextInt(420);
            p.knot(String.valueOf(at), String.valueOf(at + 5 + random.nextInt(60)), !chance(4));
            if (chance(3)) {
                p.knot(String.valueOf(at + 10), String.valueOf(at + 80), true);
            }
        }
        if (is(Rule.TRIMS)) {
            p.trims(mm(0, 60), mm(0, 60));
        }
        if (is(Rule.MOISTURE_RANGE) && !chance(5)) {
            p.moisture(5 + random.nextInt(70) / 10.0);
        } else if (is(Rule.MOISTURE_PAIR) && !chance(6)) {
            p.moisture(chance(2) ? 6 + random.nextInt(10) / 10.0 : 8 + random.nextInt(20) / 10.0);
        }
        if (is(Rule.GRAIN_SLOPE) && !chance(5)) {
            p.slope(10 + random.nextInt(10));
        }
        if (is(Rule.SET_ASIDE) && chance(2)) {
            p.setAside(chance(4));
        }
        if (is(Rule.FREE) && chance(3)) {
            p.state(chance(2) ? PieceState.RESERVED : PieceState.AT_BENCH);
        }
        if (is(Rule.LOT_READY) && !chance(4)) {
            p.lot("L-9", Shelf.DAY.plusDays(random.nextInt(3) - 1L));
        } else if (is(Rule.SAME_LOT) && !chance(5)) {
            p.lot(chance(2) ? "L-1" : "L-2", null);
        }
    }

    private void wood(Shelf.PieceBuilder p, double wide) {
        if (is(Rule.LINES_MEET) && !chance(4)) {
            double inner = 8 + random.nextInt(3) * 0.4;
            double side = (wide - inner) / 2 + (chance(3) ? random.nextInt(3) * 0.4 : 0);
            p.strips(
                    WOODS[0],
                    String.format(Locale.ROOT, "%.2f", side),
                    WOODS[1],
                    String.format(Locale.ROOT, "%.2f", inner),
                    WOODS[0],
                    String.format(Locale.ROOT, "%.2f", wide - side - inner));
        } else if (is(Rule.WOOD) || is(Rule.SAME_WOOD)) {
            p.wood(WOODS[random.nextInt(WOODS.length)]);
        }
    }

    private void decideByHand() {
        if (is(Rule.LEFT_ALONE_BY_HAND)) {
            String one = any();
            hands.add(
                    chance(2)
                            ? new Hand.ForbidPair(one, chance(2) ? one : any())
                            : new Hand.Forbid(one, chance(2) ? null : "O-1"));
        }
        if (is(Rule.KEPT_BY_HAND)) {
            hands.add(new Hand.Keep(any(), chance(2) ? "O-1" : "O-2"));
        }
    }

    private String any() {
        return pieces.get(random.nextInt(pieces.size())).code();
    }
}
