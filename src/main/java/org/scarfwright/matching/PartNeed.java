package org.scarfwright.matching;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.Bevel;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.shop.Saw;

/**
 * One part of a neck under one arrangement and angle: what a piece must give for it. Everything is rounded up.
 *
 * @param bare the short side the joint asks for and the design's end allowance; each saw adds its own for truing
 * @param thickness finished thickness, the least it may be sawn at
 * @param width least width with the design's side allowance
 * @param widthWithoutWings the width from which on the head needs no wings; the same as {@code width} where wings play no part
 */
record PartNeed(
        NeckDesign design,
        Role role,
        Arrangement arrangement,
        Angle angle,
        Length bare,
        Length thickness,
        Length width,
        Length widthWithoutWings) {

    /** As sawn, with what is left on for truing the bevel. */
    Length shortSide(Saw saw) {
        return bare.plus(saw.truing());
    }

    /** As sawn, with the run of the bevel. */
    Length longSide(Saw saw, Length sawn) {
        return Bevel.longSide(shortSide(saw), sawn, angle);
    }

    /**
     * The stretch this part takes when it is cut by itself. It is crosscut to this length, flattened, then the bevel is cut;
     * the saw's kerf lies beyond the long side.
     */
    Length section(Saw saw, Length sawn) {
        return longSide(saw, sawn).plus(Bevel.kerfRun(saw.kerf(), angle));
    }

    /** Species it may be of; empty means any. */
    List<String> woods() {
        return role == Role.NECK ? design.neckWoods() : design.headWoods();
    }

    /**
     * Width of each of the two wings when this neck is as wide as given; empty when it needs none. Rounded up.
     *
     * @param partWidth with the side allowance, at least {@link #width}
     */
    @Nullable
    Length wing(Length partWidth) {
        Length missing = widthWithoutWings.minus(partWidth);
        return missing.isPositive() ? missing.halfUp() : null;
    }

    /** Such as: neck underlaid at 10°. */
    String title() {
        return Words.role(role) + " " + arrangement.word() + " at " + angle;
    }
}
