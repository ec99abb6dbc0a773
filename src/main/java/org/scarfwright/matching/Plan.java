package org.scarfwright.matching;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BinaryOperator;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;

/**
 * A week's plan: which wood becomes which neck, with the proof. Once saved it is never edited; accepting and undoing change
 * only its {@link State}.
 *
 * @param week as written, 2026-W49
 * @param filled necks that are made
 * @param ordered necks that were asked for
 * @param hands what people had decided when it was made, as sentences
 * @param asked what it was asked for beside the week
 */
public record Plan(
        long id,
        String week,
        State state,
        Status status,
        Instant madeAt,
        String engine,
        double seconds,
        int filled,
        int ordered,
        List<Level> levels,
        List<Pairing> pairings,
        List<PieceLayout> layouts,
        List<Unfilled> unfilled,
        Books books,
        List<String> hands,
        Asked asked) {
    public Plan {
        levels = List.copyOf(levels);
        pairings = List.copyOf(pairings);
        layouts = List.copyOf(layouts);
        unfilled = List.copyOf(unfilled);
        // Plans that were kept before people could decide anything, or ask for a part of the week, say nothing of it.
        hands = Objects.requireNonNullElse(hands, List.<String>of()).stream().toList();
        asked = Objects.requireNonNullElse(asked, Asked.WEEK);
    }

    /** A plan of the whole week nobody decided anything about. */
    public Plan(
            long id,
            String week,
            State state,
            Status status,
            Instant madeAt,
            String engine,
            double seconds,
            int filled,
            int ordered,
            List<Level> levels,
            List<Pairing> pairings,
            List<PieceLayout> layouts,
            List<Unfilled> unfilled,
            Books books) {
        this(
                id,
                week,
                state,
                status,
                madeAt,
                engine,
                seconds,
                filled,
                ordered,
                levels,
                pairings,
                layouts,
                unfilled,
                books,
                List.of(),
                Asked.WEEK);
    }

    /** The same plan as it was saved. */
    Plan saved(long newId, State newState) {
        return new Plan(
                newId, week, newState, status, madeAt, engine, seconds, filled, ordered, levels, pairings, layouts,
                unfilled, books, hands, asked);
    }

    /** The necks it was made for. */
    public List<PlannedNeck> necks() {
        return pairings.stream().map(p -> p.of(id)).toList();
    }

    /** Codes of the orders that have a part from this piece, in their order. */
    public List<String> ordersOn(String piece) {
        return pairings.stream()
                .filter(p -> p.neck().piece().equals(piece) || p.head().piece().equals(piece))
                .map(Pairing::order)
                .distinct()
                .sorted()
                .toList();
    }

    /** Book value it spends, in the shop's currency; empty for a plan that has no levels of its own. */
    Optional<BigDecimal> bookValue() {
        return levels.size() > 1 ? Optional.of(levels.get(1).value()) : Optional.empty();
    }

    /**
     * What a match is asked for beside its week.
     *
     * @param orders codes of the orders to match; empty for every order of the week
     * @param seed which of several equally good plans is taken, 0 to {@value #MOST_SEED}; with 0 ties are broken by the
     *     pieces' codes
     * @param origin the plan it comes from; empty when the week was asked for anew
     */
    public record Asked(
            List<String> orders, int seed, @Nullable Origin origin) {
        public static final int MOST_SEED = 999_999;

        /** Every order of the week, ties broken by code. */
        public static final Asked WEEK = new Asked(List.of(), 0, null);

        public Asked {
            orders = List.copyOf(orders);
        }

        Asked from(Origin newOrigin) {
            return new Asked(orders, seed, newOrigin);
        }
    }

    /** The plan another one comes from. */
    public record Origin(OriginKind kind, long plan) {}

    /** How a plan comes from another. */
    public enum OriginKind {
        /** It differs from the other as much as a stated cost allows. */
        NEAR_EQUAL,
        /** It holds the orders of the other that were accepted as they are. */
        LOCKED,
        /** It was matched anew beside the locked orders of the other. */
        REMAINDER
    }

    /** What people decided about a plan. */
    public enum State {
        PROPOSED,
        ACCEPTED,
        UNDONE
    }

    /** How good a plan is proved to be. */
    public enum Status {
        PROVED,
        GAP,
        /** There are orders and none of them can be filled. */
        INFEASIBLE
    }

    /** One level: its plain name, value and proved bound in the unit named. */
    public record Level(String name, BigDecimal value, BigDecimal bound, String unit) {}

    /**
     * One neck.
     *
     * @param order code of the order
     * @param number which neck of the order, from 1
     * @param wingWidth width of each of the two wings the head needs; empty when none
     * @param seamFromNut where the seam crosses the head's face; empty when none
     * @param reasons why these pieces, one sentence each
     */
    public record Pairing(
            String order,
            int number,
            String design,
            Arrangement arrangement,
            Angle angle,
            Part neck,
            Part head,
            @Nullable Length wingWidth,
            @Nullable Length seamFromNut,
            List<String> reasons) {
        public Pairing {
            reasons = List.copyOf(reasons);
        }

        /** The neck it makes, in the plan it stands in. */
        public PlannedNeck of(long plan) {
            return new PlannedNeck(plan, order, number);
        }

        /** Codes of the pieces it is cut from: one or two. */
        public List<String> pieces() {
            return neck.piece().equals(head.piece()) ? List.of(neck.piece()) : List.of(neck.piece(), head.piece());
        }
    }

    /**
     * One part as sawn. Its {@code from}..{@code to} is the stretch between its square end and the far point of its bevel,
     * measured from the piece's left end; two parts that share a bevel overlap there by the bevel's run less
     * the kerf along the piece.
     *
     * @param lane counted from 1 at the near edge
     * @param bevelAtLeft its bevel faces the piece's left end
     * @param shortSide short side with allowances
     * @param longSide short side + thickness · cot(angle)
     * @param width width of the part with allowances; the piece may be wider
     * @param thickness at the saw
     */
    public record Part(
            String piece,
            int lane,
            Length from,
            Length to,
            boolean bevelAtLeft,
            Length shortSide,
            Length longSide,
            Length width,
            Length thickness) {}

    /**
     * How one piece is cut.
     *
     * @param pieceVersion the piece as it was when the plan was made
     * @param sawnThickness thickness after flattening, at the saw
     * @param saw code of the saw that makes its bevels
     * @param cuts where wood is lost to a cut
     * @param rests what comes back or is too short to
     * @param trims end trims and defects cut out
     */
    public record PieceLayout(
            String piece,
            long pieceVersion,
            Length length,
            Length width,
            Length thickness,
            Length sawnThickness,
            String saw,
            List<Cut> cuts,
            List<Stretch> rests,
            List<Stretch> trims,
            Books books) {
        public PieceLayout {
            cuts = List.copyOf(cuts);
            rests = List.copyOf(rests);
            trims = List.copyOf(trims);
        }
    }

    /**
     * One saw cut.
     *
     * @param from left end of what the cut takes along the piece: for a bevel its run and kerf together
     * @param angle empty for a square cut
     * @param shared both sides of a bevel are parts
     */
    public record Cut(
            int lane, Length from, Length to, @Nullable Angle angle, boolean shared) {}

    /**
     * A stretch of a piece.
     *
     * @param usable it goes back to the rack; false for waste
     */
    public record Stretch(int lane, Length from, Length to, Length width, boolean usable) {}

    /**
     * Necks of an order that could not be made, and what came closest.
     *
     * @param missing how many
     * @param relaxation the smallest change that would fill it, as a sentence; empty when none was found
     * @param buy the smallest single blank that would fill one of them, as a sentence; empty when none would
     */
    public record Unfilled(
            String order,
            String design,
            int missing,
            List<Miss> misses,
            @Nullable String relaxation,
            @Nullable String buy) {
        public Unfilled {
            misses = List.copyOf(misses);
        }

        public Unfilled(String order, String design, int missing, List<Miss> misses, @Nullable String relaxation) {
            this(order, design, missing, misses, relaxation, null);
        }
    }

    /**
     * A piece that came close.
     *
     * @param rule name of the rule that refused
     * @param shortBy by how much, when the rule is about a length
     */
    public record Miss(String piece, String rule, @Nullable Length shortBy, String text) {}

    /** Where the wood of the cut pieces goes; all other figures add up to {@code input} exactly. */
    public record Books(
            Volume input,
            Volume parts,
            Volume kerf,
            Volume bevel,
            Volume edge,
            Volume trim,
            Volume planing,
            Volume usableRest,
            Volume unusableRest,
            Volume rescued) {
        public static final Books NOTHING = new Books(
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO,
                Volume.ZERO);

        public Books plus(Books o) {
            return with(o, Volume::plus);
        }

        /** What these have more than others. */
        public Books minus(Books o) {
            return with(o, Volume::minus);
        }

        private Books with(Books o, BinaryOperator<Volume> each) {
            return new Books(
                    each.apply(input, o.input),
                    each.apply(parts, o.parts),
                    each.apply(kerf, o.kerf),
                    each.apply(bevel, o.bevel),
                    each.apply(edge, o.edge),
                    each.apply(trim, o.trim),
                    each.apply(planing, o.planing),
                    each.apply(usableRest, o.usableRest),
                    each.apply(unusableRest, o.unusableRest),
                    each.apply(rescued, o.rescued));
        }

        /** Zero when the books close. */
        public Volume difference() {
            return input.minus(parts)
                    .minus(kerf)
                    .minus(bevel)
                    .minus(edge)
                    .minus(trim)
                    .minus(planing)
                    .minus(usableRest)
                    .minus(unusableRest);
        }

        /** Parts over the wood that did not come back; 0 when nothing is cut. */
        public double netYield() {
            return parts.shareOf(input.minus(usableRest));
        }

        /** Parts and usable rests over everything cut into; 0 when nothing is cut. */
        public double recovery() {
            return parts.plus(usableRest).shareOf(input);
        }

        /** Share of the parts that came from pieces set aside as warped, short or narrow; part of {@code parts}. */
        public double rescue() {
            return rescued.shareOf(parts);
        }
    }
}
