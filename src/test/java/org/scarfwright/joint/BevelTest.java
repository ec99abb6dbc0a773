package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** Bevels against a block cut by a turned half-plane (JTS Topology Suite), and the worked figures of the trade. */
class BevelTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double FAR = 20_000;

    @Test
    void runFaceAndWedgeAreThoseOfABlockThatIsSawn() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 500; i++) {
            Length sawn = Length.ofUm(random.nextLong(5_000, 60_000));
            Angle angle = new Angle(random.nextInt(3_000, 45_001));
            Geometry wedge = wedge(sawn, angle);
            Envelope box = wedge.getEnvelopeInternal();

            roundedUp(Bevel.run(sawn, angle), box.getWidth());
            roundedUp(Bevel.faceLength(sawn, angle), Math.hypot(box.getWidth(), box.getHeight()));
            assertThat(Bevel.wedgeArea(sawn, angle).toMm2().doubleValue()).isCloseTo(wedge.getArea(), within(1e-5));
            assertThat(Bevel.longSide(Length.ofMm(100), sawn, angle))
                    .isEqualTo(Length.ofMm(100).plus(Bevel.run(sawn, angle)));
        }
    }

    @Test
    void aKerfTakesTheLengthThatASawnSlotTakesOfTheFace() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 500; i++) {
            Length kerf = Length.ofUm(random.nextLong(300, 4_000));
            Angle angle = new Angle(random.nextInt(3_000, 45_001));
            Geometry slot = AffineTransformation.rotationInstance(Math.toRadians(angle.millidegrees() / 1000.0))
                    .transform(FACTORY.toGeometry(new Envelope(-FAR, FAR, 0, kerf.mm())));
            Geometry face =
                    FACTORY.createLineString(new Coordinate[] {new Coordinate(-FAR, 0), new Coordinate(FAR, 0)});

            roundedUp(Bevel.kerfRun(kerf, angle), slot.intersection(face).getLength());
        }
    }

    @Test
    void thinningFromTheFrontLengthensTheFrontAndFromTheBackDoesNot() {
        Angle angle = Angle.ofDegrees(10);
        double whole = headFront(angle, 0, 25);
        double thinnedFromFront = headFront(angle, 5, 25);
        double thinnedFromBack = headFront(angle, 0, 20);

        assertThat(thinnedFromFront - whole)
                .isCloseTo(Bevel.frontGainedByThinning(Length.ofMm(5), angle).mm(), within(0.002));
        assertThat(thinnedFromBack).isCloseTo(whole, within(1e-6));
    }

    @Test
    void oneBlankForAGuitarNeckIsAboutTwentyFiveInches() {
        // Worked example, drawn as polygons: 457 + 180 - 20 tan 5° = 635.25 mm. Common practice: about 25 in (635 mm).
        JointInput even = new JointInput(
                Arrangement.UNDERLAID,
                Angle.ofDegrees(10),
                Length.ofMm(20),
                Length.ofMm(20),
                Length.ofMm(457),
                Length.ofMm(180),
                Length.ofMm(60),
                Length.ofMm(60));

        for (Arrangement arrangement : Arrangement.values()) {
            Length need = ScarfJoint.of(even.with(arrangement)).onePieceLength(Length.ofMm(20), Length.ZERO);
            assertThat(need.mm()).isCloseTo(635.25, within(0.005));
            assertThat(need.mm()).isCloseTo(25 * 25.4, within(1.0));
        }
        assertThat(ScarfJoint.of(even)
                        .onePieceLength(Length.ofMm(20), Length.ofMm(new BigDecimal("2.8")))
                        .mm())
                .isCloseTo(635.25 + 2.8 / Math.sin(Math.PI / 18), within(0.01));
    }

    @Test
    void halfADegreeOnAFaceOfElevenAndAHalfCentimetresGapesOneMillimetre() {
        // Worked example: 115 mm face, 0.5 degree, 1.0 mm.
        assertThat(Bevel.gap(Length.ofMm(115), new Angle(500)).mm()).isCloseTo(1.0, within(0.05));
        assertThat(Bevel.gap(Length.ofMm(115), new Angle(0))).isEqualTo(Length.ZERO);
    }

    @Test
    void refusesAnglesThatCutNoBevel() {
        assertThatThrownBy(() -> Bevel.run(Length.ofMm(20), new Angle(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a bevel lies between 0° and 90°, not at 0°");
        assertThatThrownBy(() -> Bevel.kerfRun(Length.ofMm(2), Angle.ofDegrees(90)))
                .hasMessageContaining("not at 90°");
        assertThatThrownBy(() -> Bevel.gap(Length.ofMm(100), new Angle(-1))).hasMessageContaining("mismatch");
    }

    /** What a cut from the lower edge at the origin leaves above it, out of a block as thick as the piece. */
    private static Geometry wedge(Length sawn, Angle angle) {
        Geometry block = FACTORY.toGeometry(new Envelope(0, FAR, 0, sawn.mm()));
        return block.intersection(AffineTransformation.rotationInstance(Math.toRadians(angle.millidegrees() / 1000.0))
                .transform(FACTORY.toGeometry(new Envelope(-FAR, FAR, 0, FAR))));
    }

    /** Length of the front of a head piece 300 mm long at the back, thinned to lie between two depths below its first front. */
    private static double headFront(Angle angle, double from, double to) {
        Geometry blank = FACTORY.toGeometry(new Envelope(0, 300, -to, -from));
        Geometry bevelled =
                blank.intersection(AffineTransformation.rotationInstance(Math.toRadians(angle.millidegrees() / 1000.0))
                        .translate(150, 0)
                        .transform(FACTORY.toGeometry(new Envelope(-FAR, FAR, -FAR, 0))));
        double start = Double.POSITIVE_INFINITY;
        for (Coordinate c : bevelled.getCoordinates()) {
            if (Math.abs(c.y + from) < 1e-6) {
                start = Math.min(start, c.x);
            }
        }
        return 300 - start;
    }

    private static void roundedUp(Length need, double measured) {
        assertThat(need.mm()).isBetween(measured - 1e-5, measured + 0.001 + 1e-5);
    }
}
