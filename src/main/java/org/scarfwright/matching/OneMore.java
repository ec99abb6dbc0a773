package org.scarfwright.matching;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.GrainCut;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Warp;
import org.scarfwright.shop.Saw;

/**
 * What one more blank would give an order that has no wood, beside what the plan leaves on the rack: flat, free and at a
 * moisture to glue at, of a wood the order may have. The rules that judge the rack judge it too.
 *
 * <p><b>Source:</b> the lengths follow from the joint; the smallest blank is the part as sawn with the shop's allowances, in whole
 * millimetres, rounded up. Derived here.
 */
final class OneMore {
    private static final String CODE = "one more";
    private static final long UM_PER_MM = 1000;

    /** Where the order takes any wood, no rule looks at the name. */
    private static final String ANY_WOOD = "any";

    private final MatchInput input;
    private final ShopRules shop;
    private final ByHand byHand;
    private final Set<String> used;
    private final Map<PartNeed, List<Piece>> left = new HashMap<>();

    /** @param used codes of the pieces the plan cuts */
    OneMore(MatchInput input, Set<String> used) {
        this.input = input;
        this.shop = ShopRules.of(input);
        this.byHand = new ByHand(input.hands());
        this.used = Set.copyOf(used);
    }

    /** A blank as it would be bought. */
    record Blank(Length length, Length width, Length thickness) {
        /** Such as: 575 × 62 × 22 mm. */
        String words() {
            return number(length) + " × " + number(width) + " × " + Words.mm(thickness);
        }

        private static String number(Length length) {
            return Words.mm(length).replace(" mm", "");
        }

        private BigInteger volume() {
            return BigInteger.valueOf(length.um())
                    .multiply(BigInteger.valueOf(width.um()))
                    .multiply(BigInteger.valueOf(thickness.um()));
        }
    }

    /** What the blank would be: "the neck underlaid at 10°, with S4 as the head"; empty when it does not fill the order. */
    Optional<String> fills(MatchInput.Line line, Blank blank) {
        for (Way way : Way.of(line.design())) {
            Optional<String> one = fills(line, way, blank);
            if (one.isPresent()) {
                return one;
            }
        }
        return Optional.empty();
    }

    BlankAnswer answer(MatchInput.Line line, Blank blank) {
        Optional<String> as = fills(line, blank);
        return new BlankAnswer(
                line.order(),
                as.isPresent(),
                line.order() + ": it would " + as.map("be "::concat).orElseGet(() -> "not help; " + whyNot(line, blank))
                        + ".");
    }

    /** What refuses the blank in the first way the order may be made. */
    private String whyNot(MatchInput.Line line, Blank blank) {
        List<Way> ways = Way.of(line.design());
        if (ways.isEmpty()) {
            return "no joint of this design can be made";
        }
        List<String> reasons = new ArrayList<>();
        for (PartNeed need : List.of(ways.get(0).neck(), ways.get(0).head())) {
            List<Verdict.Refused> refused = PartRules.refusals(Trial.of(need, piece(line, need, blank, null), shop));
            if (!refused.isEmpty()) {
                reasons.add("as the " + Words.role(need.role()) + " "
                        + refused.get(0).reason());
            }
        }
        return reasons.isEmpty()
                ? "nothing left on the rack goes with it"
                : Words.list(reasons) + (reasons.size() == 1 ? ", and nothing left on the rack goes with it" : "");
    }

    private Optional<String> fills(MatchInput.Line line, Way way, Blank blank) {
        String how = " " + way.arrangement().word() + " at " + way.angle();
        for (Role role : Role.values()) {
            PartNeed need = role == Role.NECK ? way.neck() : way.head();
            Optional<Piece> partner = partner(line, way, role, blank);
            if (partner.isPresent()) {
                return Optional.of("the " + Words.role(need.role()) + how + ", with "
                        + partner.get().code() + " as the " + (role == Role.NECK ? "head" : "neck"));
            }
        }
        Piece alone = piece(line, way.neck(), blank, null);
        return PartRules.allFit(Trial.of(way.neck(), alone, shop))
                        && PartRules.allFit(Trial.of(way.head(), alone, shop))
                        && PairRules.allFit(new PairTrial(line.design(), alone, alone, shop))
                        && NearestMisses.givesBoth(way, alone, shop)
                ? Optional.of("the neck and the head" + how)
                : Optional.empty();
    }

    /** The first piece left on the rack that goes with the blank as this part. */
    private Optional<Piece> partner(MatchInput.Line line, Way way, Role role, Blank blank) {
        PartNeed need = role == Role.NECK ? way.neck() : way.head();
        PartNeed other = role == Role.NECK ? way.head() : way.neck();
        return left(line, other).stream()
                .filter(partner -> {
                    Piece alike = piece(line, need, blank, partner);
                    return PartRules.allFit(Trial.of(need, alike, shop))
                            && PairRules.allFit(
                                    role == Role.NECK
                                            ? new PairTrial(line.design(), alike, partner, shop)
                                            : new PairTrial(line.design(), partner, alike, shop));
                })
                .findFirst();
    }

    private List<Piece> left(MatchInput.Line line, PartNeed need) {
        return left
                .computeIfAbsent(
                        need,
                        n -> input.pieces().stream()
                                .filter(p -> !used.contains(p.code()))
                                .filter(p -> PartRules.allFit(Trial.of(n, p, shop)))
                                .toList())
                .stream()
                .filter(p -> byHand.allows(line, need.role(), p.code()))
                .toList();
    }

    /** As a sentence: the smallest blank that would fill the order; empty when no single blank of any size would. */
    Optional<String> cheapest(MatchInput.Line line) {
        return candidates(line).stream()
                .sorted(Comparator.comparing(Blank::volume).thenComparing(Blank::length))
                .flatMap(b -> fills(line, b).stream()
                        .map(as -> "One blank of " + b.words() + wood(line) + " or more, flat, would be " + as + "."))
                .findFirst();
    }

    private String wood(MatchInput.Line line) {
        NeckDesign d = line.design();
        List<String> woods = d.neckWoods().isEmpty() ? d.headWoods() : d.neckWoods();
        return switch (d.match()) {
            case SAME_LOT -> " from the lot of the other part";
            case SAME_WOOD -> " of the other part's wood";
            case ANY, SAME_PIECE -> woods.isEmpty() ? "" : " of " + shop.woods().any(woods);
        };
    }

    /** The smallest blanks that could be a neck, a head or both, for every way and saw. */
    private List<Blank> candidates(MatchInput.Line line) {
        List<Blank> found = new ArrayList<>();
        for (Way way : Way.of(line.design())) {
            for (Saw saw : shop.saws()) {
                for (PartNeed need : List.of(way.neck(), way.head())) {
                    // Where the machine holds nothing so short, a longer blank is planed whole and crosscut last.
                    Length section = need.section(saw, need.thickness());
                    found.add(blank(section, need.width(), need.thickness()));
                    found.add(blank(section.max(shop.settings().shortestMachined()), need.width(), need.thickness()));
                }
                Length thick = way.neck().thickness().max(way.head().thickness());
                Length both = way.neck()
                        .shortSide(saw)
                        .plus(way.head().shortSide(saw))
                        .plus(MatchModel.bevelLength(saw, thick, way.angle()));
                found.add(blank(both, way.neck().width().max(way.head().width()), thick));
            }
        }
        return found;
    }

    private Blank blank(Length length, Length width, Length thickness) {
        return new Blank(
                wholeMm(length),
                wholeMm(width.plus(shop.settings().edgeAllowance())),
                wholeMm(thickness.plus(shop.settings().planingPerFace().times(2))));
    }

    private static Length wholeMm(Length length) {
        return Length.ofUm(-Math.floorDiv(-length.um(), UM_PER_MM) * UM_PER_MM);
    }

    /** @param partner whose wood it is of where the design asks for that; empty when it stands alone */
    private Piece piece(MatchInput.Line line, PartNeed need, Blank blank, @Nullable Piece partner) {
        Piece alike = line.design().match() == MatchRule.ANY ? null : partner;
        PieceWood wood = alike != null
                ? alike.wood()
                : new PieceWood.Solid(
                        need.woods().isEmpty() ? ANY_WOOD : need.woods().get(0));
        LocalDate today = input.day();
        return new Piece(
                0,
                0,
                CODE,
                PieceState.ON_RACK,
                wood,
                TypedLength.of(blank.length()),
                TypedLength.of(blank.width()),
                TypedLength.of(blank.thickness()),
                GrainCut.UNKNOWN,
                null,
                null,
                new Warp(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO, today),
                Length.ZERO,
                Length.ZERO,
                List.of(),
                false,
                false,
                alike == null ? null : alike.lot(),
                null,
                null,
                null,
                "",
                today);
    }
}
