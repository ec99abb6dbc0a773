package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;

/** A week's decisions, asked while the question for the search is written. */
final class ByHand {
    private final List<Hand> hands;
    private final Set<String> forbidden = new HashSet<>();
    private final Set<List<String>> forbiddenFor = new HashSet<>();
    private final Set<List<String>> forbiddenPairs = new HashSet<>();
    private final Map<String, Set<String>> keptFor = new HashMap<>();

    ByHand(List<Hand> hands) {
        this.hands = List.copyOf(hands);
        for (Hand hand : hands) {
            if (hand instanceof Hand.Forbid f) {
                if (f.order() == null) {
                    forbidden.add(f.piece());
                } else {
                    forbiddenFor.add(List.of(f.piece(), f.order()));
                }
            } else if (hand instanceof Hand.ForbidPair f) {
                forbiddenPairs.add(List.of(f.neck(), f.head()));
            } else if (hand instanceof Hand.Keep k) {
                keptFor.computeIfAbsent(k.piece(), p -> new TreeSet<>()).add(k.order());
            }
        }
    }

    boolean leftOut(String order) {
        return hands.contains(new Hand.LeaveOut(order));
    }

    List<Hand.Pin> pins(String order) {
        List<Hand.Pin> pins = new ArrayList<>();
        for (Hand hand : hands) {
            if (hand instanceof Hand.Pin p && p.order().equals(order)) {
                pins.add(p);
            }
        }
        return pins;
    }

    /** The design as this order may use it. */
    NeckDesign arranged(String order, NeckDesign design) {
        List<Arrangement> arrangements = design.arrangements();
        List<Angle> angles = design.angles();
        for (Hand hand : hands) {
            if (hand instanceof Hand.Arrange a && a.order().equals(order)) {
                arrangements = a.arrangement() == null ? arrangements : List.of(a.arrangement());
                angles = a.angle() == null ? angles : List.of(a.angle());
            }
        }
        return Relaxation.with(design, arrangements, angles);
    }

    /** Why this piece may not give this part of that line; empty when nobody said so. */
    Optional<String> refusal(MatchInput.Line line, Role role, String piece) {
        Hand.Pin pin = line.pin();
        if (pin != null && !piece.equals(role == Role.NECK ? pin.neck() : pin.head())) {
            return Optional.of("another piece is pinned for " + line.order());
        }
        if (forbidden.contains(piece)) {
            return Optional.of("it is left alone by hand");
        }
        if (forbiddenFor.contains(List.of(piece, line.order()))) {
            return Optional.of("it is left alone by hand where " + line.order() + " is concerned");
        }
        Set<String> kept = keptFor.get(piece);
        if (kept != null && !kept.contains(line.order())) {
            return Optional.of("it is kept for " + Words.list(List.copyOf(kept)) + " by hand");
        }
        if (line.design().match() == MatchRule.SAME_PIECE && forbidsPair(piece, piece)) {
            return Optional.of("by hand, no neck takes both its parts from it");
        }
        return Optional.empty();
    }

    boolean allows(MatchInput.Line line, Role role, String piece) {
        return hands.isEmpty() || refusal(line, role, piece).isEmpty();
    }

    boolean forbidsPair(String neck, String head) {
        return forbiddenPairs.contains(List.of(neck, head));
    }

    boolean namedInAPair(String piece) {
        return forbiddenPairs.stream().anyMatch(pair -> pair.contains(piece));
    }

    Set<List<String>> forbiddenPairs() {
        return Set.copyOf(forbiddenPairs);
    }

    /** What was decided that bears on a neck made from these two pieces, as sentences. */
    List<String> reasons(MatchInput.Line line, String neck, String head) {
        List<String> reasons = new ArrayList<>();
        Hand.Pin pin = line.pin();
        if (pin != null) {
            reasons.add(pin.words());
        }
        for (Hand hand : hands) {
            boolean bears = bears(hand, line.order(), neck, head);
            if (bears) {
                reasons.add(hand.words());
            }
        }
        return reasons;
    }

    private static boolean bears(Hand hand, String order, String neck, String head) {
        if (hand instanceof Hand.Keep k) {
            return k.order().equals(order)
                    && (k.piece().equals(neck) || k.piece().equals(head));
        }
        if (hand instanceof Hand.Arrange a) {
            return a.order().equals(order);
        }
        if (hand instanceof Hand.Forbid f) {
            return order.equals(f.order());
        }
        return hand instanceof Hand.ForbidPair p
                && (p.neck().equals(neck) || p.head().equals(head));
    }

    /** What keeps a new decision from standing beside those there are, as a sentence that reads on from its field. */
    static @Nullable String contradiction(List<Hand> there, Hand wanted) {
        for (Hand hand : there) {
            String clash = clash(hand, wanted);
            clash = clash == null ? clash(wanted, hand) : clash;
            if (clash != null) {
                return clash + " (" + hand.words().replaceFirst("\\.$", "") + "); undo that first";
            }
        }
        return null;
    }

    private static @Nullable String clash(Hand a, Hand b) {
        if (a instanceof Hand.Pin pin) {
            if (b instanceof Hand.Forbid f
                    && (f.order() == null || f.order().equals(pin.order()))
                    && (f.piece().equals(pin.neck()) || f.piece().equals(pin.head()))) {
                return "cannot be pinned and left alone at once";
            }
            if (b instanceof Hand.ForbidPair p
                    && p.neck().equals(pin.neck())
                    && p.head().equals(pin.head())) {
                return "cannot be pinned and kept apart at once";
            }
            if (b instanceof Hand.Keep k
                    && !k.order().equals(pin.order())
                    && (k.piece().equals(pin.neck()) || k.piece().equals(pin.head()))) {
                return "cannot be pinned for one order and kept for another";
            }
            if (b instanceof Hand.LeaveOut l && l.order().equals(pin.order())) {
                return "cannot be pinned for an order that is left out";
            }
        }
        if (a instanceof Hand.Keep k
                && b instanceof Hand.Forbid f
                && f.piece().equals(k.piece())
                && (f.order() == null || f.order().equals(k.order()))) {
            return "cannot be kept for an order and left alone at once";
        }
        if (a instanceof Hand.Arrange x
                && b instanceof Hand.Arrange y
                && x.order().equals(y.order())) {
            boolean twoWays = x.arrangement() != null && y.arrangement() != null && x.arrangement() != y.arrangement();
            boolean twoAngles =
                    x.angle() != null && y.angle() != null && !x.angle().equals(y.angle());
            return twoWays || twoAngles ? "cannot be made in two ways" : null;
        }
        return null;
    }
}
