package org.scarfwright.matching;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopSettings;

/**
 * The best of every plan there is for a week's question, found by making them all: every neck left out or made, in every way its
 * design allows, from every pair of places on the rack, every piece under every thickness and saw, and the parts of a place
 * paired at their bevels in every way. Written from the written rules, in whole micrometres, with no call of a rule, of the
 * joint's formulae or of the search. Any rule can be switched off, which shows whether it decided anything. Only for a few necks.
 */
final class EveryPlan {
    /** What can be switched off. */
    enum Rule {
        LENGTH,
        WIDTH,
        THICKNESS,
        STRAIGHTNESS,
        SECOND_READING,
        ARRANGEMENT_CHOICE,
        ANGLE_CHOICE,
        SAW,
        SEAM,
        WOOD,
        SAME_WOOD,
        SAME_LOT,
        SAME_PIECE,
        LINES_MEET,
        MOISTURE_RANGE,
        MOISTURE_PAIR,
        LOT_READY,
        FREE,
        DEFECTS,
        TRIMS,
        GRAIN_SLOPE,
        SHORTEST_MACHINED,
        SET_ASIDE,
        WINGS,
        SEVERAL_PARTS,
        SHARED_BEVELS,
        PAIRS_FLAT_TOGETHER,
        USABLE_RESTS,
        PRIORITY,
        LEFT_ALONE_BY_HAND,
        KEPT_BY_HAND
    }

    private static final double KM_UM = 1e9;

    private record Part(boolean neck, NeckDesign design, Angle angle, long bareUm, long thickUm, long wideUm) {
        List<String> woods() {
            return neck ? design.neckWoods() : design.headWoods();
        }
    }

    private record Way(Part neck, Part head) {}

    /** A clear stretch of a piece brought to a thickness for a saw, and which parts may lie on it. */
    private record Place(int piece, int preparation, long lengthUm, Map<Part, Boolean> mayShare) {}

    private record Preparation(long sawnUm, Saw saw, List<Place> places) {}

    private record Choice(Way way, Place neck, Place head) {}

    private final MatchInput input;
    private final ShopSettings settings;
    private final Set<Rule> off;
    private final List<Piece> pieces;
    private final Map<NeckDesign, List<Way>> ways = new HashMap<>();
    private final List<List<Preparation>> preparations = new ArrayList<>();
    private final List<List<Choice>> choices = new ArrayList<>();
    private final long shortUnder;

    private final int[] prepared;
    private final int[] users;
    private final Map<Place, List<Part>> lying = new HashMap<>();
    private final Map<Place, Map<List<Part>, Long>> known = new HashMap<>();
    private final long[] made;
    private long @Nullable [] best;

    private EveryPlan(MatchInput input, Set<Rule> off) {
        this.input = input;
        this.settings = input.settings();
        this.off = off;
        this.pieces = input.pieces();
        for (MatchInput.Line line : input.lines()) {
            ways.computeIfAbsent(line.design(), this::waysOf);
        }
        shortUnder = input.designs().stream()
                .map(this::waysOf)
                .filter(w -> !w.isEmpty())
                .mapToLong(of -> of.stream()
                        .mapToLong(w -> section(
                                w.neck(), w.neck().thickUm(), input.saws().get(0)))
                        .max()
                        .orElseThrow())
                .min()
                .orElse(570_000);
        for (int p = 0; p < pieces.size(); p++) {
            preparations.add(prepare(p));
        }
        for (MatchInput.Line line : input.lines()) {
            choices.add(choicesOf(line));
        }
        prepared = new int[pieces.size()];
        users = new int[pieces.size()];
        made = new long[input.lines().size()];
    }

    /** Priorities filled, hundredths, pieces, set-ups, cubic millimetres planed, of the best plan. */
    static long[] levels(MatchInput input) {
        return levels(input, EnumSet.noneOf(Rule.class));
    }

    /** The same in a shop that does not know some rules. */
    static long[] levels(MatchInput input, Set<Rule> off) {
        EveryPlan all = new EveryPlan(input, off);
        all.fill(0, 0, 0);
        long[] best = all.best;
        if (best == null) {
            throw new IllegalStateException("not even the empty plan was tried");
        }
        return best;
    }

    private boolean on(Rule rule) {
        return !off.contains(rule);
    }

    // ---- the parts -------------------------------------------------------------------------------------------------

    private List<Way> waysOf(NeckDesign d) {
        List<Way> found = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            boolean first = d.arrangements().get(0) == arrangement;
            if (!d.arrangements().contains(arrangement) || (!on(Rule.ARRANGEMENT_CHOICE) && !first)) {
                continue;
            }
            for (Angle angle : on(Rule.ANGLE_CHOICE) ? d.angles() : d.angles().subList(0, 1)) {
                boolean underlaid = arrangement == Arrangement.UNDERLAID;
                double t = d.neckThickness().length().um();
                double h = d.headThickness().length().um();
                double n = d.neckLength().length().um();
                double head = d.headLength().length().um();
                double a = radians(angle);
                // The top of the neck against the plane of the head's back, and the head's front against the neck's
                // back.
                double behind = crossing(h, a);
                double seam = crossing(t, a);
                double neckFront = underlaid ? n : n - behind;
                double headFront = underlaid ? head - seam : head;
                double neckBack = neckFront + t / Math.tan(a);
                double headBack = headFront + h / Math.tan(a);
                boolean lies = neckFront > 0 && headFront > 0 && (underlaid ? neckBack >= behind : headBack >= seam);
                if (!lies && on(Rule.SEAM)) {
                    continue;
                }
                long side = d.sideAllowance().length().um();
                long end = d.endAllowance().length().um();
                long outline = d.headWidth().length().um() + side;
                long own = d.neckWidth().um() + side;
                boolean wings = d.wingsAllowed() && on(Rule.WINGS);
                long neckWide = underlaid && !wings ? Math.max(own, outline) : own;
                found.add(new Way(
                        new Part(true, d, angle, up(Math.max(0, neckFront)) + end, (long) t, neckWide),
                        new Part(false, d, angle, up(Math.max(0, headFront)) + end, (long) h, outline)));
            }
        }
        return found;
    }

    /** How far along one line it is to another at this angle that lies so far below: walked down until it is reached. */
    private static double crossing(double below, double angle) {
        double low = 0;
        double high = below / angle * 2 + below;
        for (int i = 0; i < 200; i++) {
            double middle = (low + high) / 2;
            if (middle * Math.sin(angle) < below) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static double radians(Angle angle) {
        return angle.millidegrees() * Math.PI / 180_000;
    }

    /** Up to a whole micrometre; what is one but for the last digits is one. */
    private static long up(double um) {
        return (long) Math.ceil(um - 1e-3);
    }

    private static long down(double um) {
        return (long) Math.floor(um + 1e-3);
    }

    private static long run(long sawn, Angle angle) {
        return up(sawn / Math.tan(radians(angle)));
    }

    private static long cut(Saw saw, Angle angle) {
        return up(saw.kerf().um() / Math.sin(radians(angle)));
    }

    private static long shortSide(Part part, Saw saw) {
        return part.bareUm() + saw.truing().um();
    }

    /** Crosscut to this, before the bevel is cut. */
    private static long section(Part part, long sawn, Saw saw) {
        return shortSide(part, saw) + run(sawn, part.angle()) + cut(saw, part.angle());
    }

    // ---- the pieces ------------------------------------------------------------------------------------------------

    private List<long[]> clear(Piece piece) {
        long from = on(Rule.TRIMS) ? piece.trimLeft().um() : 0;
        long to = piece.length().length().um()
                - (on(Rule.TRIMS) ? piece.trimRight().um() : 0);
        TreeSet<Long> ends = new TreeSet<>(List.of(from, to));
        List<Defect> flaws = piece.defects().stream()
                .filter(d -> d.structural() && on(Rule.DEFECTS))
                .toList();
        for (Defect d : flaws) {
            for (long at : new long[] {d.fromLength().um(), d.toLength().um()}) {
                if (at > from && at < to) {
                    ends.add(at);
                }
            }
        }
        // Between two ends all is flawed or nothing; stretches that touch are one.
        List<long[]> stretches = new ArrayList<>();
        long left = from;
        for (long right : ends.tailSet(from, false)) {
            long start = left;
            boolean flawed = flaws.stream()
                    .anyMatch(d -> d.fromLength().um() < right && d.toLength().um() > start);
            if (!flawed && !stretches.isEmpty() && stretches.get(stretches.size() - 1)[1] == start) {
                stretches.get(stretches.size() - 1)[1] = right;
            } else if (!flawed && right > start) {
                stretches.add(new long[] {start, right});
            }
            left = right;
        }
        return stretches;
    }

    private long longest(Piece piece) {
        return clear(piece).stream().mapToLong(s -> s[1] - s[0]).max().orElse(0);
    }

    private double share(Piece piece, long lengthUm) {
        return Math.min(1, lengthUm / (double) piece.length().length().um());
    }

    /** Rise over a part: one arc through a single reading; with a second one the sharper bend, all over. */
    private double rise(Length whole, @Nullable Length middle, double share) {
        double all = whole.um();
        if (middle == null || !on(Rule.SECOND_READING)) {
            return all * share * share;
        }
        double inner = middle.um();
        all = Math.max(all, 2 * inner);
        double quarters = all - 3 * inner;
        return Math.min(all, 4 * Math.max(inner, quarters) * share * share);
    }

    private double turn(Warp warp, double share) {
        Length middle = warp.middle().twist();
        if (middle == null || !on(Rule.SECOND_READING)) {
            return warp.twist().um() * share;
        }
        double inner = middle.um();
        double whole = warp.twist().um();
        double all = Math.max(whole, inner);
        return Math.min(all, 2 * Math.max(inner, all - inner) * share);
    }

    /** Flat on both faces over its whole width. */
    private long thickOver(Piece piece, long lengthUm) {
        double share = share(piece, lengthUm);
        Warp warp = piece.warp();
        double lost = rise(warp.bow(), warp.middle().bow(), share) + warp.cup().um() + turn(warp, share) / 2;
        return down(piece.thickness().length().um() - lost)
                - 2 * settings.planingPerFace().um();
    }

    private long wideOver(Piece piece, long lengthUm) {
        Warp warp = piece.warp();
        return down(piece.width().length().um()
                        - rise(warp.crook(), warp.middle().crook(), share(piece, lengthUm)))
                - settings.edgeAllowance().um();
    }

    private boolean makes(Saw saw, Piece piece, long sawn, Angle angle) {
        return !on(Rule.SAW)
                || (angle.millidegrees() >= saw.shallowest().millidegrees()
                        && angle.millidegrees() <= saw.steepest().millidegrees()
                        && piece.width().length().um() <= saw.depth().um()
                        && up(sawn / Math.sin(radians(angle))) <= saw.reach().um());
    }

    private @Nullable Saw firstSaw(Piece piece, long sawn, Angle angle) {
        return input.saws().stream()
                .filter(s -> makes(s, piece, sawn, angle))
                .findFirst()
                .orElse(null);
    }

    /** All that does not depend on where on the piece the part lies. */
    private boolean canGive(Piece piece, Part part, long sawn, Saw saw) {
        long section = section(part, sawn, saw);
        boolean ready = piece.lotReadyOn() == null || !piece.lotReadyOn().isAfter(input.day());
        boolean held =
                piece.length().length().um() >= settings.shortestMachined().um()
                        || piece.thickness().length().um() - part.thickUm() <= 6_000;
        return (piece.state() == PieceState.ON_RACK || !on(Rule.FREE))
                && (ready || !on(Rule.LOT_READY))
                && (woodSuits(piece, part) || !on(Rule.WOOD))
                && (dryEnough(piece) || !on(Rule.MOISTURE_RANGE))
                && (!part.neck() || goodForNecks(piece, part, sawn, saw))
                && makes(saw, piece, sawn, part.angle())
                && (section <= longest(piece) || !on(Rule.LENGTH))
                && (part.wideUm() <= wideOver(piece, section) || !on(Rule.WIDTH))
                && (sawn <= thickOver(piece, section) || !on(Rule.THICKNESS))
                && part.thickUm() <= sawn
                && (held || !on(Rule.SHORTEST_MACHINED));
    }

    private static boolean woodSuits(Piece piece, Part part) {
        return part.woods().isEmpty() || piece.wood().speciesIds().stream().allMatch(part.woods()::contains);
    }

    private boolean dryEnough(Piece piece) {
        if (piece.moisture() == null) {
            return true;
        }
        int content = piece.moisture().content().hundredths();
        return content >= settings.driest().hundredths()
                && content <= settings.wettest().hundredths();
    }

    private boolean goodForNecks(Piece piece, Part part, long sawn, Saw saw) {
        Integer slope = piece.grainSlope();
        long longSide = shortSide(part, saw) + run(sawn, part.angle());
        double out = rise(piece.warp().bow(), piece.warp().middle().bow(), share(piece, longSide));
        return (!piece.setAside() || piece.neckAllowed() || !on(Rule.SET_ASIDE))
                && (slope == null || slope >= settings.neckGrainSlope() || !on(Rule.GRAIN_SLOPE))
                && (up(out) <= settings.neckStraightness().um() || !on(Rule.STRAIGHTNESS));
    }

    /**
     * Brought to the thickness of a part it can give, for a saw that is the shop's first choice for a part it can give. The
     * parts of a design whose neck and head come from one piece are no parts of a piece that may not give both.
     */
    private List<Preparation> prepare(int p) {
        Piece piece = pieces.get(p);
        List<Part> possible = new ArrayList<>();
        for (Map.Entry<NeckDesign, List<Way>> of : ways.entrySet()) {
            boolean both = of.getKey().match() != MatchRule.SAME_PIECE
                    || !on(Rule.SAME_PIECE)
                    || mayPair(of.getKey(), piece, piece);
            for (Way way : of.getValue()) {
                for (Part part : List.of(way.neck(), way.head())) {
                    Saw first = firstSaw(piece, part.thickUm(), part.angle());
                    if (both && first != null && canGive(piece, part, part.thickUm(), first)) {
                        possible.add(part);
                    }
                }
            }
        }
        List<Preparation> found = new ArrayList<>();
        for (long sawn : new TreeSet<>(possible.stream().map(Part::thickUm).toList())) {
            for (Saw saw : input.saws()) {
                boolean chosen = possible.stream().anyMatch(part -> saw.equals(firstSaw(piece, sawn, part.angle())));
                if (chosen) {
                    List<Place> places = new ArrayList<>();
                    for (long[] stretch : clear(piece)) {
                        places.add(new Place(
                                p, found.size(), stretch[1] - stretch[0], laid(piece, possible, sawn, saw, stretch)));
                    }
                    found.add(new Preparation(sawn, saw, places));
                }
            }
        }
        return found;
    }

    /**
     * Two parts that share a bevel are flattened as one section. A part shares its bevel where that works with the longest part
     * of its angle of which two would still be thick enough, and nowhere else.
     */
    private Map<Part, Boolean> laid(Piece piece, List<Part> possible, long sawn, Saw saw, long[] stretch) {
        long room = stretch[1] - stretch[0];
        List<Part> here = possible.stream()
                .filter(part -> canGive(piece, part, sawn, saw))
                .filter(part -> section(part, sawn, saw) <= room || !on(Rule.LENGTH))
                .toList();
        Map<Part, Boolean> laid = new HashMap<>();
        for (Part part : here) {
            long mate = here.stream()
                    .filter(m -> m.angle().equals(part.angle()))
                    .mapToLong(m -> shortSide(m, saw))
                    .filter(m -> sawn <= thickOver(piece, Math.min(room, together(m, m, sawn, saw, part.angle()))))
                    .max()
                    .orElse(-1);
            long mine = shortSide(part, saw);
            boolean flat = mine <= mate
                    && part.wideUm() <= wideOver(piece, Math.min(room, together(mine, mate, sawn, saw, part.angle())));
            laid.put(part, flat || !on(Rule.PAIRS_FLAT_TOGETHER));
        }
        return laid;
    }

    private static long together(long a, long b, long sawn, Saw saw, Angle angle) {
        return a + b + run(sawn, angle) + cut(saw, angle);
    }

    // ---- the pairs -------------------------------------------------------------------------------------------------

    private boolean mayPair(NeckDesign design, Piece neck, Piece head) {
        boolean samePiece =
                design.match() != MatchRule.SAME_PIECE || neck.code().equals(head.code());
        boolean sameLot = design.match() != MatchRule.SAME_LOT
                || (neck.lot() != null && head.lot() != null && neck.lot().equals(head.lot()));
        boolean sameWood = design.match() != MatchRule.SAME_WOOD
                || neck.wood().speciesIds().equals(head.wood().speciesIds());
        boolean asDry = neck.moisture() == null
                || head.moisture() == null
                || Math.abs(neck.moisture().content().hundredths()
                                - head.moisture().content().hundredths())
                        <= settings.moistureApart().hundredths();
        return (samePiece || !on(Rule.SAME_PIECE))
                && (sameLot || !on(Rule.SAME_LOT))
                && (sameWood || !on(Rule.SAME_WOOD))
                && (asDry || !on(Rule.MOISTURE_PAIR))
                && (!design.linesMeet() || linesGoOn(design, neck, head) || !on(Rule.LINES_MEET));
    }

    /** Laid over each other from their middles, one way round and turned over, no line is more than half a millimetre off. */
    private static boolean linesGoOn(NeckDesign design, Piece neck, Piece head) {
        long reach =
                Math.min(design.neckWidth().um(), design.headWidth().length().um()) / 2;
        long[] a = lines(neck, reach);
        long[] b = lines(head, reach);
        if (a.length != b.length) {
            return false;
        }
        for (int i = 0; i < a.length; i++) {
            if (Math.abs(a[i] - b[i]) > 500 || Math.abs(a[i] + b[b.length - 1 - i]) > 500) {
                return false;
            }
        }
        return true;
    }

    private static long[] lines(Piece piece, long reach) {
        if (!(piece.wood() instanceof PieceWood.Lamination glued)) {
            return new long[0];
        }
        List<Long> lines = new ArrayList<>();
        long sum = 0;
        for (PieceWood.LaminationStrip strip : glued.strips()) {
            sum += strip.width().um();
            lines.add(sum - piece.width().length().um() / 2);
        }
        lines.remove(lines.size() - 1);
        return lines.stream()
                .mapToLong(Long::longValue)
                .filter(x -> Math.abs(x) < reach)
                .toArray();
    }

    private List<Choice> choicesOf(MatchInput.Line line) {
        List<Choice> found = new ArrayList<>();
        for (Way way : ways.getOrDefault(line.design(), List.of())) {
            for (Place neck : places(way.neck(), line)) {
                for (Place head : places(way.head(), line)) {
                    Piece a = pieces.get(neck.piece());
                    Piece b = pieces.get(head.piece());
                    boolean allowed = !on(Rule.LEFT_ALONE_BY_HAND)
                            || input.hands().stream().noneMatch(h -> h.equals(new Hand.ForbidPair(a.code(), b.code())));
                    if (allowed && mayPair(line.design(), a, b)) {
                        found.add(new Choice(way, neck, head));
                    }
                }
            }
        }
        return found;
    }

    private List<Place> places(Part part, MatchInput.Line line) {
        return preparations.stream()
                .flatMap(List::stream)
                .flatMap(p -> p.places().stream())
                .filter(place -> place.mayShare().containsKey(part))
                .filter(place -> mayCut(pieces.get(place.piece()).code(), line.order()))
                .toList();
    }

    private boolean mayCut(String piece, String order) {
        List<Hand.Keep> keeps = input.hands().stream()
                .filter(h -> h instanceof Hand.Keep k && k.piece().equals(piece))
                .map(Hand.Keep.class::cast)
                .toList();
        boolean kept =
                !keeps.isEmpty() && keeps.stream().noneMatch(k -> k.order().equals(order));
        boolean forbidden = input.hands().stream()
                .anyMatch(h -> h instanceof Hand.Forbid f
                        && f.piece().equals(piece)
                        && (f.order() == null || f.order().equals(order)));
        return !(kept && on(Rule.KEPT_BY_HAND)) && !(forbidden && on(Rule.LEFT_ALONE_BY_HAND));
    }

    // ---- every plan ------------------------------------------------------------------------------------------------

    /** Makes the next neck of a line in every way from a number on, or goes on to the next line. */
    private void fill(int line, int already, int from) {
        if (line == input.lines().size()) {
            compare();
            return;
        }
        fill(line + 1, 0, 0);
        if (already == input.lines().get(line).numbers().size()) {
            return;
        }
        List<Choice> all = choices.get(line);
        for (int c = from; c < all.size(); c++) {
            Choice choice = all.get(c);
            if (take(choice.neck(), choice.way().neck())) {
                if (take(choice.head(), choice.way().head())) {
                    if (lies(choice.neck()) && lies(choice.head())) {
                        made[line]++;
                        fill(line, already + 1, c);
                        made[line]--;
                    }
                    giveBack(choice.head());
                }
                giveBack(choice.neck());
            }
        }
    }

    private boolean take(Place place, Part part) {
        int p = place.piece();
        if (users[p] > 0 && (prepared[p] != place.preparation() || !on(Rule.SEVERAL_PARTS))) {
            return false;
        }
        prepared[p] = place.preparation();
        users[p]++;
        lying.computeIfAbsent(place, k -> new ArrayList<>()).add(part);
        return true;
    }

    private void giveBack(Place place) {
        users[place.piece()]--;
        List<Part> parts = lying.getOrDefault(place, new ArrayList<>());
        parts.remove(parts.size() - 1);
    }

    private boolean lies(Place place) {
        long kerf = preparation(place).saw().kerf().um();
        return !on(Rule.LENGTH) || used(place) - kerf <= place.lengthUm();
    }

    private Preparation preparation(Place place) {
        return preparations.get(place.piece()).get(place.preparation());
    }

    /** Length the parts of a place take at least, each group followed by a square cut. */
    private long used(Place place) {
        List<Part> parts = List.copyOf(lying.getOrDefault(place, List.of()));
        return known.computeIfAbsent(place, k -> new HashMap<>())
                .computeIfAbsent(parts, k -> least(new ArrayList<>(parts), place));
    }

    /** The first part by itself or with any of the others. */
    private long least(List<Part> parts, Place place) {
        if (parts.isEmpty()) {
            return 0;
        }
        Part first = parts.get(0);
        List<Part> others = parts.subList(1, parts.size());
        Preparation p = preparation(place);
        long cuts = run(p.sawnUm(), first.angle())
                + cut(p.saw(), first.angle())
                + p.saw().kerf().um();
        long least = shortSide(first, p.saw()) + cuts + least(others, place);
        for (int i = 0; i < others.size(); i++) {
            Part mate = others.get(i);
            if (mate.angle().equals(first.angle()) && shares(place, first) && shares(place, mate)) {
                List<Part> left = new ArrayList<>(others);
                left.remove(i);
                least = Math.min(
                        least, shortSide(first, p.saw()) + shortSide(mate, p.saw()) + cuts + least(left, place));
            }
        }
        return least;
    }

    private boolean shares(Place place, Part part) {
        return on(Rule.SHARED_BEVELS) && place.mayShare().getOrDefault(part, false);
    }

    private void compare() {
        long filled = 0;
        long divisor = 0;
        for (int l = 0; l < made.length; l++) {
            int priority = on(Rule.PRIORITY) ? input.lines().get(l).priority() : 1;
            filled += made[l] * priority;
            divisor = gcd(priority, divisor);
        }
        long cents = 0;
        long cut = 0;
        long planed = 0;
        Set<List<Object>> setUps = new HashSet<>();
        for (int p = 0; p < users.length; p++) {
            if (users[p] == 0) {
                continue;
            }
            Piece piece = pieces.get(p);
            Preparation prep = preparations.get(p).get(prepared[p]);
            cut++;
            boolean isShort = longest(piece) < shortUnder;
            cents += worth(piece, isShort, piece.length().length().um());
            long perMetre = perMetre(piece, prep.sawnUm());
            for (Place place : prep.places()) {
                List<Part> parts = lying.getOrDefault(place, List.of());
                long rest = parts.isEmpty() ? place.lengthUm() : Math.max(0, place.lengthUm() - used(place));
                cents -= restWorth(piece, isShort, rest);
                parts.forEach(part -> setUps.add(
                        List.of(part.angle(), prep.sawnUm(), prep.saw().code())));
                if (!parts.isEmpty()) {
                    long gone = (place.lengthUm() - rest) * perMetre;
                    planed += gone / 1_000_000 + (gone % 1_000_000 == 0 ? 0 : 1);
                }
            }
        }
        long[] now = {filled / Math.max(1, divisor), cents, cut, setUps.size(), planed};
        if (best == null || better(now, best)) {
            best = now;
        }
    }

    private static boolean better(long[] a, long[] b) {
        long[] x = a.clone();
        long[] y = b.clone();
        x[0] = -x[0];
        y[0] = -y[0];
        return Arrays.compare(x, y) < 0;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** Cubic millimetres planed off a metre at full width, rounded up. */
    private static long perMetre(Piece piece, long sawn) {
        return BigDecimal.valueOf(piece.width().length().um())
                .multiply(BigDecimal.valueOf(piece.thickness().length().um() - sawn))
                .movePointLeft(3)
                .setScale(0, RoundingMode.CEILING)
                .longValueExact();
    }

    // ---- what wood counts ------------------------------------------------------------------------------------------

    private long rate(Piece piece, boolean isShort) {
        long cost = piece.cost() != null
                ? piece.cost().cents()
                : (long) (piece.length().length().um()
                        / 1e5
                        * (piece.width().length().um() / 1e5)
                        * (piece.thickness().length().um() / 1e5)
                        * 600);
        long rate = (long) (cost * KM_UM / piece.length().length().um());
        if (piece.setAside()) {
            rate = rate * 2 / 5;
        }
        if (piece.since().plusYears(3).isBefore(input.day())) {
            rate = rate * 4 / 5;
        }
        return isShort ? rate * 3 / 5 : rate;
    }

    private long worth(Piece piece, boolean isShort, long lengthUm) {
        return BigDecimal.valueOf(rate(piece, isShort))
                .multiply(BigDecimal.valueOf(lengthUm))
                .movePointLeft(9)
                .setScale(0, RoundingMode.FLOOR)
                .longValueExact();
    }

    private long restWorth(Piece piece, boolean isShort, long rest) {
        boolean back = rest >= settings.usableRestLength().um()
                && piece.width().length().um() >= settings.usableRestWidth().um();
        return back && on(Rule.USABLE_RESTS) ? worth(piece, isShort || rest < shortUnder, rest) : 0;
    }
}
