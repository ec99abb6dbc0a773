package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan.Miss;
import org.scarfwright.matching.Plan.Unfilled;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.MatchRule;
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

    private final MatchModel model;
    private final Map<String, Set<String>> users = new HashMap<>();
    private final Map<String, List<Closest>> necksOf = new HashMap<>();
    private final Map<String, List<Closest>> headsOf = new HashMap<>();

    NearestMisses(MatchModel model, List<PlanAssembly.Made> made) {
        this.model = model;
        for (PlanAssembly.Made m : made) {
            String order = model.input().lines().get(m.line()).order();
            users.computeIfAbsent(m.neckPiece().code(), k -> new TreeSet<>()).add(order);
            users.computeIfAbsent(m.headPiece().code(), k -> new TreeSet<>()).add(order);
        }
    }

    /**
     * A piece tried for one part in the way that comes closest.
     *
     * @param refused empty when it fits
     * @param distance how hard it would be to make good, 0 when it fits
     */
    private record Closest(Piece piece, Trial trial, List<Verdict.Refused> refused, double distance) {
        boolean fits() {
            return refused.isEmpty();
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
        List<Closest> necks = necksOf.computeIfAbsent(design, d -> closest(ways, Role.NECK));
        List<Closest> heads = headsOf.computeIfAbsent(design, d -> closest(ways, Role.HEAD));
        return new Unfilled(
                line.order(), design, missing, misses(line, ways, necks, heads), relaxation(line, necks, heads));
    }

    /** Closest first. */
    private List<Closest> closest(List<Way> ways, Role role) {
        List<Closest> found = new ArrayList<>();
        for (Piece piece : model.input().pieces()) {
            Closest best = null;
            for (Way way : ways) {
                Trial trial = Trial.of(role == Role.NECK ? way.neck() : way.head(), piece, model.shop());
                List<Verdict.Refused> refused = PartRules.refusals(trial);
                double distance =
                        refused.stream().mapToDouble(NearestMisses::weight).sum();
                if (best == null || distance < best.distance()) {
                    best = new Closest(piece, trial, refused, distance);
                }
            }
            if (best != null) {
                found.add(best);
            }
        }
        found.sort(Comparator.comparingDouble(Closest::distance)
                .thenComparing(c -> c.piece().code()));
        return found;
    }

    /** How hard a refusal is to make good, in millimetres of length a maker would rather be short of. A choice of this program. */
    static double weight(Verdict.Refused refused) {
        double mm = refused.shortBy() == null ? 0 : refused.shortBy().mm();
        return switch (refused.rule()) {
            case "length", "defect", "same piece" -> mm;
            case "width" -> 4 * mm;
            case "thickness", "straightness" -> 15 * mm;
            case "shortest machined" -> mm / 2;
            case "set aside", "lot ready", "free" -> 20;
            case "moisture", "grain slope", "saw" -> 60;
            default -> 1000;
        };
    }

    private List<Miss> misses(MatchInput.Line line, List<Way> ways, List<Closest> necks, List<Closest> heads) {
        if (necks.stream().noneMatch(Closest::fits)) {
            return told(necks);
        }
        if (heads.stream().noneMatch(Closest::fits)) {
            return told(heads);
        }
        List<Miss> pairs =
                line.design().match() == MatchRule.SAME_PIECE ? onePieceMisses(ways) : pairMisses(line, ways);
        return pairs.isEmpty() ? usedUp(necks, heads) : pairs;
    }

    private static List<Miss> told(List<Closest> closest) {
        return closest.stream()
                .filter(c -> !c.fits())
                .limit(TOLD)
                .map(NearestMisses::miss)
                .toList();
    }

    private static Miss miss(Closest c) {
        Verdict.Refused worst = c.refused().stream()
                .max(Comparator.comparingDouble(NearestMisses::weight))
                .orElseThrow();
        boolean bothParts = worst.rule().equals(new SamePieceRule().name());
        List<String> also = c.refused().stream()
                .filter(r -> !r.equals(worst))
                .map(Verdict.Refused::rule)
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
            List<Piece> necks = fitting(way.neck(), model.shop());
            List<Piece> heads = fitting(way.head(), model.shop());
            for (Piece neck : necks) {
                for (Piece head : heads) {
                    Optional<Verdict.Refused> refused =
                            PairRules.firstRefusal(new PairTrial(line.design(), neck, head, model.shop()));
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

    /** One piece must give both parts: what keeps the closest from it; empty when some piece gives both. */
    private List<Miss> onePieceMisses(List<Way> ways) {
        List<Closest> closest = new ArrayList<>();
        for (Piece piece : model.input().pieces()) {
            Closest best = null;
            for (Way way : ways) {
                Closest both = onePiece(way, piece);
                if (both.fits()) {
                    return List.of();
                }
                if (best == null || both.distance() < best.distance()) {
                    best = both;
                }
            }
            if (best != null) {
                closest.add(best);
            }
        }
        closest.sort(Comparator.comparingDouble(Closest::distance)
                .thenComparing(c -> c.piece().code()));
        return told(closest);
    }

    private Closest onePiece(Way way, Piece piece) {
        Trial neck = Trial.of(way.neck(), piece, model.shop());
        Trial head = Trial.of(way.head(), piece, model.shop());
        List<Verdict.Refused> refused = new ArrayList<>(PartRules.refusals(neck));
        Trial told = refused.isEmpty() ? head : neck;
        refused.addAll(PartRules.refusals(head));
        PairRules.firstRefusal(new PairTrial(way.neck().design(), piece, piece, model.shop()))
                .ifPresent(refused::add);
        if (refused.isEmpty() && !givesBoth(way, piece, model.shop())) {
            Trial thick = new Trial(
                    way.head(), piece, way.neck().thickness().max(way.head().thickness()), neck.saw(), model.shop());
            Length together = way.neck().shortSide(neck.saw()).plus(thick.section());
            Length room = neck.longestZone();
            Length missing = together.minus(room);
            String reason = missing.isPositive()
                    ? "neck and head together take " + Words.mm(together) + ", " + Words.atLeast(missing)
                            + " too short " + way.arrangement().word()
                    : "it gives the neck or the head, but is not flat enough for both";
            refused.add(new Verdict.Refused(new SamePieceRule().name(), reason, missing.isPositive() ? missing : null));
        }
        double distance = refused.stream().mapToDouble(NearestMisses::weight).sum();
        return new Closest(piece, told, refused, distance);
    }

    private List<Piece> fitting(PartNeed need, ShopRules shop) {
        return model.input().pieces().stream()
                .filter(p -> PartRules.allFit(Trial.of(need, p, shop)))
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

    /** Only wood that the plan leaves on the rack. */
    private List<Piece> nearest(List<Closest> closest) {
        return closest.stream()
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
