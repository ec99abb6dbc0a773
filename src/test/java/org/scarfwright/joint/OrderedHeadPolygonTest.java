package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/** Necks made in every order from the sizes that are said to be sawn, and measured ({@link MadeNeck}). */
class OrderedHeadPolygonTest {
    private static final Offset<Double> MICROMETRE = within(0.001);
    private static final int NECKS = 50_000;

    @Test
    @Tag("long")
    void whateverTheOrderTheNeckEndsAsWanted() {
        assertThat(made(NECKS))
                .hasSize(HeadOrder.values().length)
                .allSatisfy((order, n) -> assertThat(n).as("%s", order).isGreaterThan(4_000));
    }

    @Test
    void whateverTheOrderSomeNecksEndAsWanted() {
        assertThat(made(500)).hasSize(HeadOrder.values().length);
    }

    /** How many necks were made and measured, for each order. */
    private static Map<HeadOrder, Integer> made(int necks) {
        RandomJoints joints = new RandomJoints(90);
        Map<HeadOrder, Integer> made = new EnumMap<>(HeadOrder.class);
        for (JointInput wanted : joints.possible(necks)) {
            HeadOrder order = joints.order();
            Length stock = joints.stock(wanted.headThickness());
            if (!OrderedHead.refusals(wanted, stock, order).isEmpty()) {
                continue;
            }
            OrderedHead head = new OrderedHead(wanted, stock, order);
            MadeNeck neck = new MadeNeck(head);

            near(neck.neckLength(), wanted.neckLength().mm(), "neck length", head);
            near(neck.headLength(), wanted.headLength().mm(), "head length", head);
            near(neck.nutOffTheFront(), 0, "front in one plane", head);
            near(neck.headThicknessAtTip(), wanted.headThickness().mm(), "head thickness", head);
            near(neck.headFront(), ScarfJoint.of(wanted).headFrontMm(), "head front", head);
            near(head.gluedFaceMm(), neck.gluedFace(), "glue face when glued", head);
            near(head.finishedFaceMm(), neck.finishedFace(), "glue face in the end", head);
            near(head.backEndFromNutMm(), neck.backEnd(), "back end", head);
            made.merge(order, 1, Integer::sum);
        }
        return made;
    }

    @Test
    void thinningFirstOrBeforeGluingEndsInTheSameWoodAsTheTable() {
        RandomJoints joints = new RandomJoints(91);
        int compared = 0;
        for (JointInput wanted : joints.possible(600)) {
            HeadOrder order = joints.order();
            Length stock = joints.stock(wanted.headThickness());
            if (!OrderedHead.refusals(wanted, stock, order).isEmpty()
                    || (order == HeadOrder.BACK_AFTER_GLUING && wanted.arrangement() == Arrangement.OVERLAID)) {
                continue;
            }
            MadeNeck made = new MadeNeck(new OrderedHead(wanted, stock, order));
            ClippedJoint drawn = new ClippedJoint(wanted);

            assertThat(made.neckWood().getArea()).isCloseTo(drawn.neck.getArea(), within(0.01));
            assertThat(made.headWood().getArea()).isCloseTo(drawn.head.getArea(), within(0.01));
            compared++;
        }
        assertThat(compared).isGreaterThan(350);
    }

    /** Five millimetres off the front at 10°: 5 / tan 10° = 28.356 mm of front, 5 / sin 10° = 28.794 mm of neck. */
    @Test
    void thinningTheFrontMakesItLonger() {
        OrderedHead before = new OrderedHead(guitar(Arrangement.UNDERLAID), mm(20), HeadOrder.FRONT_BEFORE_GLUING);
        OrderedHead after = new OrderedHead(guitar(Arrangement.UNDERLAID), mm(20), HeadOrder.FRONT_AFTER_GLUING);
        OrderedHead first = new OrderedHead(guitar(Arrangement.UNDERLAID), mm(20), HeadOrder.PLANED_FIRST);

        assertThat(before.removed()).isEqualTo(mm(5));
        assertThat(first.headShortMm() - before.headShortMm()).isCloseTo(28.356, MICROMETRE);
        assertThat(before.headLongMm()).isCloseTo(first.headLongMm(), MICROMETRE);
        assertThat(after.neckShortMm() - first.neckShortMm()).isCloseTo(28.794, MICROMETRE);
        assertThat(before.neckShortMm()).isCloseTo(first.neckShortMm(), MICROMETRE);
        assertThat(before.gluedThickness()).isEqualTo(mm(15));
        assertThat(after.gluedThickness()).isEqualTo(mm(20));
        assertThat(before.sawnThickness()).isEqualTo(mm(20));
        assertThat(first.sawnThickness()).isEqualTo(mm(15));
    }

    @Test
    void sizesForTheSawAreRoundedUpAndSizesForTheEyeToTheNearest() {
        for (HeadOrder order : HeadOrder.values()) {
            OrderedHead head = new OrderedHead(guitar(Arrangement.OVERLAID), mm(20), order);

            assertThat(head.headShort().mm()).isBetween(head.headShortMm() - 1e-9, head.headShortMm() + 0.001);
            assertThat(head.headLong().mm()).isBetween(head.headLongMm() - 1e-9, head.headLongMm() + 0.001);
            assertThat(head.neckShort().mm()).isBetween(head.neckShortMm() - 1e-9, head.neckShortMm() + 0.001);
            assertThat(head.neckLong().mm()).isBetween(head.neckLongMm() - 1e-9, head.neckLongMm() + 0.001);
            assertThat(head.gluedFace().mm()).isCloseTo(head.gluedFaceMm(), within(0.0005));
            assertThat(head.finishedFace().mm()).isCloseTo(head.finishedFaceMm(), within(0.0005));
            assertThat(head.backEndFromNut().mm()).isCloseTo(head.backEndFromNutMm(), within(0.0005));
        }
    }

    @Test
    void refusesStockThinnerThanTheHead() {
        assertThat(OrderedHead.refusals(guitar(Arrangement.UNDERLAID), mm(14), HeadOrder.PLANED_FIRST))
                .containsExactly(new JointRefusal(
                        "headStock", "14 mm", "is 14 mm, thinner than the head, 15 mm; it must be at least as thick"));
        assertThat(OrderedHead.refusals(guitar(Arrangement.UNDERLAID), mm(15), HeadOrder.FRONT_AFTER_GLUING))
                .isEmpty();
    }

    /** The front of the worked example is 64.82 mm: 64.82·tan 10° = 11.43 mm may come off it, so stock below 26.43 mm. */
    @Test
    void refusesAFrontThatWouldBeThinnedAway() {
        List<JointRefusal> refused =
                OrderedHead.refusals(guitar(Arrangement.UNDERLAID), mm(27), HeadOrder.FRONT_BEFORE_GLUING);

        assertThat(refused)
                .containsExactly(
                        new JointRefusal(
                                "headStock",
                                "27 mm",
                                "is 27 mm, but with 12.0 mm to come off the front after the bevel, the bevel would run off the "
                                        + "tip; plane it to less than 26.4 mm before the bevel is cut, or thin it from the back"));
        assertThat(OrderedHead.refusals(
                        guitar(Arrangement.UNDERLAID), Length.ofUm(26_400), HeadOrder.FRONT_BEFORE_GLUING))
                .isEmpty();
        assertThat(OrderedHead.refusals(guitar(Arrangement.UNDERLAID), mm(27), HeadOrder.BACK_BEFORE_GLUING))
                .isEmpty();
        assertThatExceptionOfType(ImpossibleJointException.class)
                .isThrownBy(() -> new OrderedHead(guitar(Arrangement.UNDERLAID), mm(27), HeadOrder.FRONT_AFTER_GLUING));
    }

    @Test
    void refusesGluingAHeadTooThickForTheNeck() {
        JointInput shortNeck = new JointInput(
                Arrangement.OVERLAID, Angle.ofDegrees(10), mm(20), mm(15), mm(100), mm(180), mm(60), mm(78));

        assertThat(OrderedHead.refusals(shortNeck, mm(20), HeadOrder.BACK_AFTER_GLUING))
                .singleElement()
                .satisfies(r -> assertThat(r.reason()).contains("a head piece 20 mm thick takes 115.2 mm"));
        assertThat(OrderedHead.refusals(shortNeck, mm(20), HeadOrder.BACK_BEFORE_GLUING))
                .isEmpty();
    }

    @Test
    void tellsWhatIsWrongWithTheJointItselfFirst() {
        JointInput noHead = new JointInput(
                Arrangement.UNDERLAID, Angle.ofDegrees(10), mm(20), mm(15), mm(457), mm(100), mm(60), mm(78));

        assertThat(OrderedHead.refusals(noHead, mm(10), HeadOrder.PLANED_FIRST)).isEqualTo(ScarfJoint.refusals(noHead));
    }

    @Test
    void eachOrderHasItsWords() {
        assertThat(HeadOrder.FRONT_BEFORE_GLUING.word()).isEqualTo("front-before-gluing");
        assertThat(HeadOrder.values())
                .extracting(HeadOrder::words)
                .containsExactly(
                        "planed before the bevel is cut",
                        "from its back, after the bevel and before gluing",
                        "from its front, after the bevel and before gluing",
                        "from its back, after gluing",
                        "from its front, after gluing");
    }

    private static void near(double value, double other, String what, OrderedHead head) {
        if (!(Math.abs(value - other) < 0.001)) {
            fail("%s is %s mm, not %s, in %s", what, value, other, head);
        }
    }

    private static JointInput guitar(Arrangement arrangement) {
        return ScarfJointCheckValuesTest.guitar(arrangement, "20", 10);
    }

    private static Length mm(long mm) {
        return Length.ofMm(mm);
    }
}
