package org.scarfwright.week.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JigWedge;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.SawNeed;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.LaidOut;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.wood.Species;

/**
 * A plan with all that its sheets say, read once.
 *
 * @param givenUp necks the plan makes no longer
 * @param pieces by code; a piece that left the rack is missing
 * @param saws by code
 * @param designs by code
 * @param woods by id
 * @param unit of the shop
 * @param shortestMachined the shortest piece the shop's planer may hold
 */
public record PlanOnPaper(
        Plan plan,
        Set<PlannedNeck> givenUp,
        Map<String, Piece> pieces,
        Map<String, Saw> saws,
        Map<String, NeckDesign> designs,
        Map<String, Species> woods,
        LengthUnit unit,
        Length shortestMachined) {

    /** Pieces that give a neck the plan still makes. */
    private List<Plan.PieceLayout> layouts() {
        Set<String> needed = new HashSet<>();
        plan.pairings().stream().filter(p -> !isGivenUp(p)).forEach(p -> needed.addAll(p.pieces()));
        return plan.layouts().stream().filter(l -> needed.contains(l.piece())).toList();
    }

    boolean isGivenUp(Plan.Pairing pairing) {
        return givenUp.contains(pairing.of(plan.id()));
    }

    List<LaidOut> cutPieces() {
        return layouts().stream()
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
                : String.join(
                        " / ",
                        piece.wood().speciesIds().stream().map(this::woodName).toList());
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
        for (Plan.PieceLayout l : layouts()) {
            for (Plan.Cut c : l.cuts()) {
                if (c.angle() != null) {
                    found.add(new SetUp(Objects.requireNonNull(c.angle()), l.sawnThickness(), l.saw()));
                }
            }
        }
        return new ArrayList<>(found);
    }

    // For the bench, which shows one neck at a time

    private Optional<Plan.Pairing> pairing(String order, int number) {
        return plan.pairings().stream()
                .filter(p -> p.order().equals(order) && p.number() == number)
                .findFirst();
    }

    /** The pieces of a neck, each with what it gives: "neck", "head" or "neck and head". */
    public Map<String, String> piecesOf(String order, int number) {
        Map<String, String> pieces = new LinkedHashMap<>();
        pairing(order, number).ifPresent(p -> {
            pieces.put(p.neck().piece(), "neck");
            pieces.merge(p.head().piece(), "head", (neck, head) -> neck + " and " + head);
        });
        return pieces;
    }

    /** Name of a piece's wood. */
    public String woodOf(String piece) {
        return woodName(pieces.get(piece));
    }

    /** Where a piece stands; empty when nobody noted it. */
    public String placeOf(String piece) {
        Piece found = pieces.get(piece);
        return found == null || found.place() == null ? "" : found.place();
    }

    /** How a piece is cut, to scale; none when it is no longer as the plan saw it. */
    public List<StripDrawing> strips(String piece) {
        return cutPieces().stream()
                .filter(l -> l.layout().piece().equals(piece))
                .flatMap(l -> asPlanned(l.layout())
                        .map(p -> StripDrawing.layout(
                                l.strip(p),
                                new StripDrawing.Scale(
                                        l.layout().length(), l.layout().sawnThickness())))
                        .stream())
                .toList();
    }

    /** The joint of a neck from the side. */
    public Optional<JointDrawing> side(String order, int number) {
        return pairing(order, number).flatMap(this::joint).map(j -> JointDrawing.side(j, unit));
    }

    /** How the saw stands for one part of a neck, one sentence each. */
    public List<String> sawSettings(String order, int number, boolean head) {
        return pairing(order, number).stream()
                .flatMap(p -> {
                    Plan.Part part = head ? p.head() : p.neck();
                    return plan.layouts().stream()
                            .filter(l -> l.piece().equals(part.piece()))
                            .flatMap(l -> List.of(
                                    sawSetting(l, p.angle(), part.width()),
                                    "Part " + (plan.pairings().indexOf(p) + 1) + (head ? " head" : " neck") + ": "
                                            + format().number(part.from()) + " to " + format().print(part.to())
                                            + " from the left end, short side " + format().print(part.shortSide())
                                            + ", bevel at the " + (part.bevelAtLeft() ? "left" : "right") + ".")
                                    .stream());
                })
                .toList();
    }

    /** How a saw stands for one bevel. */
    String sawSetting(Plan.PieceLayout layout, Angle angle, Length widest) {
        SawNeed need = new SawNeed(angle, layout.sawnThickness(), widest);
        JigWedge wedge = JigWedge.backing(layout.sawnThickness(), angle);
        LengthFormat format = format();
        return sawName(layout.saw()) + ", piece on edge, at " + angle + " to its face ("
                + new Angle(90_000 - angle.millidegrees())
                + " off a square cut): the cut is " + format.print(need.reach()) + " long and "
                + format.print(need.depth())
                + " deep."
                + saw(layout.saw())
                        .map(s -> " Leave " + format.print(s.truing()) + " on each short side for truing.")
                        .orElse("")
                + " Jig wedge: base " + format.print(wedge.base()) + ", thick end " + format.print(wedge.rise())
                + "; printed true to scale on the jig template.";
    }

    LengthFormat format() {
        return new LengthFormat(unit, Locale.ROOT);
    }
}
