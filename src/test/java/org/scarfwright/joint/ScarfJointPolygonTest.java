package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.scarfwright.measure.Length;

/**
 * Every row of the joint's table against pieces clipped out of blocks by the JTS Topology Suite ({@link ClippedJoint}), on random
 * joints of unequal thickness and width in both arrangements, every fourth drawn to an edge ({@link RandomJoints}).
 */
class ScarfJointPolygonTest {
    private static final Offset<Double> MICROMETRE = within(0.001);
    private static final int JOINTS = 50_000;
    private static final int TRIED = 20_000;

    /** Enough to notice what is broken, and few enough to run for every mutant. */
    private static final int SOME = 300;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    @Test
    @Tag("long")
    void everyLengthIsTheOneMeasuredOnThePolygons() {
        compare(new RandomJoints(20_260).possible(JOINTS));
    }

    @Test
    void everyLengthOfSomeJointsIsTheOneMeasuredOnThePolygons() {
        compare(new RandomJoints(20_261).possible(SOME));
    }

    private static void compare(List<JointInput> joints) {
        for (JointInput in : joints) {
            ScarfJoint joint = ScarfJoint.of(in);
            ClippedJoint clipped = new ClippedJoint(in);

            near(joint.neckFrontMm(), clipped.neckFront(), "neck front", in);
            near(joint.neckBackMm(), clipped.neckBack(), "neck back", in);
            near(joint.headFrontMm(), clipped.headFront(), "head front", in);
            near(joint.headBackMm(), clipped.headBack(), "head back", in);
            near(joint.glueFaceMm(), clipped.glueFace(), "glue face", in);
            near(joint.backEndFromNutMm(), clipped.backEnd(), "back end", in);
            near(joint.backOfHeadMm(), clipped.backOfHead(), "head’s back", in);
            near(joint.bevelInFrontMm(), clipped.bevelInFront(), "bevel in front", in);
            near(joint.glueAreaOverSection(), clipped.glueFaceOverSection(), "glue area over section", in);
            near(joint.slope(), clipped.runOverThickness(), "slope", in);
            if (in.arrangement() == Arrangement.UNDERLAID) {
                near(joint.seamFromNutMm(), clipped.seamFromNut(), "seam", in);
            } else {
                near(0, clipped.seamFromNut(), "start of the head’s front", in);
                assertThat(joint.hasSeam()).isFalse();
            }
        }
    }

    @Test
    @Tag("long")
    void refusesExactlyTheJointsWhosePolygonsFailToMeet() {
        assertThat(refused(TRIED)).isBetween(TRIED / 20, TRIED * 19 / 20);
    }

    @Test
    void refusesExactlyThoseOfSomeJointsWhosePolygonsFailToMeet() {
        assertThat(refused(SOME)).isBetween(SOME / 20, SOME * 19 / 20);
    }

    private static int refused(int tried) {
        int refused = 0;
        RandomJoints joints = new RandomJoints(7);
        for (int i = 0; i < tried; i++) {
            JointInput in = joints.any();
            ClippedJoint clipped = new ClippedJoint(in);
            double spare = clipped.glueFace() - clipped.bevelToCover();
            boolean meets = clipped.neckFront() > 1e-5 && clipped.headFront() > 1e-5 && spare > -1e-5;

            if (ScarfJoint.refusals(in).isEmpty() != meets) {
                fail("%s %s", meets ? "refused" : "not refused", in);
            }
            refused += meets ? 0 : 1;
        }
        return refused;
    }

    @Test
    void theFrontIsTheShortSideOfBothPartsInBothArrangements() {
        for (JointInput in : new RandomJoints(3).possible(SOME)) {
            ClippedJoint clipped = new ClippedJoint(in);
            ScarfJoint joint = ScarfJoint.of(in);

            roundedUp(joint.neckShort(), Math.min(clipped.neckFront(), clipped.neckBack()));
            roundedUp(joint.neckLong(), Math.max(clipped.neckFront(), clipped.neckBack()));
            roundedUp(joint.headShort(), Math.min(clipped.headFront(), clipped.headBack()));
            roundedUp(joint.headLong(), Math.max(clipped.headFront(), clipped.headBack()));
        }
    }

    @Test
    void glueAreaIsWhereTheTwoCutFacesOverlap() {
        for (JointInput in : new RandomJoints(11).possible(SOME)) {
            double face = new ClippedJoint(in).glueFace();
            Geometry neckFace = centred(0, face, in.neckWidth().mm());
            Geometry headFace = centred(0, face, in.headWidth().mm());

            assertThat(ScarfJoint.of(in).glueAreaMm2())
                    .isCloseTo(neckFace.intersection(headFace).getArea(), within(0.1));
        }
    }

    @Test
    void wingsFillWhatTheNeckWoodLeavesOpenOfTheOutline() {
        for (JointInput in : new RandomJoints(12).possible(SOME)) {
            ScarfJoint joint = ScarfJoint.of(in);
            if (in.arrangement() == Arrangement.OVERLAID) {
                assertThat(joint.wingWidthMm()).isZero();
                continue;
            }
            double seam = new ClippedJoint(in).seamFromNut();
            Geometry open = centred(0, seam, in.headWidth().mm())
                    .difference(centred(-100, seam, in.neckWidth().mm()));

            assertThat(2 * joint.wingWidthMm() * seam).isCloseTo(open.getArea(), within(0.1));
        }
    }

    @Test
    void oneBlankOfEvenThicknessGivesBothPartsFromTheSameLengthEitherWay() {
        RandomJoints joints = new RandomJoints(5);
        int checked = 0;
        while (checked < SOME) {
            JointInput any = joints.any();
            JointInput even = any.with(Arrangement.UNDERLAID).withHeadThickness(any.neckThickness());
            if (!ScarfJoint.refusals(even).isEmpty()
                    || !ScarfJoint.refusals(even.with(Arrangement.OVERLAID)).isEmpty()) {
                continue;
            }
            for (Arrangement arrangement : Arrangement.values()) {
                ScarfJoint joint = ScarfJoint.of(even.with(arrangement));
                Geometry blank = new ClippedJoint(even.with(arrangement)).laidBackIntoOneBlank();
                Envelope box = blank.getEnvelopeInternal();

                assertThat(box.getHeight()).isCloseTo(even.neckThickness().mm(), MICROMETRE);
                assertThat(blank.getArea())
                        .as("the two parts fill the blank without gap or overlap")
                        .isCloseTo(box.getArea(), within(0.01));
                assertThat(joint.onePieceLength(even.neckThickness(), Length.ZERO)
                                .mm())
                        .isBetween(box.getWidth() - 1e-6, box.getWidth() + 0.0031);
                assertThat(even.neckLength().mm()
                                + even.headLength().mm()
                                - even.neckThickness().mm()
                                        * Math.tan(even.angle().radians() / 2))
                        .isCloseTo(box.getWidth(), MICROMETRE);
            }
            checked++;
        }
    }

    @Test
    void theSideViewDrawsThePolygons() {
        for (JointInput in : new RandomJoints(23).possible(SOME)) {
            ClippedJoint clipped = new ClippedJoint(in);
            SideView view = SideView.of(ScarfJoint.of(in));

            assertThat(polygon(view.neck()).symDifference(clipped.neck).getArea())
                    .isLessThan(0.001);
            assertThat(polygon(view.head()).symDifference(clipped.head).getArea())
                    .isLessThan(0.001);
            assertThat(view.glueStart().distanceTo(view.glueEnd())).isCloseTo(clipped.glueFace(), MICROMETRE);
        }
    }

    private static void near(double value, double measured, String what, JointInput in) {
        if (!(Math.abs(value - measured) < 0.001)) {
            fail("%s is %s mm, measured %s, in %s", what, value, measured, in);
        }
    }

    private static void roundedUp(Length need, double measured) {
        assertThat(need.mm()).isBetween(measured - 1e-6, measured + 0.001 + 1e-6);
    }

    private static Geometry centred(double from, double to, double width) {
        return FACTORY.toGeometry(new Envelope(from, to, -width / 2, width / 2));
    }

    private static Geometry polygon(List<Point> outline) {
        Coordinate[] ring = new Coordinate[outline.size() + 1];
        for (int i = 0; i <= outline.size(); i++) {
            Point p = outline.get(i % outline.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return FACTORY.createPolygon(ring);
    }
}
