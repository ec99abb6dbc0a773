package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan.Part;
import org.scarfwright.matching.Plan.PieceLayout;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.shop.Saw;

/** Why a neck is made the way the plan says, in sentences; every figure is read from the rules again. */
final class Reasons {
    private final MatchModel model;
    private final Map<String, PieceLayout> layouts = new HashMap<>();
    private final Map<String, Saw> saws = new HashMap<>();
    private final Map<String, Set<String>> users = new HashMap<>();
    private final Map<PartNeed, List<Piece>> candidates = new HashMap<>();
    private final Map<PartNeed, List<LoneCost>> costs = new HashMap<>();
    private final BookValue value;

    Reasons(MatchModel model, List<PieceLayout> layouts, List<PlanAssembly.Made> made) {
        this.model = model;
        value = new BookValue(
                model.standards(), model.input().settings(), model.input().day());
        layouts.forEach(l -> this.layouts.put(l.piece(), l));
        model.input().saws().forEach(s -> saws.put(s.code(), s));
        for (PlanAssembly.Made m : made) {
            String order = model.input().lines().get(m.line()).order();
            users.computeIfAbsent(m.neckPiece().code(), k -> new LinkedHashSet<>())
                    .add(order);
            users.computeIfAbsent(m.headPiece().code(), k -> new LinkedHashSet<>())
                    .add(order);
        }
    }

    List<String> of(PlanAssembly.Made made) {
        Trial neck = trial(made.way().neck(), made.neckPiece());
        Trial head = trial(made.way().head(), made.headPiece());
        List<String> reasons = new ArrayList<>(model.byHand()
                .reasons(
                        model.input().lines().get(made.line()),
                        made.neckPiece().code(),
                        made.headPiece().code()));
        reasons.add(takes(neck));
        otherArrangement(made, neck).ifPresent(reasons::add);
        reasons.add(takes(head));
        choice(neck).ifPresent(reasons::add);
        choice(head).ifPresent(reasons::add);
        cost(neck, made.headPiece()).ifPresent(reasons::add);
        cost(head, made.neckPiece()).ifPresent(reasons::add);
        rescue(neck).ifPresent(reasons::add);
        if (!made.headPiece().code().equals(made.neckPiece().code())) {
            rescue(head).ifPresent(reasons::add);
        }
        sharedCut(made).ifPresent(reasons::add);
        wings(made).ifPresent(reasons::add);
        seam(made).ifPresent(reasons::add);
        Stream.concat(PartRules.notes(neck).stream(), PartRules.notes(head).stream())
                .distinct()
                .forEach(reasons::add);
        return reasons;
    }

    private Trial trial(PartNeed need, Piece piece) {
        PieceLayout layout = layouts.get(piece.code());
        Saw saw = layout == null ? null : saws.get(layout.saw());
        if (layout == null || saw == null) {
            throw new IllegalStateException(piece.code() + " is used and not cut");
        }
        return new Trial(need, piece, layout.sawnThickness(), saw, model.shop());
    }

    private static String takes(Trial t) {
        return Words.capital(t.need().arrangement().word()) + " at " + t.need().angle() + " the "
                + Words.role(t.need().role()) + " takes " + Words.mm(t.section()) + ", and "
                + t.piece().code() + " has " + Words.mm(t.longestZone()) + " clear.";
    }

    private Optional<String> otherArrangement(PlanAssembly.Made made, Trial neck) {
        return model.ways(made.way().neck().design()).stream()
                .filter(w -> w.arrangement() != made.way().arrangement())
                .filter(w -> w.angle().equals(made.way().angle()))
                .findFirst()
                .map(w -> neck.with(w.neck()))
                .map(other -> {
                    List<Verdict.Refused> refused = PartRules.refusals(other);
                    String word = other.need().arrangement().word();
                    return refused.isEmpty()
                            ? Words.capital(word) + " it would take " + Words.mm(other.section()) + " of neck."
                            : neck.piece().code() + " would not do " + word + ": "
                                    + withoutArrangement(refused.get(0).reason(), word) + ".";
                });
    }

    /** The first thing a reason says, without the arrangement the sentence around it has named. */
    private static String withoutArrangement(String reason, String word) {
        return reason.split(";", -1)[0].replaceFirst(" " + word + "( at [0-9.]+°)?", "");
    }

    /** What else could have been this part. */
    private Optional<String> choice(Trial t) {
        String role = Words.role(t.need().role());
        List<Piece> fitting = candidates.computeIfAbsent(t.need(), this::fitting);
        List<Piece> others =
                fitting.stream().filter(p -> !p.code().equals(t.piece().code())).toList();
        if (others.isEmpty()) {
            return Optional.of(t.piece().code() + " is the only piece that can be this " + role + ".");
        }
        Length here = t.longestZone();
        List<Piece> shorter = others.stream()
                .filter(p -> Trial.longestZone(p).isShorterThan(here))
                .toList();
        if (shorter.isEmpty()) {
            Piece next = others.get(0);
            return Optional.of("Of " + fitting.size() + " pieces that can be this " + role + ", "
                    + t.piece().code()
                    + " is the shortest; the next is " + next.code() + " with " + Words.mm(Trial.longestZone(next))
                    + taken(next) + ".");
        }
        Piece next = shorter.get(shorter.size() - 1);
        return Optional.of("Of " + fitting.size() + " pieces that can be this " + role + ", " + shorter.size()
                + (shorter.size() == 1 ? " is" : " are") + " shorter; the nearest is " + next.code() + " with "
                + Words.mm(Trial.longestZone(next)) + taken(next)
                + (t.piece().setAside() && !next.setAside() ? ". Wood that was set aside is spent first." : "."));
    }

    /** What this part spends against the next best piece that is left on the rack, each as if it gave this part alone. */
    private Optional<String> cost(Trial t, Piece partner) {
        boolean neck = t.neck();
        if (partner.code().equals(t.piece().code())) {
            return Optional.empty(); // the parts share what they spend
        }
        Optional<LoneCost> here = LoneCost.of(t.need(), t.piece(), model.shop(), value);
        Optional<LoneCost> next = costs.computeIfAbsent(t.need(), this::costs).stream()
                .filter(c -> !users.containsKey(c.piece().code()))
                .filter(c -> PairRules.allFit(new PairTrial(
                        t.need().design(), neck ? c.piece() : partner, neck ? partner : c.piece(), model.shop())))
                .findFirst();
        if (here.isEmpty() || next.isEmpty()) {
            return Optional.empty();
        }
        String currency = model.input().settings().currency();
        return Optional.of("By itself the " + Words.role(t.need().role()) + " spends "
                + here.get().spends(currency) + " of " + t.piece().code() + "; the next best left on the rack, "
                + next.get().piece().code() + ", would spend " + next.get().spends(currency) + ": "
                + next.get().moreThan(here.get(), currency) + ".");
    }

    /** Cheapest first. */
    private List<LoneCost> costs(PartNeed need) {
        return candidates.computeIfAbsent(need, this::fitting).stream()
                .flatMap(p -> LoneCost.of(need, p, model.shop(), value).stream())
                .sorted(Comparator.comparingLong(LoneCost::cents)
                        .thenComparing(LoneCost::gone)
                        .thenComparing(c -> c.piece().code()))
                .toList();
    }

    private String taken(Piece piece) {
        Set<String> orders = users.get(piece.code());
        return orders == null ? ", left on the rack" : ", cut for " + Words.list(List.copyOf(orders));
    }

    /** Shortest first. */
    private List<Piece> fitting(PartNeed need) {
        return model.input().pieces().stream()
                .filter(p -> PartRules.allFit(Trial.of(need, p, model.shop())))
                .sorted(Comparator.comparing((Piece p) -> Trial.longestZone(p)).thenComparing(Piece::code))
                .toList();
    }

    private Optional<String> rescue(Trial t) {
        Piece piece = t.piece();
        String role = Words.role(t.need().role());
        StockStandards standards = model.standards();
        if (piece.setAside() || outAsNeck(t)) {
            Length bow = piece.warp().bow();
            String state = piece.setAside() ? " was set aside as warped" : " is too bowed for a neck";
            return Optional.of("Rescue: " + piece.code() + state + "; of its " + Words.mm(bow) + " of bow "
                    + Words.atLeast(UsableSize.straightness(piece, t.section())) + " is left over this " + role
                    + ", which keeps " + Words.atMost(t.thicknessOver(t.section())) + " of thickness.");
        }
        if (standards.isShort(piece)) {
            return Optional.of("Rescue: with " + Words.mm(t.longestZone()) + " clear " + piece.code()
                    + " is too short for every neck on file in its longer arrangement ("
                    + Words.mm(standards.shortUnder()) + ").");
        }
        if (standards.isNarrow(piece, model.shop())) {
            return Optional.of("Rescue: " + Words.mm(piece.width().length()) + " wide, " + piece.code()
                    + " is too narrow for every neck on file without wings.");
        }
        return Optional.empty();
    }

    /** A head from a piece whose bow alone keeps it from being this neck. */
    private static boolean outAsNeck(Trial t) {
        return !t.neck()
                && UsableSize.straightness(t.piece(), t.longestZone())
                        .isLongerThan(t.shop().settings().neckStraightness())
                && t.piece().warp().bow().isPositive();
    }

    private static Optional<String> sharedCut(PlanAssembly.Made made) {
        Part neck = made.neck();
        Part head = made.head();
        if (!neck.piece().equals(head.piece())) {
            return Optional.empty();
        }
        // Only parts that point at each other over a shared cut overlap.
        boolean shared = neck.from().isShorterThan(head.to()) && head.from().isShorterThan(neck.to());
        return Optional.of("Neck and head both come from " + neck.piece()
                + (shared ? " and share one bevel cut." : ", each with a bevel of its own."));
    }

    private static Optional<String> wings(PlanAssembly.Made made) {
        @Nullable Length wing = made.way().neck().wing(made.neck().width());
        if (wing == null) {
            return Optional.empty();
        }
        return Optional.of(made.neckPiece().code() + " gives a neck "
                + Words.mm(made.neck().width())
                + " wide as sawn, and the head's outline is "
                + Words.mm(made.way().neck().design().headWidth().length()) + ": two wings of " + Words.atLeast(wing)
                + " widen it up to the seam.");
    }

    private static Optional<String> seam(PlanAssembly.Made made) {
        FaceFinish finish = made.way().neck().design().finish();
        Length seam = made.way().joint().seamFromNut();
        if (seam == null) {
            return finish == FaceFinish.CLEAR
                    ? Optional.of("Overlaid, no seam shows on the head's clear front face.")
                    : Optional.empty();
        }
        String where = "Underlaid, a seam crosses the head's front face " + Words.mm(seam) + " from the nut";
        return Optional.of(
                switch (finish) {
                    case CLEAR -> where + ", and under a clear finish it shows.";
                    case OPAQUE -> where + "; the opaque finish hides it.";
                    case VENEERED -> where + "; the veneer hides it.";
                });
    }
}
