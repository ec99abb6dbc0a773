package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * Every row of the joint's table against pieces clipped out of blocks by the JTS Topology Suite ({@link ClippedJoint}), on random
 * joints of unequal thickness and width in both arrangements.
 */
class ScarfJointPolygonTest {
    private static final Offset<Double> MICROMETRE = within(0.001);
    private static final int JOINTS = 10_000;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    @Test
    void everyLengthIsTheOneMeasuredOnThePolygons() {
        for (JointInput in : possible(20_260, JOINTS)) {
            ScarfJoint joint = ScarfJoint.of(in);
            ClippedJoint clipped = new ClippedJoint(in);

            assertThat(joint.neckFrontMm()).as("neck front of %s", in).isCloseTo(clipped.neckFront(), MICROMETRE);
            assertThat(joint.neckBackMm()).as("neck back of %s", in).isCloseTo(clipped.neckBack(), MICROMETRE);
            assertThat(joint.headFrontMm()).as("head front of %s", in).isCloseTo(clipped.headFront(), MICROMETRE);
            assertThat(joint.headBackMm()).as("head back of %s", in).isCloseTo(clipped.headBack(), MICROMETRE);
            assertThat(joint.glueFaceMm()).as("glue face of %s", in).isCloseTo(clipped.glueFace(), MICROMETRE);
            assertThat(joint.backEndFromNutMm()).as("back end of %s", in).isCloseTo(clipped.backEnd(), MICROMETRE);
            if (in.arrangement() == Arrangement.UNDERLAID) {
                assertThat(joint.seamFromNutMm()).as("seam of %s", in).isCloseTo(clipped.seamFromNut(), MICROMETRE);
            } else {
                assertThat(clipped.seamFromNut())
                        .as("the head is whole from the nut in %s", in)
                        .isCloseTo(0, MICROMETRE);
                assertThat(joint.hasSeam()).isFalse();
            }
        }
    }

    @Test
    void refusesExactlyTheJointsWhosePolygonsFailToMeet() {
        int refused = 0;
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < JOINTS; i++) {
            JointInput in = random(random);
            ClippedJoint clipped = new ClippedJoint(in);
            double spare = clipped.glueFace() - clipped.bevelToCover();
            boolean meets = clipped.neckFront() > 0.001 && clipped.headFront() > 0.001 && spare > -0.001;

            assertThat(ScarfJoint.refusals(in).isEmpty()).as("%s", in).isEqualTo(meets);
            refused += meets ? 0 : 1;
        }
        assertThat(refused).isBetween(JOINTS / 20, JOINTS * 19 / 20);
    }

    @Test
    void theFrontIsTheShortSideOfBothPartsInBothArrangements() {
        for (JointInput in : possible(3, 1_000)) {
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
        for (JointInput in : possible(11, 1_000)) {
            double face = new ClippedJoint(in).glueFace();
            Geometry neckFace = centred(0, face, in.neckWidth().mm());
            Geometry headFace = centred(0, face, in.headWidth().mm());

            assertThat(ScarfJoint.of(in).glueAreaMm2())
                    .isCloseTo(neckFace.intersection(headFace).getArea(), within(0.1));
        }
    }

    @Test
    void wingsFillWhatTheNeckWoodLeavesOpenOfTheOutline() {
        for (JointInput in : possible(12, 1_000)) {
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
        SplittableRandom random = new SplittableRandom(5);
        int checked = 0;
        while (checked < 1_000) {
            JointInput any = random(random);
            JointInput even = new JointInput(
                    Arrangement.UNDERLAID,
                    any.angle(),
                    any.neckThickness(),
                    any.neckThickness(),
                    any.neckLength(),
                    any.headLength(),
                    any.neckWidth(),
                    any.headWidth());
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
        for (JointInput in : possible(23, 1_000)) {
            ClippedJoint clipped = new ClippedJoint(in);
            SideView view = SideView.of(ScarfJoint.of(in));

            assertThat(polygon(view.neck()).symDifference(clipped.neck).getArea())
                    .isLessThan(0.001);
            assertThat(polygon(view.head()).symDifference(clipped.head).getArea())
                    .isLessThan(0.001);
            assertThat(view.glueStart().distanceTo(view.glueEnd())).isCloseTo(clipped.glueFace(), MICROMETRE);
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

    /** Joints that can be, half of them underlaid. */
    private static List<JointInput> possible(long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        List<JointInput> found = new ArrayList<>();
        int underlaid = 0;
        while (found.size() < count) {
            JointInput in = random(random);
            if (!ScarfJoint.refusals(in).isEmpty()) {
                continue;
            }
            boolean under = in.arrangement() == Arrangement.UNDERLAID;
            if (under ? underlaid < count / 2 : found.size() - underlaid < count - count / 2) {
                found.add(in);
                underlaid += under ? 1 : 0;
            }
        }
        return found;
    }

    private static JointInput random(SplittableRandom random) {
        return new JointInput(
                random.nextBoolean() ? Arrangement.UNDERLAID : Arrangement.OVERLAID,
                new Angle(random.nextInt(3_000, 30_001)),
                Length.ofUm(random.nextLong(12_000, 40_000)),
                Length.ofUm(random.nextLong(8_000, 40_000)),
                Length.ofUm(random.nextLong(60_000, 900_000)),
                Length.ofUm(random.nextLong(60_000, 350_000)),
                Length.ofUm(random.nextLong(35_000, 90_000)),
                Length.ofUm(random.nextLong(35_000, 120_000)));
    }
}
