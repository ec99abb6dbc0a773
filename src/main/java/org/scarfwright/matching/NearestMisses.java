package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan.Miss;
import org.scarfwright.matching.Plan.Unfilled;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Zone;

/**
 * What came closest for an order that could not be filled, and the smallest change that would fill it, tried for real by asking
 * the rules again.
 */
final class NearestMisses {
    private static final int TOLD = 3;

    /** Relaxations are tried on this many of the closest pieces for each part, so that a huge rack costs no more than a shop's. */
    private static final int TRIED = 200;

    /** The name of what refuses where a person decided, beside the names of the rules. */
    static final String BY_HAND = "by hand";

    private static final String FREE = "free";
    private static final Comparator<Closest> CLOSEST_FIRST = Comparator.comparingDouble(Closest::distance)
            .thenComparing(c -> c.piece().code());

    private final MatchModel model;
    private final OneMore oneMore;
    private final Map<String, Set<String>> users = new HashMap<>();
    private final Map<Asked, List<Closest>> closest = new HashMap<>();

    NearestMisses(MatchModel model, List<PlanAssembly.Made> made) {
        this.model = model;
        for (PlanAssembly.Made m : made) {
            String order = model.input().lines().get(m.line()).order();
            users.computeIfAbsent(m.neckPiece().code(), k -> new TreeSet<>()).add(order);
            users.computeIfAbsent(m.headPiece().code(), k -> new TreeSet<>()).add(order);
        }
        oneMore = new OneMore(model.input(), users.keySet());
    }

    /** Orders of one design have the same closest pieces, unless somebody decided about single orders. */
    private record Asked(NeckDesign design, Role role, String order) {}

    /**
     * One refusal. Its sentence is only made for the few that are told: a huge rack is asked piece by piece.
     *
     * @param shortBy by how much, when it is about a length
     */
    private record Why(String rule, @Nullable Length shortBy, Supplier<Verdict.Refused> told) {
        static Why of(Verdict.Refused refused) {
            return new Why(refused.rule(), refused.shortBy(), () -> refused);
        }

        /** How hard it is to make good, in millimetres of length a maker would rather be short of. A choice of this program. */
        double weight() {
            double mm = shortBy == null ? 0 : shortBy.mm();
            return switch (rule) {
                case "length", "defect", "same piece" -> mm;
                case "width" -> 4 * mm;
                case "thickness", "straightness" -> 15 * mm;
                case "shortest machined" -> mm / 2;
                case "set aside", "lot ready", "free", BY_HAND -> 20;
                case "moisture", "grain slope", "saw" -> 60;
                default -> 1000;
            };
        }
    }

    /**
     * A piece tried for one part in the way that comes closest.
     *
     * @param whys empty when it fits
     * @param distance how hard it would be to make good, 0 when it fits
     */
    private record Closest(Piece piece, Trial trial, List<Why> whys, double distance) {
        static Closest of(Piece piece, Trial trial, List<Why> whys) {
            return new Closest(
                    piece, trial, whys, whys.stream().mapToDouble(Why::weight).sum());
        }

        boolean fits() {
            return whys.isEmpty();
        }

        boolean refusedBy(String rule) {
            return whys.stream().anyMatch(w -> w.rule().equals(rule));
        }
    }

    Unfilled of(MatchInput.Line line, int missing) {
        List<Way> ways = model.ways(line.design());
        String design = line.design().code();
        if (ways.isEmpty()) {
            return new Unfilled(
                    line.order(),
                    design,
                    missing,
                    List.of(),
                    Way.impossible(line.design()).stream()
                            .findFirst()
                            .map(r -> "No joint of this design can be made: " + r.reason() + ".")
                            .orElse(null));
        }
        List<Closest> necks = closest(line, ways, Role.NECK);
        List<Closest> heads = closest(line, ways, Role.HEAD);
        return new Unfilled(
                line.order(),
                design,
                missing,
                misses(line, ways, necks, heads),
                relaxation(line, necks, heads),
                oneMore.cheapest(line).orElse(null));
    }

    /** Closest first. */
    private List<Closest> closest(MatchInput.Line line, List<Way> ways, Role role) {
        Asked asked = new Asked(line.design(), role, model.input().hands().isEmpty() ? "" : line.order());
        return closest.computeIfAbsent(asked, a -> {
            List<Closest> found = new ArrayList<>();
            for (Piece piece : model.input().pieces()) {
                List<Why> decided = model.byHand()
                        .refusal(line, role, piece.code())
                        .map(said -> List.of(Why.of(new Verdict.Refused(BY_HAND, said, null))))
                        .orElse(List.of());
                found.add(closest(piece, ways, role, decided));
            }
            for (MatchInput.Reserved held : model.input().reserved()) {
                Why taken = Why.of(new Verdict.Refused(FREE, held.words(), null));
                found.add(closest(held.piece(), ways, role, List.of(taken)));
            }
            found.sort(CLOSEST_FIRST);
            return found;
        });
    }

    /** How hard a refusal is to make good; see {@link Why#weight}. */
    static double weight(Verdict.Refused refused) {
        return Why.of(refused).weight();
    }

    /** @param besides what refuses it whichever way it is taken */
    private Closest closest(Piece piece, List<Way> ways, Role role, List<Why> besides) {
        Closest best = null;
        for (Way way : ways) {
            Trial trial = Trial.of(role == Role.NECK ? way.neck() : way.head(), piece, model.shop());
            List<Why> whys = whys(trial);
            if (besides.stream().anyMatch(w -> w.rule().equals(FREE))) {
                whys.removeIf(w -> w.rule().equals(FREE));
            }
            whys.addAll(0, besides);
            Closest here = Closest.of(piece, trial, whys);
            if (best == null || here.distance() < best.distance()) {
                best = here;
            }
        }
        return Objects.requireNonNull(best);
    }

    private static List<Why> whys(Trial trial) {
        List<Why> whys = new ArrayList<>();
        for (PartRule rule : PartRules.ALL) {
            if (!rule.fits(trial)) {
                whys.add(new Why(rule.name(), rule.shortBy(trial), () -> rule.why(trial)));
            }
        }
        return whys;
    }

    private List<Miss> misses(MatchInput.Line line, List<Way> ways, List<Closest> necks, List<Closest> heads) {
        if (necks.stream().noneMatch(Closest::fits)) {
            return told(necks);
        }
        if (heads.stream().noneMatch(Closest::fits)) {
            return told(heads);
        }
        List<Miss> pairs =
                line.design().match() == MatchRule.SAME_PIECE ? onePieceMisses(line, ways) : pairMisses(line, ways);
        return pairs.isEmpty() ? usedUp(necks, heads) : pairs;
    }

    private static List<Miss> told(List<Closest> found) {
        return found.stream()
                .filter(c -> !c.fits())
                .limit(TOLD)
                .map(NearestMisses::miss)
                .toList();
    }

    private static Miss miss(Closest c) {
        Why hardest =
                c.whys().stream().max(Comparator.comparingDouble(Why::weight)).orElseThrow();
        Verdict.Refused worst = hardest.told().get();
        boolean bothParts = worst.rule().equals(new SamePieceRule().name());
        List<String> also = c.whys().stream()
                .filter(w -> !w.rule().equals(hardest.rule()))
                .map(Why::rule)
                .distinct()
                .toList();
        return new Miss(
                c.piece().code(),
                worst.rule(),
                worst.shortBy(),
                c.piece().code()
                        + (bothParts
                                ? ""
                                : " as the " + Words.role(c.trial().need().role())) + ": "
                        + worst.reason()
                        + (also.isEmpty() ? "" : "; also refused for " + Words.list(also)) + ".");
    }

    /** Refusals of the two pieces together; empty when some two may be paired. */
    private List<Miss> pairMisses(MatchInput.Line line, List<Way> ways) {
        Map<String, Miss> byNeck = new LinkedHashMap<>();
        for (Way way : ways) {
            List<Piece> necks = unlike(line, fitting(line, way.neck()));
            List<Piece> heads = unlike(line, fitting(line, way.head()));
            for (Piece neck : necks) {
                for (Piece head : heads) {
                    Optional<Verdict.Refused> refused = pairRefusal(line, neck, head);
                    if (refused.isEmpty()) {
                        return List.of();
                    }
                    byNeck.putIfAbsent(
                            neck.code(),
                            new Miss(
                                    neck.code(),
                                    refused.get().rule(),
                                    refused.get().shortBy(),
                                    neck.code() + " as the neck and " + head.code() + " as the head: "
                                            + refused.get().reason() + "."));
                }
            }
        }
        return byNeck.values().stream().limit(TOLD).toList();
    }

    private Optional<Verdict.Refused> pairRefusal(MatchInput.Line line, Piece neck, Piece head) {
        return model.byHand().forbidsPair(neck.code(), head.code())
                ? Optional.of(new Verdict.Refused(BY_HAND, "kept apart by hand", null))
                : PairRules.firstRefusal(new PairTrial(line.design(), neck, head, model.shop()));
    }

    /** One of each kind the pair rules can tell apart, and every piece somebody decided about. */
    private List<Piece> unlike(MatchInput.Line line, List<Piece> pieces) {
        Set<Object> seen = new HashSet<>();
        return pieces.stream()
                .filter(p -> model.byHand().namedInAPair(p.code()) || seen.add(PairingGroups.key(line.design(), p)))
                .toList();
    }

    /** One piece must give both parts: what keeps the closest from it; empty when some piece gives both. */
    private List<Miss> onePieceMisses(MatchInput.Line line, List<Way> ways) {
        List<Closest> found = new ArrayList<>();
        for (Piece piece : model.input().pieces()) {
            Closest best = null;
            for (Way way : ways) {
                Closest both = onePiece(line, way, piece);
                if (both.fits()) {
                    return List.of();
                }
                if (best == null || both.distance() < best.distance()) {
                    best = both;
                }
            }
            found.add(Objects.requireNonNull(best));
        }
        found.sort(CLOSEST_FIRST);
        return told(found);
    }

    private Closest onePiece(MatchInput.Line line, Way way, Piece piece) {
        Trial neck = Trial.of(way.neck(), piece, model.shop());
        Trial head = Trial.of(way.head(), piece, model.shop());
        List<Why> whys = whys(neck);
        Trial told = whys.isEmpty() ? head : neck;
        whys.addAll(whys(head));
        model.byHand()
                .refusal(line, Role.NECK, piece.code())
                .ifPresent(said -> whys.add(Why.of(new Verdict.Refused(BY_HAND, said, null))));
        PairRules.firstRefusal(new PairTrial(line.design(), piece, piece, model.shop()))
                .ifPresent(refused -> whys.add(Why.of(refused)));
        if (whys.isEmpty() && !givesBoth(way, piece, model.shop())) {
            Trial thick = new Trial(
                    way.head(), piece, way.neck().thickness().max(way.head().thickness()), neck.saw(), model.shop());
            Length together = way.neck().shortSide(neck.saw()).plus(thick.section());
            Length missing = together.minus(neck.longestZone());
            String reason = missing.isPositive()
                    ? "neck and head together take " + Words.mm(together) + ", " + Words.atLeast(missing)
                            + " too short " + way.arrangement().word()
                    : "it gives the neck or the head, but is not flat enough for both";
            whys.add(Why.of(
                    new Verdict.Refused(new SamePieceRule().name(), reason, missing.isPositive() ? missing : null)));
        }
        return Closest.of(piece, told, whys);
    }

    private List<Piece> fitting(MatchInput.Line line, PartNeed need) {
        return model.input().pieces().stream()
                .filter(p -> model.byHand().allows(line, need.role(), p.code()))
                .filter(p -> PartRules.allFit(Trial.of(need, p, model.shop())))
                .toList();
    }

    /** Everything fits, and other orders have it. Tells about the part that is scarcer. */
    private List<Miss> usedUp(List<Closest> necks, List<Closest> heads) {
        boolean neckLeft = necks.stream().anyMatch(c -> c.fits() && unused(c.piece()));
        boolean headLeft = heads.stream().anyMatch(c -> c.fits() && unused(c.piece()));
        List<Closest> scarce = neckLeft && !headLeft ? heads : necks;
        List<Miss> misses = new ArrayList<>();
        for (Closest c : scarce) {
            if (!c.fits() || misses.size() == TOLD) {
                break;
            }
            String role = Words.role(c.trial().need().role());
            Set<String> orders = users.get(c.piece().code());
            String text = orders == null
                    ? c.piece().code() + " fits as the " + role + ", but no piece is left for the "
                            + (c.trial().neck() ? "head" : "neck") + " beside it."
                    : c.piece().code() + " fits as the " + role + ", but is cut for " + Words.list(List.copyOf(orders))
                            + ".";
            misses.add(new Miss(c.piece().code(), "used", null, text));
        }
        return misses;
    }

    private boolean unused(Piece piece) {
        return !users.containsKey(piece.code());
    }

    // ---- the smallest change
    // -------------------------------------------------------------------------------------------

    private @Nullable String relaxation(MatchInput.Line line, List<Closest> necks, List<Closest> heads) {
        List<Piece> neckPieces = nearest(necks);
        List<Piece> headPieces = nearest(heads);
        for (Relaxation r : Relaxation.of(line.design(), model.shop())) {
            Optional<String> filled = fill(r, neckPieces, headPieces);
            if (filled.isPresent()) {
                return r.condition() + ", " + filled.get() + ".";
            }
        }
        return null;
    }

    /** Only wood that the plan leaves on the rack and nobody decided about. */
    private List<Piece> nearest(List<Closest> found) {
        return found.stream()
                .filter(c -> !c.refusedBy(FREE) && !c.refusedBy(BY_HAND))
                .map(Closest::piece)
                .filter(this::unused)
                .limit(TRIED)
                .toList();
    }

    private static Optional<String> fill(Relaxation r, List<Piece> neckPieces, List<Piece> headPieces) {
        for (Way way : Way.of(r.design())) {
            List<Piece> heads = headPieces.stream()
                    .map(r::see)
                    .filter(p -> PartRules.allFit(Trial.of(way.head(), p, r.shop())))
                    .toList();
            for (Piece seen : neckPieces) {
                Piece neck = r.see(seen);
                if (!PartRules.allFit(Trial.of(way.neck(), neck, r.shop()))) {
                    continue;
                }
                for (Piece head : heads) {
                    boolean one = head.code().equals(neck.code());
                    if (PairRules.allFit(new PairTrial(r.design(), neck, head, r.shop()))
                            && (!one || givesBoth(way, neck, r.shop()))) {
                        return Optional.of(
                                one
                                        ? neck.code() + " would give both the neck and the head"
                                        : neck.code() + " would be the neck and " + head.code() + " the head");
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Both parts find room on one piece: sharing a bevel, side by side, or in two clear stretches. */
    static boolean givesBoth(Way way, Piece piece, ShopRules shop) {
        for (Preparations.Prepared p : new Preparations(shop).of(piece, List.of(way.neck(), way.head()))) {
            Length neck = way.neck().section(p.saw(), p.sawn());
            Length head = way.head().section(p.saw(), p.sawn());
            Length apart = neck.plus(p.saw().kerf()).plus(head);
            Length sharing = way.neck()
                    .shortSide(p.saw())
                    .plus(way.head().shortSide(p.saw()))
                    .plus(MatchModel.bevelLength(p.saw(), p.sawn(), way.angle()));
            boolean neckSomewhere = false;
            boolean headSomewhere = false;
            int roomy = 0;
            for (Preparations.Stretch s : p.stretches()) {
                boolean n = s.shared().contains(way.neck()) || s.alone().contains(way.neck());
                boolean h = s.shared().contains(way.head()) || s.alone().contains(way.head());
                Zone zone = s.zone();
                boolean both = n
                        && h
                        && (!apart.isLongerThan(zone.length())
                                || (s.shared().contains(way.neck())
                                        && s.shared().contains(way.head())
                                        && !sharing.isLongerThan(zone.length())));
                if (both) {
                    return true;
                }
                neckSomewhere |= n;
                headSomewhere |= h;
                roomy += n || h ? 1 : 0;
            }
            if (neckSomewhere && headSomewhere && roomy >= 2) {
                return true;
            }
        }
        return false;
    }
}
