package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopSettings;

/**
 * Everything a plan is made from, read once before the search starts.
 *
 * @param asked which of the orders, and which of equally good plans
 * @param lines what is still to be made, in order of priority (highest first), due day, code
 * @param designs every design on file, in order of their codes
 * @param pieces free pieces, in order of their codes
 * @param saws in the shop's order of preference
 * @param day the day the wood must be ready: the week's Monday, or today when that is later
 * @param hands what people decided; designs of lines and left-out orders follow it already
 * @param reserved pieces that would be here if nobody had reserved them
 * @param woods what woods are called in sentences
 */
public record MatchInput(
        IsoWeek week,
        Plan.Asked asked,
        List<Line> lines,
        List<NeckDesign> designs,
        List<Piece> pieces,
        ShopSettings settings,
        List<Saw> saws,
        LocalDate day,
        List<Hand> hands,
        List<Reserved> reserved,
        WoodWords woods) {
    public MatchInput {
        lines = List.copyOf(lines);
        designs = List.copyOf(designs);
        pieces = List.copyOf(pieces);
        saws = List.copyOf(saws);
        hands = List.copyOf(hands);
        reserved = List.copyOf(reserved);
    }

    /** A question nobody decided anything about, with nothing reserved. */
    public MatchInput(
            IsoWeek week,
            List<Line> lines,
            List<NeckDesign> designs,
            List<Piece> pieces,
            ShopSettings settings,
            List<Saw> saws,
            LocalDate day,
            WoodWords woods) {
        this(week, Plan.Asked.WEEK, lines, designs, pieces, settings, saws, day, List.of(), List.of(), woods);
    }

    /**
     * A piece another plan holds.
     *
     * @param words who holds it, such as: reserved for A-101 (plan 3)
     */
    public record Reserved(Piece piece, String words) {}

    /**
     * The necks of one order that no accepted plan has yet.
     *
     * @param order code of the order
     * @param numbers which necks of the order, counted from 1, ascending; never empty
     * @param design as this order may use it, which is narrower than on file where somebody decided so
     * @param priority 1 to 9
     * @param pin the pieces its one neck must come from; empty when the search may choose
     */
    public record Line(String order, NeckDesign design, List<Integer> numbers, int priority, Hand.@Nullable Pin pin) {
        public Line {
            numbers = List.copyOf(numbers);
        }

        public Line(String order, NeckDesign design, List<Integer> numbers, int priority) {
            this(order, design, numbers, priority, null);
        }
    }

    /** The same question with its lines changed. */
    MatchInput with(List<Line> changed) {
        return new MatchInput(week, asked, changed, designs, pieces, settings, saws, day, hands, reserved, woods);
    }

    public Optional<Piece> piece(String code) {
        return pieces.stream().filter(p -> p.code().equals(code)).findFirst();
    }

    public Optional<Line> line(String order) {
        return lines.stream().filter(l -> l.order().equals(order)).findFirst();
    }

    /** Necks asked for. */
    public int necks() {
        return lines.stream().mapToInt(l -> l.numbers().size()).sum();
    }
}
