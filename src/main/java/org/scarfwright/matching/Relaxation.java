package org.scarfwright.matching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.DesignRules;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.ShopSettings;

/**
 * A change to a design or to the shop's rules that might fill an order.
 *
 * @param condition how the sentence begins, such as: If the head may be overlaid
 * @param setAsideAllowed pieces set aside as warped may be necks
 */
record Relaxation(String condition, NeckDesign design, ShopRules shop, boolean setAsideAllowed) {
    private static final int PLANING_STEP_UM = 500;
    private static final int ANGLE_STEP = 500;
    private static final int ANGLE_FURTHEST = 6000;
    private static final int STRAIGHTNESS_STEP_UM = 500;
    private static final int STRAIGHTNESS_STEPS = 4;

    /** Every single change, the one that asks least of the maker first. */
    static List<Relaxation> of(NeckDesign design, ShopRules shop) {
        List<Relaxation> all = new ArrayList<>();
        otherArrangement(design)
                .ifPresent(d -> all.add(new Relaxation(
                        "If the head may be " + d.arrangements().get(0).word(), d, shop, false)));
        if (!design.wingsAllowed()) {
            all.add(new Relaxation("With wings on the head", with(design, b -> b.wings = true), shop, false));
        }
        all.add(new Relaxation("If a piece set aside as warped may be the neck", design, shop, true));
        lessPlaning(design, shop).forEach(all::add);
        otherAngles(design, shop).forEach(all::add);
        if (design.endAllowance().length().isPositive()) {
            all.add(new Relaxation(
                    "Without the design's end allowance of "
                            + Words.mm(design.endAllowance().length()),
                    with(design, b -> b.endAllowance = TypedLength.of(Length.ZERO)),
                    shop,
                    false));
        }
        lessStraight(design, shop).forEach(all::add);
        switch (design.match()) {
            case SAME_PIECE -> {
                all.add(new Relaxation(
                        "If neck and head need only be of the same wood",
                        with(design, b -> b.match = MatchRule.SAME_WOOD),
                        shop,
                        false));
            }
            case SAME_LOT -> {
                all.add(new Relaxation(
                        "If neck and head may come from two lots",
                        with(design, b -> b.match = MatchRule.SAME_WOOD),
                        shop,
                        false));
            }
            case SAME_WOOD -> {
                all.add(new Relaxation(
                        "If the head may be of another wood than the neck",
                        with(design, b -> b.match = MatchRule.ANY),
                        shop,
                        false));
            }
            case ANY -> {
                // Nothing is asked that could be let go.
            }
        }
        if (design.linesMeet()) {
            all.add(new Relaxation(
                    "If the lamination lines need not meet", with(design, b -> b.linesMeet = false), shop, false));
        }
        Optional<NeckDesign> other = otherArrangement(design);
        if (other.isPresent() && !design.wingsAllowed()) {
            all.add(new Relaxation(
                    "If the head may be " + other.get().arrangements().get(0).word() + " and have wings",
                    with(other.get(), b -> b.wings = true),
                    shop,
                    false));
        }
        return all;
    }

    /** The piece as this change sees it. */
    Piece see(Piece p) {
        if (!setAsideAllowed || !p.setAside() || p.neckAllowed()) {
            return p;
        }
        return new Piece(
                p.id(),
                p.version(),
                p.code(),
                p.state(),
                p.wood(),
                p.length(),
                p.width(),
                p.thickness(),
                p.grain(),
                p.grainSlope(),
                p.moisture(),
                p.warp(),
                p.trimLeft(),
                p.trimRight(),
                p.defects(),
                true,
                true,
                p.lot(),
                p.lotReadyOn(),
                p.place(),
                p.cost(),
                p.note(),
                p.since());
    }

    private static Optional<NeckDesign> otherArrangement(NeckDesign design) {
        if (design.arrangements().size() != 1) {
            return Optional.empty();
        }
        Arrangement other = design.arrangements().get(0).other();
        return Optional.of(with(design, b -> b.arrangements = List.of(other)));
    }

    /** Less off both faces together, half a millimetre at a time, down to nothing. */
    private static List<Relaxation> lessPlaning(NeckDesign design, ShopRules shop) {
        List<Relaxation> found = new ArrayList<>();
        long perFace = shop.settings().planingPerFace().um();
        for (long less = PLANING_STEP_UM; less <= 2 * perFace; less += PLANING_STEP_UM) {
            ShopSettings s = shop.settings();
            Length face = Length.ofUm(perFace - less / 2);
            found.add(new Relaxation(
                    "With " + Words.mm(Length.ofUm(less)) + " less planing in all",
                    design,
                    with(shop, face, s.neckStraightness()),
                    false));
        }
        return found;
    }

    private static List<Relaxation> lessStraight(NeckDesign design, ShopRules shop) {
        List<Relaxation> found = new ArrayList<>();
        for (int i = 1; i <= STRAIGHTNESS_STEPS; i++) {
            ShopSettings s = shop.settings();
            Length limit = s.neckStraightness().plus(Length.ofUm((long) i * STRAIGHTNESS_STEP_UM));
            found.add(new Relaxation(
                    "If a neck may be out of straight by " + Words.mm(limit) + " before planing",
                    design,
                    with(shop, s.planingPerFace(), limit),
                    false));
        }
        return found;
    }

    /** Half a degree at a time away from the nearest allowed angle, shallower before steeper. */
    private static List<Relaxation> otherAngles(NeckDesign design, ShopRules shop) {
        List<Relaxation> found = new ArrayList<>();
        int shallowest =
                design.angles().stream().mapToInt(Angle::millidegrees).min().orElseThrow();
        int steepest =
                design.angles().stream().mapToInt(Angle::millidegrees).max().orElseThrow();
        for (int step = ANGLE_STEP; step <= ANGLE_FURTHEST; step += ANGLE_STEP) {
            for (Angle angle : List.of(new Angle(shallowest - step), new Angle(steepest + step))) {
                if (DesignRules.angleOutOfRange(angle).isEmpty()) {
                    found.add(new Relaxation(
                            "With the head at " + angle, with(design, b -> b.angles = List.of(angle)), shop, false));
                }
            }
        }
        return found;
    }

    private static ShopRules with(ShopRules shop, Length planingPerFace, Length neckStraightness) {
        ShopSettings s = shop.settings();
        return new ShopRules(
                new ShopSettings(
                        s.unit(),
                        s.currency(),
                        planingPerFace,
                        s.edgeAllowance(),
                        neckStraightness,
                        s.shortestMachined(),
                        s.usableRestLength(),
                        s.usableRestWidth(),
                        s.neckGrainSlope(),
                        s.driest(),
                        s.wettest(),
                        s.moistureApart(),
                        s.searchSeconds(),
                        s.searchMemoryMb()),
                shop.saws(),
                shop.day(),
                shop.woods());
    }

    /** What of a design is changed here. */
    private static final class Changed {
        List<Angle> angles;
        List<Arrangement> arrangements;
        MatchRule match;
        boolean linesMeet;
        boolean wings;
        TypedLength endAllowance;

        Changed(NeckDesign d) {
            angles = d.angles();
            arrangements = d.arrangements();
            match = d.match();
            linesMeet = d.linesMeet();
            wings = d.wingsAllowed();
            endAllowance = d.endAllowance();
        }
    }

    /** The design with fewer arrangements and angles. */
    static NeckDesign with(NeckDesign design, List<Arrangement> arrangements, List<Angle> angles) {
        return arrangements.equals(design.arrangements()) && angles.equals(design.angles())
                ? design
                : with(design, b -> {
                    b.arrangements = arrangements;
                    b.angles = angles;
                });
    }

    private static NeckDesign with(NeckDesign d, Consumer<Changed> change) {
        Changed c = new Changed(d);
        change.accept(c);
        return new NeckDesign(
                d.id(),
                d.version(),
                d.code(),
                d.name(),
                d.neckLength(),
                d.nutWidth(),
                d.heelWidth(),
                d.neckThickness(),
                d.headLength(),
                d.headWidth(),
                d.headThickness(),
                c.angles,
                c.arrangements,
                d.finish(),
                d.neckWoods(),
                d.headWoods(),
                c.match,
                c.linesMeet,
                c.wings,
                c.endAllowance,
                d.sideAllowance());
    }
}
