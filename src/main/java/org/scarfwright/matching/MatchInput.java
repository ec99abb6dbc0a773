package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopSettings;

/**
 * Everything a plan is made from, read once before the search starts.
 *
 * @param lines what is still to be made, in order of priority (highest first), due day, code
 * @param designs every design on file, in order of their codes
 * @param pieces free pieces, in order of their codes
 * @param saws in the shop's order of preference
 * @param day the day the wood must be ready: the week's Monday, or today when that is later
 */
public record MatchInput(
        IsoWeek week,
        List<Line> lines,
        List<NeckDesign> designs,
        List<Piece> pieces,
        ShopSettings settings,
        List<Saw> saws,
        LocalDate day) {
    public MatchInput {
        lines = List.copyOf(lines);
        designs = List.copyOf(designs);
        pieces = List.copyOf(pieces);
        saws = List.copyOf(saws);
    }

    /**
     * The necks of one order that no accepted plan has yet.
     *
     * @param order code of the order
     * @param numbers which necks of the order, counted from 1, ascending; never empty
     * @param priority 1 to 9
     */
    public record Line(String order, NeckDesign design, List<Integer> numbers, int priority) {
        public Line {
            numbers = List.copyOf(numbers);
        }
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
