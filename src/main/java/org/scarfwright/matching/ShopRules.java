package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.scarfwright.joint.SawLimits;
import org.scarfwright.joint.SawNeed;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopSettings;

/**
 * What the shop can do and asks for.
 *
 * @param saws in the shop's order of preference, never empty
 * @param day the day the wood must be ready
 * @param woods what woods are called in sentences
 */
record ShopRules(ShopSettings settings, List<Saw> saws, LocalDate day, WoodWords woods) {
    ShopRules {
        saws = List.copyOf(saws);
    }

    static ShopRules of(MatchInput input) {
        return new ShopRules(input.settings(), input.saws(), input.day(), input.woods());
    }

    /** The first saw, in the shop's order, that makes this cut through a piece on edge. */
    Optional<Saw> sawFor(Piece piece, Length sawn, Angle angle) {
        return saws.stream()
                .filter(s -> refusals(s, piece, sawn, angle).isEmpty())
                .findFirst();
    }

    static List<String> refusals(Saw saw, Piece piece, Length sawn, Angle angle) {
        return new SawNeed(angle, sawn, piece.width().length())
                .refusals(new SawLimits(saw.depth(), saw.reach(), saw.shallowest(), saw.steepest()));
    }
}
