package org.scarfwright.matching;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Plan.Books;
import org.scarfwright.matching.Plan.Cut;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.matching.Plan.Stretch;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;
import org.springframework.stereotype.Component;

/**
 * Checks a plan as a person with a rule and a square would: it draws every joint from its planes, lays every part on its
 * piece and looks whether it is there. It uses neither {@code Bevel} nor {@code ScarfJoint} nor {@code UsableSize} nor the
 * search, so that a slip in one of them does not hide itself.
 *
 * <p>Source: derived here from the planes of the joint and the laws of warp as the rack defines them.
 */
@Component
class PlanChecker implements PlanCheck {
    /** Every rounding on the way to a plan is one micrometre; a part takes part in a handful of them. */
    private static final double SLACK_UM = 5;

    /** Lamination lines that miss each other by less are taken to meet. Common practice. */
    private static final long LINES_OFF_UM = 500;

    /** Taken off a short piece by hand at most, both faces together. Common practice. */
    private static final long BY_HAND_UM = 6_000;

    @Override
    public List<String> faults(Plan plan, Facts facts) {
        return new Inspection(plan, facts).run();
    }

    private record Place(String piece, int lane) {}

    private record Laid(Pairing pairing, Part part, boolean neck) {
        String name() {
            return (neck ? "The neck" : "The head") + " of " + pairing.order() + " no. " + pairing.number();
        }
    }

    private static final class Inspection {
        private final Plan plan;
        private final Facts facts;
        private final Map<String, Piece> pieces = new HashMap<>();
        private final Map<String, NeckDesign> designs = new HashMap<>();
        private final Map<String, NeckOrder> orders = new HashMap<>();
        private final Map<String, Saw> saws = new HashMap<>();
        private final Map<String, PieceLayout> layouts = new HashMap<>();
        private final List<Laid> laid = new ArrayList<>();
        private final List<String> faults = new ArrayList<>();

        Inspection(Plan plan, Facts facts) {
            this.plan = plan;
            this.facts = facts;
            facts.pieces().forEach(p -> pieces.put(p.code(), p));
            facts.designs().forEach(d -> designs.put(d.code(), d));
            facts.orders().forEach(o -> orders.put(o.code(), o));
            facts.saws().forEach(s -> saws.put(s.code(), s));
        }

        List<String> run() {
            for (PieceLayout layout : plan.layouts()) {
                if (layouts.put(layout.piece(), layout) != null) {
                    fault("%s is cut twice.", layout.piece());
                }
                checkStock(layout);
            }
            for (Pairing pairing : plan.pairings()) {
                laid.add(new Laid(pairing, pairing.neck(), true));
                laid.add(new Laid(pairing, pairing.head(), false));
                checkPairing(pairing);
            }
            checkCounts();
            laid.forEach(this::checkPart);
            checkSpaceBetween();
            plan.layouts().forEach(this::checkTiling);
            checkBooks();
            facts.hands().forEach(this::checkHand);
            return faults;
        }

        private void fault(String sentence, Object... values) {
            faults.add(String.format(Locale.ROOT, sentence, values));
        }

        private void checkStock(PieceLayout layout) {
            Piece piece = pieces.get(layout.piece());
            if (piece == null) {
                fault("%s is not on the rack.", layout.piece());
                return;
            }
            if (piece.state() != PieceState.ON_RACK) {
                fault("%s is not free.", piece.code());
            }
            if (piece.version() != layout.pieceVersion()
                    || !piece.length().length().equals(layout.length())
                    || !piece.width().length().equals(layout.width())
                    || !piece.thickness().length().equals(layout.thickness())) {
                fault("%s is not the piece the plan was made for.", piece.code());
            }
            if (piece.lotReadyOn() != null && piece.lotReadyOn().isAfter(facts.today())) {
                fault("The lot of %s is not ready.", piece.code());
            }
            if (!saws.containsKey(layout.saw())) {
                fault("%s is cut on %s, which the shop does not have.", piece.code(), layout.saw());
            }
        }

        // ---- orders ------------------------------------------------------------------------------------------------

        private void checkCounts() {
            Map<String, Integer> made = new TreeMap<>();
            Set<String> numbers = new HashSet<>();
            for (Pairing p : plan.pairings()) {
                made.merge(p.order(), 1, Integer::sum);
                if (!numbers.add(p.order() + "/" + p.number())) {
                    fault("%s no. %d is made twice.", p.order(), p.number());
                }
            }
            int ordered = 0;
            for (NeckOrder order : facts.orders()) {
                ordered += order.quantity();
                int got = made.getOrDefault(order.code(), 0);
                int missing = plan.unfilled().stream()
                        .filter(u -> u.order().equals(order.code()))
                        .mapToInt(Plan.Unfilled::missing)
                        .sum();
                if (got > order.quantity() || got + missing != order.quantity()) {
                    fault(
                            "%s asks for %d; %d are made and %d are said to be missing.",
                            order.code(), order.quantity(), got, missing);
                }
            }
            if (plan.filled() != plan.pairings().size() || plan.ordered() != ordered) {
                fault(
                        "The plan says %d of %d; it makes %d of %d.",
                        plan.filled(), plan.ordered(), plan.pairings().size(), ordered);
            }
        }

        private void checkPairing(Pairing p) {
            NeckOrder order = orders.get(p.order());
            NeckDesign design = designs.get(p.design());
            if (order == null || design == null || !order.designCode().equals(p.design())) {
                fault("%s is no order for %s.", p.order(), p.design());
                return;
            }
            if (!design.angles().contains(p.angle()) || !design.arrangements().contains(p.arrangement())) {
                fault("%s does not allow %s at %s.", p.design(), p.arrangement().word(), p.angle());
            }
            Piece neck = pieces.get(p.neck().piece());
            Piece head = pieces.get(p.head().piece());
            if (neck == null || head == null) {
                return; // already told
            }
            boolean alike = switch (design.match()) {
                case ANY -> true;
                case SAME_WOOD -> neck.wood().key().equals(head.wood().key());
                case SAME_LOT -> neck.lot() != null && neck.lot().equals(head.lot());
                case SAME_PIECE -> neck.code().equals(head.code());
            };
            if (!alike) {
                fault("%s and %s are not matched as %s asks.", neck.code(), head.code(), design.code());
            }
            checkWoods(design.neckWoods(), neck);
            checkWoods(design.headWoods(), head);
            if (neck.moisture() != null && head.moisture() != null) {
                int apart = Math.abs(neck.moisture().content().hundredths()
                        - head.moisture().content().hundredths());
                if (apart > facts.settings().moistureApart().hundredths()) {
                    fault("%s and %s differ by %.2f points of moisture.", neck.code(), head.code(), apart / 100.0);
                }
            }
            if (design.linesMeet()) {
                checkLines(design, neck, head);
            }
            checkWings(p, design);
            checkSeam(p, design);
        }

        /**
         * Looks along the joint from either edge: every line of glue that shows across the narrower part goes on in the other
         * part, whichever face of the head is up. In halves of a micrometre from the middle, so that nothing is rounded.
         */
        private void checkLines(NeckDesign design, Piece neck, Piece head) {
            long across = Math.min(
                    design.neckWidth().um(), design.headWidth().length().um());
            Set<Long> inNeck = linesWithin(across, neck);
            Set<Long> inHead = linesWithin(across, head);
            boolean meet = inNeck.size() == inHead.size();
            for (long line : inNeck) {
                meet &= goesOn(line, inHead) && goesOn(-line, inHead);
            }
            for (long line : inHead) {
                meet &= goesOn(line, inNeck) && goesOn(-line, inNeck);
            }
            if (!meet) {
                fault("The lines of %s do not go on in %s.", neck.code(), head.code());
            }
        }

        /** Twice the distance of each line from the middle of the piece, to the left below 0. */
        private static Set<Long> linesWithin(long across, Piece piece) {
            Set<Long> lines = new HashSet<>();
            if (piece.wood() instanceof PieceWood.Lamination glued) {
                long left = 0;
                long right = piece.width().length().um();
                for (PieceWood.LaminationStrip strip : glued.strips()) {
                    left += strip.width().um();
                    right -= strip.width().um();
                    if (Math.abs(left - right) < across) {
                        lines.add(left - right);
                    }
                }
            }
            return lines;
        }

        private static boolean goesOn(long line, Set<Long> lines) {
            return lines.stream().anyMatch(other -> Math.abs(other - line) <= 2 * LINES_OFF_UM);
        }

        /** The seam crosses the head's face where the face of an underlaid neck runs out at the neck's back. */
        private void checkSeam(Pairing p, NeckDesign design) {
            Length told = p.seamFromNut();
            double seam = design.neckThickness().length().um()
                    / Math.sin(p.angle().toDegrees().doubleValue() * Math.PI / 180);
            boolean right = p.arrangement() == Arrangement.OVERLAID
                    ? told == null
                    : told != null && Math.abs(told.um() - seam) <= SLACK_UM;
            if (!right) {
                fault("The seam of %s no. %d is told in the wrong place.", p.order(), p.number());
            }
        }

        private void checkWoods(List<String> allowed, Piece piece) {
            if (!allowed.isEmpty() && !allowed.containsAll(piece.wood().speciesIds())) {
                fault("%s is not a wood that was asked for.", piece.code());
            }
        }

        private void checkWings(Pairing p, NeckDesign design) {
            long outline = design.headWidth().length().um();
            long without = p.arrangement() == Arrangement.OVERLAID
                    ? outline
                    : p.neck().width().um() - design.sideAllowance().length().um();
            if (p.wingWidth() == null) {
                if (without < outline) {
                    fault("%s no. %d needs wings and has none.", p.order(), p.number());
                }
            } else if (!design.wingsAllowed()) {
                fault("%s allows no wings.", design.code());
            } else if (without + 2 * p.wingWidth().um() < outline) {
                fault("The wings of %s no. %d are too narrow.", p.order(), p.number());
            }
        }

        // ---- one part ----------------------------------------------------------------------------------------------

        private void checkPart(Laid l) {
            Part part = l.part();
            PieceLayout layout = layouts.get(part.piece());
            Piece piece = pieces.get(part.piece());
            NeckDesign design = designs.get(l.pairing().design());
            Saw saw = layout == null ? null : saws.get(layout.saw());
            if (layout == null || piece == null || design == null || saw == null) {
                fault("%s lies on %s, which is not cut.", l.name(), part.piece());
                return;
            }
            checkLengths(l, design, saw);
            checkSection(l, piece, layout, design);
            checkHeldByMachine(l, piece, design);
            checkSaw(l, piece, saw);
            checkPlace(l, piece);
            checkCondition(l, piece);
        }

        private void checkLengths(Laid l, NeckDesign design, Saw saw) {
            Part part = l.part();
            double run = part.thickness().um() / Math.tan(radians(l));
            double needed = neededFront(l, design)
                    + design.endAllowance().length().um()
                    + saw.truing().um();
            if (part.shortSide().um() < needed - SLACK_UM) {
                fault(
                        "%s is %.3f mm too short.",
                        l.name(), (needed - part.shortSide().um()) / 1000);
            }
            if (Math.abs(part.longSide().um() - part.shortSide().um() - run) > SLACK_UM) {
                fault("%s has sides that do not fit its bevel.", l.name());
            }
            if (Math.abs(part.to().um() - part.from().um() - part.longSide().um()) > SLACK_UM) {
                fault("%s does not take the length it has.", l.name());
            }
        }

        /**
         * The length of a part's front face, from the planes of the assembled joint: x along the neck's top from the nut
         * toward the tip, y up, the neck's back at y = 0. In micrometres.
         */
        private static double neededFront(Laid l, NeckDesign design) {
            double t = design.neckThickness().length().um();
            double h = design.headThickness().length().um();
            double a = radians(l);
            Line top = new Line(0, t, 1, 0);
            Line back = new Line(0, 0, 1, 0);
            Line front = new Line(0, t, Math.cos(a), -Math.sin(a));
            Line under = new Line(-h * Math.sin(a), t - h * Math.cos(a), Math.cos(a), -Math.sin(a));
            boolean underlaid = l.pairing().arrangement() == Arrangement.UNDERLAID;
            if (l.neck()) {
                double nut = (underlaid ? top.along(front) : top.along(under));
                return design.neckLength().length().um() + nut;
            }
            double start = underlaid ? front.along(back) : 0;
            return design.headLength().length().um() - start;
        }

        private static double radians(Laid l) {
            return l.pairing().angle().toDegrees().doubleValue() * Math.PI / 180;
        }

        private void checkSection(Laid l, Piece piece, PieceLayout layout, NeckDesign design) {
            Part part = l.part();
            long finished = (l.neck() ? design.neckThickness() : design.headThickness())
                    .length()
                    .um();
            if (!part.thickness().equals(layout.sawnThickness())
                    || part.thickness().um() < finished) {
                fault("%s is sawn too thin.", l.name());
            }
            double ofLength =
                    part.longSide().um() / (double) piece.length().length().um();
            double ofWidth = part.width().um() / (double) piece.width().length().um();
            Warp warp = piece.warp();
            double bow = bent(warp.bow(), warp.middle().bow(), ofLength);
            double lost = bow
                    + warp.cup().um() * ofWidth * ofWidth
                    + turned(warp, ofLength) * ofWidth / 2
                    + 2.0 * facts.settings().planingPerFace().um();
            double left = piece.thickness().length().um() - lost;
            if (left < part.thickness().um() - SLACK_UM) {
                fault("%s keeps only %.3f mm of %s once it is flat.", l.name(), left / 1000, piece.code());
            }
            double wide = piece.width().length().um()
                    - bent(warp.crook(), warp.middle().crook(), ofLength)
                    - facts.settings().edgeAllowance().um();
            long side = design.sideAllowance().length().um();
            long finishedWidth = l.neck()
                    ? design.neckWidth().um()
                    : design.headWidth().length().um();
            if (part.width().um() < finishedWidth + side || wide < part.width().um() - SLACK_UM) {
                fault("%s has not the width it needs on %s.", l.name(), piece.code());
            }
            if (l.neck() && bow > facts.settings().neckStraightness().um() + SLACK_UM) {
                fault("%s is out by %.3f mm.", l.name(), bow / 1000);
            }
        }

        /** What the planer cannot hold is planed by hand, and nobody planes much by hand. */
        private void checkHeldByMachine(Laid l, Piece piece, NeckDesign design) {
            long finished = (l.neck() ? design.neckThickness() : design.headThickness())
                    .length()
                    .um();
            boolean held = piece.length().length().um()
                    >= facts.settings().shortestMachined().um();
            if (!held && piece.thickness().length().um() - finished > BY_HAND_UM) {
                fault("%s comes from %s, which is too short for the planer.", l.name(), piece.code());
            }
        }

        /** Rise of a part; a second reading tells whether the middle half or the quarters beside it are bent the more. */
        private static double bent(Length whole, @Nullable Length middle, double share) {
            if (middle == null) {
                return whole.um() * share * share;
            }
            double inner = middle.um();
            double all = whole.um() > 2 * inner ? whole.um() : 2 * inner;
            double outer = all - 3 * inner;
            double asWhole = inner > outer ? 4 * inner : 4 * outer;
            double rise = asWhole * share * share;
            return rise > all ? all : rise;
        }

        private static double turned(Warp warp, double share) {
            Length middle = warp.middle().twist();
            double whole = warp.twist().um();
            if (middle == null) {
                return whole * share;
            }
            double inner = middle.um();
            double perHalf = inner > whole - inner ? inner : whole - inner;
            return Math.min(Math.max(whole, inner), perHalf * share / 0.5);
        }

        private void checkSaw(Laid l, Piece piece, Saw saw) {
            double face = l.part().thickness().um() / Math.sin(radians(l));
            if (face > saw.reach().um() + SLACK_UM
                    || piece.width().length().isLongerThan(saw.depth())
                    || l.pairing().angle().compareTo(saw.shallowest()) < 0
                    || l.pairing().angle().compareTo(saw.steepest()) > 0) {
                fault("%s cannot be cut on %s.", l.name(), saw.code());
            }
        }

        private void checkPlace(Laid l, Piece piece) {
            Part part = l.part();
            long end = piece.length().length().um() - piece.trimRight().um();
            if (part.from().um() < piece.trimLeft().um() || part.to().um() > end) {
                fault("%s reaches past the sound wood of %s.", l.name(), piece.code());
            }
            for (Defect d : piece.defects()) {
                if (d.structural() && overlap(part.from(), part.to(), d.fromLength(), d.toLength()) > 0) {
                    fault("%s lies on a flaw of %s.", l.name(), piece.code());
                }
            }
        }

        private void checkCondition(Laid l, Piece piece) {
            if (piece.moisture() != null) {
                int percent = piece.moisture().content().hundredths();
                if (percent < facts.settings().driest().hundredths()
                        || percent > facts.settings().wettest().hundredths()) {
                    fault("%s is not at a moisture to glue at.", piece.code());
                }
            }
            if (!l.neck()) {
                return;
            }
            if (piece.setAside() && !piece.neckAllowed()) {
                fault("%s was laid aside and is used as a neck.", piece.code());
            }
            if (piece.grainSlope() != null
                    && piece.grainSlope() < facts.settings().neckGrainSlope()) {
                fault("The grain of %s is too steep for a neck.", piece.code());
            }
        }

        // ---- parts beside each other -------------------------------------------------------------------------------

        private void checkSpaceBetween() {
            Map<Place, List<Laid>> lanes = new HashMap<>();
            for (Laid l : laid) {
                lanes.computeIfAbsent(new Place(l.part().piece(), l.part().lane()), k -> new ArrayList<>())
                        .add(l);
            }
            lanes.forEach((place, parts) -> {
                parts.sort(Comparator.comparing((Laid l) -> l.part().from())
                        .thenComparing(l -> l.part().to()));
                for (int i = 0; i < parts.size(); i++) {
                    for (int j = i + 1; j < parts.size(); j++) {
                        checkApart(parts.get(i), parts.get(j));
                    }
                }
                PieceLayout layout = layouts.get(place.piece());
                if (layout != null) {
                    checkRests(layout, place.lane(), parts);
                }
            });
        }

        /** Between any two parts the saw passes once at least, square to the faces it cuts. */
        private void checkApart(Laid left, Laid right) {
            PieceLayout layout = layouts.get(left.part().piece());
            Saw saw = layout == null ? null : saws.get(layout.saw());
            if (saw == null) {
                return; // already told
            }
            Part a = left.part();
            Part b = right.part();
            double kerf = saw.kerf().um();
            if (b.from().um() - a.to().um() >= kerf - SLACK_UM) {
                return;
            }
            boolean share = !a.bevelAtLeft()
                    && b.bevelAtLeft()
                    && left.pairing().angle().equals(right.pairing().angle());
            double run = a.thickness().um() / Math.tan(radians(left));
            double between = b.from().um() + run - a.to().um();
            if (!share || between * Math.sin(radians(left)) < kerf - SLACK_UM) {
                fault("%s and %s overlap on %s.", left.name(), right.name(), a.piece());
            }
        }

        // ---- the whole piece ---------------------------------------------------------------------------------------

        /** A stretch of a piece and what it is. */
        private record Stripe(String what, long from, long to) {}

        /** Every stretch of every lane is a part, a cut, a rest or cut away, and nothing is two of them but a bevel. */
        private void checkTiling(PieceLayout layout) {
            TreeSet<Integer> lanes = new TreeSet<>();
            layout.cuts().forEach(c -> lanes.add(c.lane()));
            layout.rests().forEach(r -> lanes.add(r.lane()));
            List<Laid> here = laid.stream()
                    .filter(l -> l.part().piece().equals(layout.piece()))
                    .toList();
            here.forEach(l -> lanes.add(l.part().lane()));
            if (!lanes.isEmpty() && (lanes.first() != 1 || lanes.last() != lanes.size())) {
                fault("The lanes of %s are not counted from 1.", layout.piece());
            }
            for (int lane : lanes) {
                checkLane(
                        layout,
                        lane,
                        here.stream().filter(l -> l.part().lane() == lane).toList());
            }
            here.forEach(l -> checkBevelCut(layout, l));
            long bevels = layout.cuts().stream().filter(c -> c.angle() != null).count();
            long shared = layout.cuts().stream()
                    .filter(c -> c.angle() != null && c.shared())
                    .count();
            if (bevels + shared != here.size()) {
                fault("%s has bevel cuts that belong to no part.", layout.piece());
            }
        }

        private void checkLane(PieceLayout layout, int lane, List<Laid> parts) {
            List<Stripe> stripes = new ArrayList<>();
            parts.forEach(l -> stripes.add(
                    new Stripe("part", l.part().from().um(), l.part().to().um())));
            for (Cut c : layout.cuts()) {
                if (c.lane() == lane) {
                    stripes.add(new Stripe(
                            c.angle() == null ? "cut" : "bevel", c.from().um(), c.to().um()));
                }
            }
            for (Stretch r : layout.rests()) {
                if (r.lane() == lane) {
                    stripes.add(new Stripe("rest", r.from().um(), r.to().um()));
                }
            }
            layout.trims().forEach(t -> stripes.add(new Stripe("trim", t.from().um(), t.to().um())));
            stripes.sort(Comparator.comparingLong(Stripe::from).thenComparingLong(Stripe::to));
            long reached = 0;
            for (Stripe s : stripes) {
                if (s.from() > reached + SLACK_UM) {
                    fault(
                            "Between %d and %d µm %s is neither part nor cut nor rest.",
                            reached, s.from(), layout.piece());
                }
                reached = Math.max(reached, s.to());
            }
            long end = layout.length().um();
            if (Math.abs(reached - end) > SLACK_UM || stripes.get(0).from() < 0) {
                fault("What is laid on %s does not end where the piece does.", layout.piece());
            }
            for (int i = 0; i < stripes.size(); i++) {
                for (int j = i + 1; j < stripes.size(); j++) {
                    checkApart(layout, stripes.get(i), stripes.get(j));
                }
            }
        }

        /** Parts and their bevels lie in each other; parts beside each other are looked at elsewhere. */
        private void checkApart(PieceLayout layout, Stripe a, Stripe b) {
            boolean slanted = (a.what().equals("part") || a.what().equals("bevel"))
                    && (b.what().equals("part") || b.what().equals("bevel"))
                    && !(a.what().equals("bevel") && b.what().equals("bevel"));
            if (!slanted && Math.min(a.to(), b.to()) - Math.max(a.from(), b.from()) > SLACK_UM) {
                fault("A %s and a %s of %s lie in each other.", a.what(), b.what(), layout.piece());
            }
        }

        /** The bevel of a part is one of the cuts: it begins where the short side ends. */
        private void checkBevelCut(PieceLayout layout, Laid l) {
            Part p = l.part();
            Saw saw = saws.get(layout.saw());
            if (saw == null) {
                return; // already told
            }
            double a = radians(l);
            double run = layout.sawnThickness().um() / Math.tan(a);
            double length = run + saw.kerf().um() / Math.sin(a);
            double near = p.bevelAtLeft()
                    ? p.to().um() - p.shortSide().um()
                    : p.from().um() + p.shortSide().um();
            long found = layout.cuts().stream()
                    .filter(c -> c.lane() == p.lane() && l.pairing().angle().equals(c.angle()))
                    .filter(c -> Math.abs((p.bevelAtLeft() ? c.to() : c.from()).um() - near) <= SLACK_UM)
                    .filter(c -> Math.abs(c.to().um() - c.from().um() - length) <= SLACK_UM)
                    .count();
            if (found != 1) {
                fault("The bevel of %s is none of the cuts of %s.", l.name(), layout.piece());
            }
        }

        // ---- by hand -----------------------------------------------------------------------------------------------

        private void checkHand(Hand hand) {
            boolean kept = true;
            if (hand instanceof Hand.Pin pin) {
                kept = !orders.containsKey(pin.order())
                        || plan.pairings().stream()
                                .anyMatch(p -> p.order().equals(pin.order())
                                        && p.neck().piece().equals(pin.neck())
                                        && p.head().piece().equals(pin.head()));
            } else {
                for (Pairing p : plan.pairings()) {
                    kept &= keeps(hand, p, List.of(p.neck().piece(), p.head().piece()));
                }
            }
            if (!kept) {
                fault("The plan does not keep to what was decided: %s", hand.words());
            }
        }

        private boolean keeps(Hand hand, Pairing p, List<String> from) {
            if (hand instanceof Hand.Forbid f) {
                return !from.contains(f.piece())
                        || (f.order() != null && !f.order().equals(p.order()));
            }
            if (hand instanceof Hand.ForbidPair f) {
                return !from.equals(List.of(f.neck(), f.head()));
            }
            if (hand instanceof Hand.Keep k) {
                boolean shared = facts.hands().stream().anyMatch(h -> h.equals(new Hand.Keep(k.piece(), p.order())));
                return !from.contains(k.piece()) || shared;
            }
            if (hand instanceof Hand.Arrange a && a.order().equals(p.order())) {
                return (a.arrangement() == null || a.arrangement() == p.arrangement())
                        && (a.angle() == null || a.angle().equals(p.angle()));
            }
            return !(hand instanceof Hand.LeaveOut l) || !l.order().equals(p.order());
        }

        private void checkRests(PieceLayout layout, int lane, List<Laid> parts) {
            for (Stretch rest : layout.rests()) {
                if (rest.lane() != lane) {
                    continue;
                }
                for (Laid l : parts) {
                    if (overlap(l.part().from(), l.part().to(), rest.from(), rest.to()) > SLACK_UM) {
                        fault("%s lies on a rest of %s.", l.name(), layout.piece());
                    }
                }
                for (Cut cut : layout.cuts()) {
                    if (cut.lane() == lane && overlap(cut.from(), cut.to(), rest.from(), rest.to()) > SLACK_UM) {
                        fault("A cut goes through a rest of %s.", layout.piece());
                    }
                }
                boolean large = !rest.to()
                                .minus(rest.from())
                                .isShorterThan(facts.settings().usableRestLength())
                        && !rest.width().isShorterThan(facts.settings().usableRestWidth());
                if (rest.usable() && !large) {
                    fault("A rest of %s is too small to go back.", layout.piece());
                }
            }
        }

        private static long overlap(Length from, Length to, Length otherFrom, Length otherTo) {
            return Math.min(to.um(), otherTo.um()) - Math.max(from.um(), otherFrom.um());
        }

        // ---- books -------------------------------------------------------------------------------------------------

        private void checkBooks() {
            Books sum = Books.NOTHING;
            for (PieceLayout layout : plan.layouts()) {
                Books books = layout.books();
                sum = sum.plus(books);
                if (!books.difference().isZero() || someNegative(books)) {
                    fault("The books of %s do not close.", layout.piece());
                }
                if (!books.input().equals(Volume.of(layout.length(), layout.width(), layout.thickness()))) {
                    fault("The books of %s start from another piece.", layout.piece());
                }
                checkVolumes(layout, books);
                checkLosses(layout, books);
            }
            if (!sum.equals(plan.books())) {
                fault("The books of the plan are not the sum of its pieces.");
            }
        }

        private void checkVolumes(PieceLayout layout, Books books) {
            // Twice the side view of a part is (short + long) · thickness, a whole number; each part may lose half a
            // unit.
            BigInteger twice = BigInteger.ZERO;
            int count = 0;
            for (Laid l : laid) {
                if (l.part().piece().equals(layout.piece())) {
                    twice = twice.add(BigInteger.valueOf(l.part().shortSide().um()
                                    + l.part().longSide().um())
                            .multiply(BigInteger.valueOf(l.part().thickness().um()))
                            .multiply(BigInteger.valueOf(l.part().width().um())));
                    count++;
                }
            }
            BigInteger off = twice.subtract(books.parts().um3().shiftLeft(1)).abs();
            if (off.compareTo(BigInteger.valueOf(count)) > 0) {
                fault("The parts of %s have another volume than its books say.", layout.piece());
            }
            Volume back = Volume.ZERO;
            for (Stretch rest : layout.rests()) {
                if (rest.usable()) {
                    back = back.plus(Volume.of(rest.to().minus(rest.from()), rest.width(), layout.thickness()));
                }
            }
            if (!Objects.equals(back, books.usableRest())) {
                fault("The rests of %s have another volume than its books say.", layout.piece());
            }
            if (count == 0) {
                fault("%s is cut for nothing.", layout.piece());
            }
        }

        /** Kerf, wedges, planing, trims and small rests, each from the lengths on the piece; the edges are what is left. */
        private void checkLosses(PieceLayout layout, Books books) {
            double w = layout.width().um();
            double t = layout.thickness().um();
            double s = layout.sawnThickness().um();
            double kerf = 0;
            double bevel = 0;
            double sections = layout.length().um();
            for (Cut c : layout.cuts()) {
                double length = c.to().um() - c.from().um();
                if (c.angle() == null) {
                    kerf += length * w * t;
                    sections -= length;
                } else {
                    double run = s / Math.tan(c.angle().toDegrees().doubleValue() * Math.PI / 180);
                    kerf += (length - run) * w * s;
                    bevel += c.shared() ? 0 : run * s * w / 2;
                }
            }
            double trim = 0;
            for (Stretch x : layout.trims()) {
                double length = x.to().um() - x.from().um();
                trim += length * w * t;
                sections -= length;
            }
            double small = 0;
            for (Stretch r : layout.rests()) {
                double length = r.to().um() - r.from().um();
                small += r.usable() ? 0 : length * r.width().um() * t;
                sections -= length;
            }
            double slack = SLACK_UM * (2 + layout.cuts().size()) * w * t;
            boolean right = near(books.kerf(), kerf, slack)
                    && near(books.bevel(), bevel, slack)
                    && near(books.trim(), trim, slack)
                    && near(books.unusableRest(), small, slack)
                    && near(books.planing(), sections * w * (t - s), slack)
                    && (books.rescued().isZero() || books.rescued().equals(books.parts()));
            if (!right) {
                fault("The losses of %s are not what its cuts take.", layout.piece());
            }
        }

        private static boolean near(Volume told, double um3, double slack) {
            return Math.abs(told.um3().doubleValue() - um3) <= slack;
        }

        private static boolean someNegative(Books b) {
            return b.parts().signum() < 0
                    || b.kerf().signum() < 0
                    || b.bevel().signum() < 0
                    || b.edge().signum() < 0
                    || b.trim().signum() < 0
                    || b.planing().signum() < 0
                    || b.usableRest().signum() < 0
                    || b.unusableRest().signum() < 0;
        }
    }

    /** A line through a point along a unit direction. */
    private record Line(double x, double y, double dx, double dy) {
        /** How far along this line, from its point, the other one crosses it. */
        double along(Line other) {
            double det = dx * other.dy - dy * other.dx;
            return ((other.x - x) * other.dy - (other.y - y) * other.dx) / det;
        }
    }
}
