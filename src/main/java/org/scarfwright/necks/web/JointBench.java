package org.scarfwright.necks.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
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
import org.scarfwright.shop.Saw;

/**
 * What the joint page says about making the joint: the order of work, what goes beside the joint, and the saws.
 *
 * @param tuners how the tuner holes lie to the seam, in sentences
 * @param near whether one of them is too near
 * @param orders for both arrangements
 * @param beside volute, heel and the wedges that fall off
 * @param template the jig wedge on paper
 * @param testCut steps
 */
record JointBench(
        List<String> tuners,
        boolean near,
        List<Orders> orders,
        List<Fact> beside,
        List<SawCard> saws,
        Template template,
        List<String> testCut) {
    private static final Length HUNDRED = Length.ofMm(100);
    private static final Length ONE = Length.ofMm(1);
    private static final Length JUST_ABOVE = Length.ofMm(5);

    /**
     * Every order of thinning the head, under one arrangement.
     *
     * @param name such as Underlaid
     */
    record Orders(String name, List<Order> rows) {}

    /**
     * One order.
     *
     * @param refusal why it cannot be done so, a sentence; null when it can
     */
    record Order(
            String words,
            String head,
            String neck,
            String glueFace,
            String backEnd,
            @Nullable String refusal) {}

    /** A figure with the row of the page of sources it comes from. */
    record Fact(String anchor, String name, String value) {}

    /**
     * One saw.
     *
     * @param setting how the cut is set up on its kind, sentences
     * @param neck why it cannot cut the neck, reading on from its name; empty when it can
     * @param head the same for the head
     * @param facts what would fit, the jig, the scale
     */
    record SawCard(String name, String setting, List<String> neck, List<String> head, List<Fact> facts) {}

    /** What the jig wedge printed at 1 : 1 is asked by: the angle, and the thicker piece at the saw. */
    record Template(String angle, String thickness) {}

    static JointBench of(JointInput input, JointExtras extras, List<Saw> saws, Shown shown) {
        return new Writer(input, extras, shown).bench(saws);
    }

    static SawLimits limits(Saw saw) {
        return new SawLimits(saw.depth(), saw.reach(), saw.shallowest(), saw.steepest());
    }

    private record Writer(JointInput input, JointExtras extras, Shown shown) {
        JointBench bench(List<Saw> saws) {
            return new JointBench(
                    tuners(),
                    !near().isEmpty(),
                    List.of(orders(Arrangement.UNDERLAID), orders(Arrangement.OVERLAID)),
                    beside(),
                    saws.stream().map(this::card).toList(),
                    new Template(
                            input.angle().toString(),
                            input.neckThickness().max(extras.headStock()).toString()),
                    testCut());
        }

        private @Nullable ScarfJoint joint(Arrangement arrangement) {
            JointInput in = input.with(arrangement);
            return ScarfJoint.refusals(in).isEmpty() ? ScarfJoint.of(in) : null;
        }

        private List<Length> near() {
            ScarfJoint joint = joint(Arrangement.UNDERLAID);
            return joint == null ? List.of() : extras.tuners().nearSeam(joint);
        }

        private List<String> tuners() {
            ScarfJoint joint = joint(Arrangement.UNDERLAID);
            if (joint == null || extras.tuners().fromNut().isEmpty()) {
                return List.of();
            }
            Length seam = joint.seamFromNut();
            List<String> said = new ArrayList<>();
            for (Length hole : near()) {
                said.add("The tuner hole at " + shown.length(hole) + " lies "
                        + shown.length(TunerHoles.distance(hole, Objects.requireNonNull(seam)))
                        + " from the seam of an underlaid head, which is " + shown.length(seam)
                        + " from the nut: move it, change the angle, or overlay the head.");
            }
            if (said.isEmpty()) {
                said.add("No tuner hole comes within " + shown.length(TunerHoles.CLEAR_OF_SEAM)
                        + " of the seam of an underlaid head, and an overlaid head has none.");
            }
            return said;
        }

        private Orders orders(Arrangement arrangement) {
            List<Order> rows = new ArrayList<>();
            for (HeadOrder order : HeadOrder.values()) {
                rows.add(order(input.with(arrangement), order));
            }
            return new Orders(arrangement == Arrangement.UNDERLAID ? "Underlaid" : "Overlaid", rows);
        }

        private Order order(JointInput in, HeadOrder order) {
            String words = order.words().substring(0, 1).toUpperCase(Locale.ROOT)
                    + order.words().substring(1);
            List<JointRefusal> refusals = OrderedHead.refusals(in, extras.headStock(), order);
            if (!refusals.isEmpty()) {
                JointRefusal first = refusals.get(0);
                return new Order(words, "–", "–", "–", "–", label(first.field()) + " " + first.reason() + ".");
            }
            OrderedHead head = new OrderedHead(in, extras.headStock(), order);
            Length end = head.backEndFromNut();
            return new Order(
                    words,
                    shown.length(head.headShort()) + " front, " + shown.length(head.headLong()) + " back, "
                            + shown.length(head.sawnThickness()) + " thick",
                    shown.length(head.neckShort()) + " front, " + shown.length(head.neckLong()) + " back",
                    head.gluedFace().equals(head.finishedFace())
                            ? shown.length(head.gluedFace())
                            : shown.length(head.gluedFace()) + ", " + shown.length(head.finishedFace())
                                    + " when it is thinned",
                    (end.isPositive() ? "+" : "") + shown.length(end),
                    null);
        }

        private static String label(String field) {
            return field.equals(JointExtras.Field.HEAD_STOCK.key())
                    ? JointExtras.Field.HEAD_STOCK.label()
                    : JointForm.label(field);
        }

        private List<Fact> beside() {
            List<Fact> facts = new ArrayList<>();
            VoluteNeed volute = extras.volute();
            if (volute != null) {
                facts.add(new Fact("joint-volute", "Volute from the head’s wood", fromHead(volute)));
                facts.add(new Fact("joint-volute", "Volute from the neck’s wood", fromNeck(volute)));
                facts.add(
                        new Fact(
                                "joint-volute",
                                "Volute from a block",
                                "a block " + shown.length(volute.height())
                                        + " thick on the neck’s back below the nut, its grain "
                                        + "along the neck, glued once the joint has cured. Neck and head stay as they are above."));
            }
            HeelNeed heel = extras.heel();
            if (heel != null) {
                facts.add(new Fact("joint-heel", "Heel", heel(heel)));
            }
            facts.add(
                    new Fact(
                            "joint-wedge",
                            "Wedges that fall off",
                            "the neck’s is " + wedge(input.neckThickness(), input.neckWidth()) + ", the head’s "
                                    + wedge(extras.headStock(), input.headWidth())
                                    + " (length, thickness at the thick end, width). Keep them: each has the joint’s own angle, so one "
                                    + "under a clamp makes its outer faces parallel. Two bevels that share one cut leave none."));
            return facts;
        }

        private String fromHead(VoluteNeed volute) {
            Length stock = volute.headStock(input);
            return extras.headStock().isShorterThan(stock)
                    ? "needs head stock of " + shown.length(stock) + ", which is "
                            + shown.length(stock.minus(extras.headStock())) + " more than the "
                            + shown.length(extras.headStock())
                            + " given. It is left standing when the back is thinned after gluing."
                    : "the head stock of " + shown.length(extras.headStock())
                            + " has it: leave it standing when the back "
                            + "is thinned after gluing. The neck piece and the seam stay as they are.";
        }

        private String fromNeck(VoluteNeed volute) {
            JointInput thick = volute.fromTheNeck(input).with(Arrangement.UNDERLAID);
            Length stock = thick.neckThickness();
            List<JointRefusal> refusals = ScarfJoint.refusals(thick);
            String seam = refusals.isEmpty()
                    ? "the seam of an underlaid head moves to "
                            + shown.length(ScarfJoint.of(thick).seamFromNut()) + " from the nut"
                    : "underlaid, the seam would fall off the tip";
            return "needs a neck piece " + shown.length(stock)
                    + " thick. The bevel runs through all of it: the neck piece’s back " + "is "
                    + shown.length(Bevel.run(volute.height(), input.angle())) + " longer, and " + seam + ".";
        }

        private String heel(HeelNeed heel) {
            Length block = heel.block();
            if (!block.isPositive()) {
                return shown.length(heel.depth()) + " deep, which the neck piece has by itself.";
            }
            String layers = shown.fmt().count(heel.layers(), "layer", "layers");
            return "a block " + shown.length(block) + " thick and " + shown.length(heel.length())
                    + " long on the neck’s back; or " + layers + " of neck stock, " + shown.length(heel.layer())
                    + " each, the last planed to " + shown.length(heel.lastLayer()) + ", from "
                    + shown.length(heel.stockLength(extras.kerf()))
                    + " of it with its cuts. Grain along the neck in every one, so that long grain is glued to long grain and "
                    + "all of it moves alike.";
        }

        private String wedge(Length thickness, Length width) {
            WedgeOffcut wedge = new WedgeOffcut(input.angle(), thickness, width);
            return shown.length(wedge.length()) + " × " + shown.length(wedge.thickness()) + " × "
                    + shown.length(wedge.width());
        }

        private SawCard card(Saw saw) {
            SawNeed neck = new SawNeed(input.angle(), input.neckThickness(), input.neckWidth());
            SawNeed head = new SawNeed(input.angle(), extras.headStock(), input.headWidth());
            SawLimits limits = limits(saw);
            List<Fact> facts = new ArrayList<>();
            facts.add(new Fact("joint-saw-fit", "What fits", whatFits(neck, limits)));
            jig(saw).ifPresent(facts::add);
            facts.add(new Fact("joint-scale", "Its scale", scale(saw)));
            return new SawCard(saw.name(), setting(saw), neck.refusals(limits), head.refusals(limits), facts);
        }

        private String setting(Saw saw) {
            Angle a = input.angle();
            Length wide = input.neckWidth().max(input.headWidth());
            Length reach = Bevel.faceLength(input.neckThickness().max(extras.headStock()), a);
            return switch (saw.kind()) {
                case MITRE ->
                    "Piece on edge in a square fence jig, so that it lies square to the fence; scale at " + a
                            + ". Along the fence it would have to be set to "
                            + new Angle(90_000 - a.millidegrees()) + ". The blade passes " + shown.length(reach)
                            + " along the cut and " + shown.length(wide) + " down.";
                case BAND ->
                    "Table square to the blade; piece on edge, clamped to a wedge jig of " + a
                            + " that runs along the fence. Upper guide just above the piece: "
                            + shown.length(wide.plus(JUST_ABOVE))
                            + " over the table.";
                case TABLE ->
                    "Blade square to the table; piece on edge, clamped to a wedge jig of " + a
                            + " that runs along the fence or in the mitre slot. Blade high enough to cut through "
                            + shown.length(wide) + ", and no higher than it must be.";
                case HAND ->
                    "Piece clamped beside a ramp block of " + a
                            + " whose slope guides the blade. Leave more to true: "
                            + shown.length(saw.truing()) + " on each part.";
            };
        }

        private String whatFits(SawNeed need, SawLimits limits) {
            SawFit fit = new SawFit(need, limits);
            return "at " + input.angle() + " pieces up to " + shown.length(fit.greatestThickness()) + " thick and "
                    + shown.length(fit.greatestWidth()) + " wide; through " + shown.length(need.sawnThickness())
                    + (fit.reachesThrough()
                            ? " angles from " + fit.shallowest() + " to " + limits.steepest() + "."
                            : " no angle it can be set to.");
        }

        private Optional<Fact> jig(Saw saw) {
            Length thickest = input.neckThickness().max(extras.headStock());
            return switch (saw.kind()) {
                case MITRE -> Optional.empty();
                case BAND, TABLE -> {
                    JigWedge wedge = JigWedge.backing(thickest, input.angle());
                    yield Optional.of(new Fact(
                            "joint-jig",
                            "Jig wedge",
                            shown.length(wedge.base()) + " along the fence, rising to " + shown.length(wedge.rise())
                                    + ", its slope " + shown.length(wedge.face())
                                    + " long; one millimetre in the rise turns it by "
                                    + wedge.angleOff(ONE) + "."));
                }
                case HAND ->
                    Optional.of(new Fact(
                            "joint-jig",
                            "Ramp block",
                            "as high as the piece and falling to nothing over "
                                    + shown.length(Bevel.run(thickest, input.angle())) + ": " + shown.length(thickest)
                                    + " high for the thicker part."));
            };
        }

        private String scale(Saw saw) {
            ScaleReading scale = new ScaleReading(saw.scale());
            List<String> gaps = new ArrayList<>();
            for (Arrangement arrangement : Arrangement.values()) {
                ScarfJoint joint = joint(arrangement);
                if (joint != null) {
                    gaps.add(shown.fine(scale.gap(joint.glueFace())) + " " + arrangement.word());
                }
            }
            return "read to " + saw.scale() + ", so one setting may be off by " + scale.setting()
                    + "; both bevels cut at it still match, and the tip of the head moves "
                    + shown.fine(scale.atTip(input.headLength())) + ". Cut at two settings they may differ by "
                    + saw.scale()
                    + (gaps.isEmpty() ? "." : ", a gap of up to " + String.join(", ", gaps) + ".");
        }

        private List<String> testCut() {
            if (!TestCut.canBeMeasured(input.angle())) {
                return List.of();
            }
            TestCut cut = new TestCut(input.angle(), input.neckThickness());
            return List.of(
                    "Take two scraps " + shown.length(cut.thickness())
                            + " thick, long enough to be clamped, and bevel both at the setting you mean to use.",
                    "Measure the run along each: " + shown.length(cut.run())
                            + " is right. Half a degree too shallow makes it "
                            + shown.length(cut.longerWhenShallow()) + " longer, half a degree too steep "
                            + shown.length(cut.shorterWhenSteep()) + " shorter.",
                    "Turn one over and lay bevel on bevel, thick end on thin: their outer faces must be parallel. If they are not, "
                            + "the two cuts differ.",
                    "Lay them with both thin ends together: they open at " + cut.doubled() + ", "
                            + shown.length(cut.doubledRise(HUNDRED)) + " in " + shown.length(HUNDRED)
                            + ", and an error shows twice.",
                    "Set the saw again by half of what you see, and cut new scraps until both hold. Then cut the piece.");
        }
    }
}
