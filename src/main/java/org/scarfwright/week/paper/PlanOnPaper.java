package org.scarfwright.week.paper;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.LaidOut;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.wood.Species;

/**
 * A plan with all that its sheets say, read once.
 *
 * @param pieces by code; a piece that left the rack is missing
 * @param saws by code
 * @param designs by code
 * @param woods by id
 * @param unit of the shop
 * @param shortestMachined the shortest piece the shop's planer may hold
 */
public record PlanOnPaper(
        Plan plan,
        Map<String, Piece> pieces,
        Map<String, Saw> saws,
        Map<String, NeckDesign> designs,
        Map<String, Species> woods,
        LengthUnit unit,
        Length shortestMachined) {

    List<LaidOut> cutPieces() {
        return plan.layouts().stream()
                .map(l -> LaidOut.of(plan, l, saw(l.saw()).map(Saw::kerf).orElse(Length.ZERO)))
                .toList();
    }

    Optional<Saw> saw(String code) {
        return Optional.ofNullable(saws.get(code));
    }

    String sawName(String code) {
        return saw(code).map(Saw::name).orElse(code);
    }

    /** The piece as the plan saw it; empty when it left the rack or was measured anew since. */
    Optional<Piece> asPlanned(Plan.PieceLayout layout) {
        return Optional.ofNullable(pieces.get(layout.piece()))
                .filter(p -> p.length().length().equals(layout.length())
                        && p.width().length().equals(layout.width()));
    }

    String woodName(@Nullable Piece piece) {
        return piece == null
                ? "no longer on the rack"
                : String.join(" / ", piece.wood().speciesIds().stream().map(this::woodName).toList());
    }

    private String woodName(String id) {
        Species known = woods.get(id);
        return known == null ? id : known.commonName();
    }

    /** The joint of a neck; empty when its design went or no longer has it. */
    Optional<ScarfJoint> joint(Plan.Pairing pairing) {
        NeckDesign design = designs.get(pairing.design());
        if (design == null) {
            return Optional.empty();
        }
        JointInput input = design.jointInput(pairing.arrangement(), pairing.angle());
        return ScarfJoint.refusals(input).isEmpty() ? Optional.of(ScarfJoint.of(input)) : Optional.empty();
    }

    /**
     * A saw set up once.
     *
     * @param sawnThickness of every piece cut with it
     */
    record SetUp(Angle angle, Length sawnThickness, String saw) {}

    /** Every set-up of the plan once, in the order of its pieces. */
    List<SetUp> setUps() {
        Set<SetUp> found = new LinkedHashSet<>();
        for (Plan.PieceLayout l : plan.layouts()) {
            for (Plan.Cut c : l.cuts()) {
                if (c.angle() != null) {
                    found.add(new SetUp(Objects.requireNonNull(c.angle()), l.sawnThickness(), l.saw()));
                }
            }
        }
        return new ArrayList<>(found);
    }
}
