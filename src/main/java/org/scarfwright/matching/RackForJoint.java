package org.scarfwright.matching;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.WoodOnTheRack;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceList;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Pieces;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.Shop;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;

/** Asks the rules of a match about a joint that is no design yet. Looks at a bounded number of pieces, however full the rack is. */
@Component
class RackForJoint implements WoodOnTheRack {
    private static final int LOOKED_AT = 200;
    private static final int NAMED = 8;

    private final Pieces pieces;
    private final Shop shop;
    private final SpeciesCatalog woods;
    private final Clock clock;

    RackForJoint(Pieces pieces, Shop shop, SpeciesCatalog woods, Clock clock) {
        this.pieces = pieces;
        this.shop = shop;
        this.woods = woods;
        this.clock = clock;
    }

    @Override
    public Serving serving(ScarfJoint joint) {
        ShopRules rules = new ShopRules(shop.settings(), shop.saws(), LocalDate.now(clock), WoodWords.of(woods.all()));
        Way way = Way.of(asDesign(joint.input())).get(0);
        return new Serving(part(way.neck(), rules), part(way.head(), rules));
    }

    private PartWood part(PartNeed need, ShopRules rules) {
        Saw first = rules.saws().get(0);
        Length least = rules.saws().stream()
                .map(saw -> need.section(saw, need.thickness()))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        PieceList large = pieces.list(
                new PieceFilter("", null, PieceState.ON_RACK, null, least, need.width(), need.thickness()),
                PieceFilter.Sort.CODE,
                1,
                LOOKED_AT);
        List<String> serving = large.pieces().stream()
                .filter(piece -> PartRules.allFit(Trial.of(need, piece, rules)))
                .map(Piece::code)
                .toList();
        return new PartWood(
                need.section(first, need.thickness()),
                need.width(),
                need.thickness(),
                serving.stream().limit(NAMED).toList(),
                serving.size(),
                large.pages() == 1,
                serving.isEmpty() ? nearest(need, rules) : null);
    }

    private @Nullable Nearest nearest(PartNeed need, ShopRules rules) {
        PieceFilter onRack = new PieceFilter("", null, PieceState.ON_RACK, null, null, null, null);
        return pieces.list(onRack, PieceFilter.Sort.LONGEST, 1, LOOKED_AT).pieces().stream()
                .map(piece -> new Close(piece, PartRules.refusals(Trial.of(need, piece, rules))))
                .min(Comparator.comparingDouble(Close::distance)
                        .thenComparing(c -> c.piece().code()))
                .map(c -> new Nearest(
                        c.piece().code(),
                        c.refused().stream().map(Verdict.Refused::reason).toList()))
                .orElse(null);
    }

    private record Close(Piece piece, List<Verdict.Refused> refused) {
        double distance() {
            return refused.stream().mapToDouble(NearestMisses::weight).sum();
        }
    }

    private static NeckDesign asDesign(JointInput in) {
        return new NeckDesign(
                0,
                0,
                "",
                "",
                TypedLength.of(in.neckLength()),
                TypedLength.of(in.neckWidth()),
                TypedLength.of(in.neckWidth()),
                TypedLength.of(in.neckThickness()),
                TypedLength.of(in.headLength()),
                TypedLength.of(in.headWidth()),
                TypedLength.of(in.headThickness()),
                List.of(in.angle()),
                List.of(in.arrangement()),
                FaceFinish.OPAQUE,
                List.of(),
                List.of(),
                MatchRule.ANY,
                false,
                true,
                TypedLength.of(ALLOWANCE),
                TypedLength.of(ALLOWANCE));
    }
}
