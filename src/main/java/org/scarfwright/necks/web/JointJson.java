package org.scarfwright.necks.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.HeadOrder;
import org.scarfwright.joint.HeelNeed;
import org.scarfwright.joint.JigWedge;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.joint.OrderedHead;
import org.scarfwright.joint.SawFit;
import org.scarfwright.joint.SawLimits;
import org.scarfwright.joint.SawNeed;
import org.scarfwright.joint.ScaleReading;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.joint.TestCut;
import org.scarfwright.joint.TunerHoles;
import org.scarfwright.joint.VoluteNeed;
import org.scarfwright.joint.WedgeOffcut;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.WoodOnTheRack.PartWood;
import org.scarfwright.necks.WoodOnTheRack.Serving;
import org.scarfwright.shop.Saw;

/** Everything the joint page computes for one arrangement. Lengths in millimetres, rounded to 0.001; signs as in {@link ScarfJoint}. */
@Schema(name = "Joint")
record JointJson(
        @Schema(
                description = "underlaid or overlaid",
                allowableValues = {"underlaid", "overlaid"})
        String arrangement,

        @Schema(description = "Tilt angle in degrees", minimum = "0", maximum = "90")
        BigDecimal angle,

        @Schema(description = "Neck piece along its top, heel end to the start of its bevel", minimum = "0")
        BigDecimal neckFrontMm,

        @Schema(description = "Neck piece along its back", minimum = "0")
        BigDecimal neckBackMm,

        @Schema(description = "Head piece along its front face", minimum = "0")
        BigDecimal headFrontMm,

        @Schema(description = "Head piece along its back", minimum = "0")
        BigDecimal headBackMm,

        @Schema(description = "Length of the glue face in the side view", minimum = "0")
        BigDecimal glueFaceMm,

        @Schema(description = "Glue face times the narrower width, in square millimetres", minimum = "0")
        BigDecimal glueAreaMm2,

        @Schema(
                description =
                        "Glue area over the section it joins: 1 / sin of the angle. The Wood Handbook’s benchmark is at least 10",
                minimum = "1")
        BigDecimal areaRatio,

        @Schema(description = "Seam on the head's front face, from the nut; null where there is none") @Nullable
        BigDecimal seamFromNutMm,

        @Schema(description = "Where the joint ends on the back, from the nut, above 0 toward the tip")
        BigDecimal backEndFromNutMm,

        @Schema(description = "Head wood on the back, from the end of the joint to the tip")
        BigDecimal backOfHeadMm,

        @Schema(description = "Width of each of two wings beside the neck wood; 0 where none are needed", minimum = "0")
        BigDecimal wingWidthMm,

        @Schema(description = "The scarf is 1 to this: cot of the angle", minimum = "0")
        BigDecimal slope,

        @Schema(description = "Gap at one end for each half degree the bevels differ, fronts held flush", minimum = "0")
        BigDecimal gapPerHalfDegreeMm,

        @Schema(description = "Or, clamped shut, how far the front is out of flat", minimum = "0")
        BigDecimal outOfFlatPerHalfDegreeMm,

        @Schema(
                description = "One blank as thick as the thicker part that gives both, with the kerf asked",
                minimum = "0")
        BigDecimal oneBlankMm,

        @Schema(description = "Tuner holes asked about, each with how it lies to the seam")
        List<Hole> tuners,

        @Schema(description = "What must be sawn for each order of thinning the head")
        List<Order> headOrders,

        @Schema(description = "Null when no volute was asked") @Nullable
        Volute volute,

        @Schema(description = "Null when no heel was asked") @Nullable
        Heel heel,

        @Schema(description = "What falls off the neck's bevel")
        Wedge neckWedge,

        @Schema(description = "What falls off the head's bevel")
        Wedge headWedge,

        @Schema(description = "A wedge that backs the longer bevel")
        Jig jigWedge,

        List<SawJson> saws,

        @Schema(description = "Null below 0.5° and from 45° up") @Nullable
        Test testCut,

        Wood neckWood,
        Wood headWood,

        @Schema(description = "What can be made but is unusual, in sentences")
        List<String> notes) {
    private static final Angle HALF_A_DEGREE = new Angle(500);

    /** @param fromSeamMm null where there is no seam */
    @Schema(name = "JointTunerHole")
    record Hole(BigDecimal fromNutMm, @Nullable BigDecimal fromSeamMm, boolean tooNear) {}

    @Schema(name = "JointHeadOrder", description = "Lengths are null when the neck cannot be made in this order")
    record Order(
            @Schema(
                    allowableValues = {
                        "planed-first",
                        "back-before-gluing",
                        "front-before-gluing",
                        "back-after-gluing",
                        "front-after-gluing"
                    })
            String order,

            String words,
            List<String> refusals,
            @Nullable BigDecimal sawnThicknessMm,
            @Nullable BigDecimal headFrontMm,
            @Nullable BigDecimal headBackMm,
            @Nullable BigDecimal neckFrontMm,
            @Nullable BigDecimal neckBackMm,
            @Nullable BigDecimal gluedFaceMm,
            @Nullable BigDecimal finishedFaceMm,
            @Nullable BigDecimal backEndFromNutMm) {
        static Order of(JointInput in, Length stock, HeadOrder order) {
            List<String> refusals = OrderedHead.refusals(in, stock, order).stream()
                    .map(JointRefusal::reason)
                    .toList();
            if (!refusals.isEmpty()) {
                return new Order(order.word(), order.words(), refusals, null, null, null, null, null, null, null, null);
            }
            OrderedHead head = new OrderedHead(in, stock, order);
            return new Order(
                    order.word(),
                    order.words(),
                    List.of(),
                    head.sawnThickness().toMm(),
                    head.headShort().toMm(),
                    head.headLong().toMm(),
                    head.neckShort().toMm(),
                    head.neckLong().toMm(),
                    head.gluedFace().toMm(),
                    head.finishedFace().toMm(),
                    head.backEndFromNut().toMm());
        }
    }

    @Schema(name = "JointVolute")
    record Volute(
            @Schema(description = "Head stock it can be left on when the back is thinned after gluing")
            BigDecimal headStockMm,

            @Schema(description = "Neck piece it can be left on")
            BigDecimal neckStockMm,

            @Schema(description = "How much longer the neck piece's back then is")
            BigDecimal neckLongerMm) {}

    @Schema(name = "JointHeel")
    record Heel(
            @Schema(description = "One block on the neck's back; 0 when the neck is deep enough")
            BigDecimal blockMm,

            @Schema(minimum = "0") int layers,
            BigDecimal lastLayerMm,
            BigDecimal stockLengthMm) {}

    @Schema(name = "JointWedge")
    record Wedge(BigDecimal lengthMm, BigDecimal thicknessMm, BigDecimal widthMm) {
        static Wedge of(WedgeOffcut wedge) {
            return new Wedge(
                    wedge.length().toMm(),
                    wedge.thickness().toMm(),
                    wedge.width().toMm());
        }
    }

    /** @param angleOffPerMm degrees that one millimetre in the rise turns the wedge by */
    @Schema(name = "JointJig")
    record Jig(BigDecimal baseMm, BigDecimal riseMm, BigDecimal faceMm, BigDecimal angleOffPerMm) {}

    @Schema(name = "JointSaw")
    record SawJson(
            String code,
            String name,
            String kind,
            List<String> neckRefusals,
            List<String> headRefusals,

            @Schema(description = "Thickest piece it cuts at this angle")
            BigDecimal greatestThicknessMm,

            BigDecimal greatestWidthMm,

            @Schema(description = "Shallowest angle through the neck; null when no angle of the saw reaches through")
            @Nullable
            BigDecimal shallowestDegrees,

            BigDecimal steepestDegrees,

            @Schema(description = "What can be read on its scale")
            BigDecimal scaleDegrees,

            @Schema(description = "Gap when the bevels are cut at two settings of this scale")
            BigDecimal gapOfScaleMm,

            @Schema(description = "How far the tip moves when one setting is off by half of that")
            BigDecimal tipOffMm) {}

    @Schema(name = "JointTestCut")
    record Test(
            BigDecimal thicknessMm,
            BigDecimal runMm,
            BigDecimal longerWhenHalfADegreeShallowMm,
            BigDecimal shorterWhenHalfADegreeSteepMm,
            BigDecimal doubledDegrees) {}

    @Schema(name = "JointWood")
    record Wood(
            @Schema(description = "As sawn on the shop's first saw, with allowance, truing and kerf")
            BigDecimal lengthMm,

            BigDecimal widthMm,
            BigDecimal thicknessMm,

            @Schema(description = "Codes of pieces on the rack that could serve")
            List<String> pieces,

            @Schema(minimum = "0") int serving,
            @Nullable String nearest,
            List<String> nearestReasons) {
        static Wood of(PartWood part) {
            var nearest = part.nearest();
            return new Wood(
                    part.length().toMm(),
                    part.width().toMm(),
                    part.thickness().toMm(),
                    part.pieces(),
                    part.serving(),
                    nearest == null ? null : nearest.piece(),
                    nearest == null ? List.of() : nearest.reasons());
        }
    }

    static JointJson of(ScarfJoint joint, JointExtras extras, List<Saw> shopSaws, Serving serving) {
        JointInput in = joint.input();
        return new JointJson(
                in.arrangement().word(),
                in.angle().toDegrees(),
                joint.neckFront().toMm(),
                joint.neckBack().toMm(),
                joint.headFront().toMm(),
                joint.headBack().toMm(),
                joint.glueFace().toMm(),
                joint.glueArea().toMm2().setScale(3, RoundingMode.HALF_UP),
                rounded(joint.glueAreaOverSection()),
                mm(joint.seamFromNut()),
                joint.backEndFromNut().toMm(),
                joint.backOfHead().toMm(),
                joint.wingWidth().toMm(),
                rounded(joint.slope()),
                Bevel.gap(joint.glueFace(), HALF_A_DEGREE).toMm(),
                Bevel.gap(joint.bevelInFront(), HALF_A_DEGREE).toMm(),
                joint.onePieceLength(in.neckThickness().max(in.headThickness()), extras.kerf())
                        .toMm(),
                holes(joint, extras.tuners()),
                orders(in, extras.headStock()),
                volute(in, extras.volute()),
                heel(extras),
                Wedge.of(new WedgeOffcut(in.angle(), in.neckThickness(), in.neckWidth())),
                Wedge.of(new WedgeOffcut(in.angle(), extras.headStock(), in.headWidth())),
                jig(in, extras),
                shopSaws.stream().map(saw -> saw(saw, joint, extras)).toList(),
                testCut(in),
                Wood.of(serving.neck()),
                Wood.of(serving.head()),
                JointNotes.of(in));
    }

    private static List<Hole> holes(ScarfJoint joint, TunerHoles holes) {
        List<Length> near = holes.nearSeam(joint);
        Length seam = joint.seamFromNut();
        return holes.fromNut().stream()
                .map(hole -> new Hole(
                        hole.toMm(),
                        seam == null ? null : TunerHoles.distance(hole, seam).toMm(),
                        near.contains(hole)))
                .toList();
    }

    private static List<Order> orders(JointInput in, Length stock) {
        List<Order> orders = new ArrayList<>();
        for (HeadOrder order : HeadOrder.values()) {
            orders.add(Order.of(in, stock, order));
        }
        return orders;
    }

    private static @Nullable Volute volute(JointInput in, @Nullable VoluteNeed volute) {
        return volute == null
                ? null
                : new Volute(
                        volute.headStock(in).toMm(),
                        volute.fromTheNeck(in).neckThickness().toMm(),
                        Bevel.run(volute.height(), in.angle()).toMm());
    }

    private static @Nullable Heel heel(JointExtras extras) {
        HeelNeed heel = extras.heel();
        return heel == null
                ? null
                : new Heel(
                        heel.block().toMm(),
                        heel.layers(),
                        heel.lastLayer().toMm(),
                        heel.stockLength(extras.kerf()).toMm());
    }

    private static SawJson saw(Saw saw, ScarfJoint joint, JointExtras extras) {
        JointInput in = joint.input();
        SawLimits limits = JointBench.limits(saw);
        SawNeed neck = new SawNeed(in.angle(), in.neckThickness(), in.neckWidth());
        SawNeed head = new SawNeed(in.angle(), extras.headStock(), in.headWidth());
        SawFit fit = new SawFit(neck, limits);
        ScaleReading scale = new ScaleReading(saw.scale());
        return new SawJson(
                saw.code(),
                saw.name(),
                saw.kind().name().toLowerCase(Locale.ROOT),
                neck.refusals(limits),
                head.refusals(limits),
                fit.greatestThickness().toMm(),
                fit.greatestWidth().toMm(),
                fit.reachesThrough() ? fit.shallowest().toDegrees() : null,
                saw.steepest().toDegrees(),
                saw.scale().toDegrees(),
                scale.gap(joint.glueFace()).toMm(),
                scale.atTip(in.headLength()).toMm());
    }

    private static Jig jig(JointInput in, JointExtras extras) {
        JigWedge wedge = JigWedge.backing(in.neckThickness().max(extras.headStock()), in.angle());
        return new Jig(
                wedge.base().toMm(),
                wedge.rise().toMm(),
                wedge.face().toMm(),
                wedge.angleOff(Length.ofMm(1)).toDegrees());
    }

    private static @Nullable Test testCut(JointInput in) {
        if (!TestCut.canBeMeasured(in.angle())) {
            return null;
        }
        TestCut cut = new TestCut(in.angle(), in.neckThickness());
        return new Test(
                cut.thickness().toMm(),
                cut.run().toMm(),
                cut.longerWhenShallow().toMm(),
                cut.shorterWhenSteep().toMm(),
                cut.doubled().toDegrees());
    }

    private static BigDecimal rounded(double value) {
        return BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_UP);
    }

    private static @Nullable BigDecimal mm(@Nullable Length length) {
        return length == null ? null : length.toMm();
    }
}
