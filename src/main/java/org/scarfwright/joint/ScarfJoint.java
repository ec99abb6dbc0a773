package org.scarfwright.joint;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Area;
import org.scarfwright.measure.Length;

/**
 * The lengths of both parts of a scarfed neck and of the joint between them. Holds only joints that can exist.
 *
 * <p>A method ending in Mm is the bare formula in millimetres. The method of the same name without it is for show, rounded to the
 * nearest micrometre. {@link #neckShort()} to {@link #headLong()} are for cutting, rounded up.
 *
 * <p><b>Source:</b> derived here; symbols and axes on the package's page.
 *
 * @param input what it was computed from
 */
public record ScarfJoint(JointInput input) {

    /** @throws ImpossibleJointException with every reason why there is no such joint */
    public ScarfJoint {
        List<JointRefusal> refusals = refusals(input);
        if (!refusals.isEmpty()) {
            throw new ImpossibleJointException(refusals);
        }
    }

    /** @throws ImpossibleJointException with every reason why there is no such joint */
    public static ScarfJoint of(JointInput input) {
        return new ScarfJoint(input);
    }

    /**
     * Every reason why this joint cannot be; empty when it can.
     *
     * <p>Sizes must be above nothing and the angle between 0° and 90°. Then the joint has to lie on the wood:
     *
     * <ul>
     *   <li>underlaid, the seam on the head's front face (t / sin a from the nut) before the tip, and the glue face (h / sin a)
     *       on the neck's back (N + t·cot a);
     *   <li>overlaid, some top of the neck left in front of the head piece (N − h / sin a above nothing), and the glue face
     *       (t / sin a) on the head's back (H + h·cot a).
     * </ul>
     */
    public static List<JointRefusal> refusals(JointInput in) {
        List<JointRefusal> found = new ArrayList<>();
        int degrees = in.angle().millidegrees();
        if (degrees <= 0 || degrees >= 90_000) {
            found.add(new JointRefusal(
                    "angle",
                    Words.plain(in.angle()),
                    "is " + Words.plain(in.angle())
                            + ", but a tilt angle lies between 0° and 90°; usual are 7° to 17°, for example 10"));
        }
        requirePositive(found, "neckThickness", in.neckThickness(), "20 mm");
        requirePositive(found, "headThickness", in.headThickness(), "15 mm");
        requirePositive(found, "neckLength", in.neckLength(), "457 mm");
        requirePositive(found, "headLength", in.headLength(), "180 mm");
        requirePositive(found, "neckWidth", in.neckWidth(), "60 mm");
        requirePositive(found, "headWidth", in.headWidth(), "78 mm");
        if (found.isEmpty()) {
            if (in.arrangement() == Arrangement.UNDERLAID) {
                refuseUnderlaid(found, in);
            } else {
                refuseOverlaid(found, in);
            }
        }
        return List.copyOf(found);
    }

    private static void requirePositive(List<JointRefusal> found, String field, Length size, String example) {
        if (!size.isPositive()) {
            found.add(new JointRefusal(
                    field,
                    Words.plain(size),
                    "is " + Words.plain(size) + "; it must be above 0, for example " + example));
        }
    }

    private static void refuseUnderlaid(List<JointRefusal> found, JointInput in) {
        double t = in.neckThickness().mm();
        double h = in.headThickness().mm();
        double seam = t / in.angle().sin();
        double head = in.headLength().mm();
        if (seam >= head) {
            StringBuilder reason = new StringBuilder("is " + Words.plain(in.headLength()) + ", but at "
                    + Words.plain(in.angle()) + " in a neck " + Words.plain(in.neckThickness())
                    + " thick the seam comes "
                    + Words.mm(seam) + " from the nut and would fall off the tip; make the head at least "
                    + Words.mmMore(seam));
            if (t < head) {
                reason.append(", the angle at least ").append(Words.degreesMore(Math.asin(t / head)));
            }
            reason.append(", or overlay the head");
            found.add(new JointRefusal("headLength", Words.plain(in.headLength()), reason.toString()));
        }
        double face = h / in.angle().sin();
        double back = in.neckLength().mm() + t * in.angle().cot();
        if (face > back) {
            found.add(new JointRefusal(
                    "neckLength",
                    Words.plain(in.neckLength()),
                    "is " + Words.plain(in.neckLength()) + ", but the glue face is " + Words.mm(face)
                            + " long and would run off the heel end of the neck's back, which is " + Words.mm(back)
                            + "; make the neck at least "
                            + Words.mmMore(face - t * in.angle().cot())
                            + ", the angle steeper or the head thinner"));
        }
    }

    private static void refuseOverlaid(List<JointRefusal> found, JointInput in) {
        double t = in.neckThickness().mm();
        double h = in.headThickness().mm();
        double taken = h / in.angle().sin();
        if (taken >= in.neckLength().mm()) {
            found.add(new JointRefusal(
                    "neckLength",
                    Words.plain(in.neckLength()),
                    "is " + Words.plain(in.neckLength()) + ", but at " + Words.plain(in.angle()) + " a head piece "
                            + Words.plain(in.headThickness()) + " thick takes " + Words.mm(taken)
                            + " of the neck's top and nothing would be left of it; make the neck at least "
                            + Words.mmMore(taken) + ", the angle steeper, the head thinner, or underlay the head"));
        }
        double face = t / in.angle().sin();
        double back = in.headLength().mm() + h * in.angle().cot();
        if (face > back) {
            found.add(new JointRefusal(
                    "headLength",
                    Words.plain(in.headLength()),
                    "is " + Words.plain(in.headLength()) + ", but the glue face is " + Words.mm(face)
                            + " long and would run off the tip of the head piece's back, which is " + Words.mm(back)
                            + "; make the head at least "
                            + Words.mmMore(face - h * in.angle().cot())
                            + ", the angle steeper or the neck thinner"));
        }
    }

    private boolean underlaid() {
        return input.arrangement() == Arrangement.UNDERLAID;
    }

    private Angle a() {
        return input.angle();
    }

    private double t() {
        return input.neckThickness().mm();
    }

    private double h() {
        return input.headThickness().mm();
    }

    /** Length of the neck piece along its top: N underlaid, N − h / sin a overlaid. */
    public double neckFrontMm() {
        double n = input.neckLength().mm();
        return underlaid() ? n : n - h() / a().sin();
    }

    /** Length of the neck piece along its back: its top and the run of its bevel, t·cot a. */
    public double neckBackMm() {
        return neckFrontMm() + t() * a().cot();
    }

    /** Length of the head piece along its front face: H − t / sin a underlaid, H overlaid. */
    public double headFrontMm() {
        double head = input.headLength().mm();
        return underlaid() ? head - t() / a().sin() : head;
    }

    /** Length of the head piece along its back: its front and the run of its bevel, h·cot a. */
    public double headBackMm() {
        return headFrontMm() + h() * a().cot();
    }

    /** Length of the glue face in the side view: h / sin a underlaid, t / sin a overlaid. */
    public double glueFaceMm() {
        return (underlaid() ? h() : t()) / a().sin();
    }

    /** Glue face times the narrower of the two widths, in square millimetres. */
    public double glueAreaMm2() {
        return glueFaceMm() * input.neckWidth().min(input.headWidth()).mm();
    }

    /**
     * How far from the nut, along the head's front face, its seam lies: t / sin a underlaid. There is none overlaid.
     *
     * @throws IllegalStateException when there is no seam; ask {@link #hasSeam()}
     */
    public double seamFromNutMm() {
        if (!underlaid()) {
            throw new IllegalStateException("an overlaid head has no seam on its front face");
        }
        return t() / a().sin();
    }

    /** True when a seam crosses the head's front face. */
    public boolean hasSeam() {
        return underlaid();
    }

    /** Where the joint ends on the back, along the neck from the nut, above 0 toward the tip: t·cot a − h / sin a. */
    public double backEndFromNutMm() {
        return t() * a().cot() - h() / a().sin();
    }

    /**
     * Head wood on the back, from the end of the joint to the tip: H + h·cot a − t / sin a in both arrangements.
     */
    public double backOfHeadMm() {
        return input.headLength().mm() + h() * a().cot() - t() / a().sin();
    }

    /**
     * The face that comes out crooked when bevels of unequal angle are clamped shut on the glue face: the neck's bevel underlaid
     * (t / sin a), the head's overlaid (h / sin a). A mismatch of d leaves it out of flat by this × tan d.
     */
    public double bevelInFrontMm() {
        return (underlaid() ? t() : h()) / a().sin();
    }

    /** Width of each of the two wings, (W − w) / 2; 0 overlaid, and where the neck is as wide as the head. */
    public double wingWidthMm() {
        return underlaid()
                ? Math.max(0, (input.headWidth().mm() - input.neckWidth().mm()) / 2)
                : 0;
    }

    /** The scarf is 1 to this: cot a. */
    public double slope() {
        return a().cot();
    }

    /**
     * Glue area over the section it joins, 1 / sin a. The Wood Handbook's benchmark for a scarf is at least 10, and 1 in 12 or
     * flatter is strongest.
     *
     * <p><b>Source:</b> derived here; benchmark from Forest Products Laboratory, Wood Handbook (FPL-GTR-282), chapter 10.
     */
    public double glueAreaOverSection() {
        return 1 / a().sin();
    }

    public Length neckFront() {
        return Length.nearestMm(neckFrontMm());
    }

    public Length neckBack() {
        return Length.nearestMm(neckBackMm());
    }

    public Length headFront() {
        return Length.nearestMm(headFrontMm());
    }

    public Length headBack() {
        return Length.nearestMm(headBackMm());
    }

    public Length glueFace() {
        return Length.nearestMm(glueFaceMm());
    }

    /** Rounded to the nearest square micrometre. */
    public Area glueArea() {
        return new Area(Math.round(glueAreaMm2() * 1e6));
    }

    /** From the nut along the head's front face; null when there is none. */
    public @Nullable Length seamFromNut() {
        return hasSeam() ? Length.nearestMm(seamFromNutMm()) : null;
    }

    /** Below zero when it lies on the heel's side of the nut. */
    public Length backEndFromNut() {
        return Length.nearestMm(backEndFromNutMm());
    }

    /** On the back, from the end of the joint to the tip. */
    public Length backOfHead() {
        return Length.nearestMm(backOfHeadMm());
    }

    public Length bevelInFront() {
        return Length.nearestMm(bevelInFrontMm());
    }

    /** Of each of the two; zero when there are none. */
    public Length wingWidth() {
        return Length.nearestMm(wingWidthMm());
    }

    /** The shorter side of the neck part, its front in both arrangements, rounded up: what a layout needs. */
    public Length neckShort() {
        return Length.upFromMm(neckFrontMm());
    }

    /** The longer side of the neck part, its back, rounded up. */
    public Length neckLong() {
        return Length.upFromMm(neckBackMm());
    }

    /** The shorter side of the head part, its front in both arrangements, rounded up: what a layout needs. */
    public Length headShort() {
        return Length.upFromMm(headFrontMm());
    }

    /** The longer side of the head part, its back, rounded up. */
    public Length headLong() {
        return Length.upFromMm(headBackMm());
    }

    /**
     * Length of one blank that gives both parts with one shared bevel cut, no allowance: both short sides, the run of the bevel
     * through the blank and the cut itself, each rounded up. With h = t = s and no kerf it is N + H − t·tan(a/2), the same for
     * both arrangements.
     *
     * @param sawn s, thickness of the blank at the saw
     * @param kerf k, zero for the bare sum
     */
    public Length onePieceLength(Length sawn, Length kerf) {
        return neckShort().plus(headShort()).plus(Bevel.run(sawn, a())).plus(Bevel.kerfRun(kerf, a()));
    }
}
