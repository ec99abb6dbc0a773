package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;

/** The drawings say what the joint is. Whether the outlines are right is checked on polygons in {@link ScarfJointPolygonTest}. */
class JointDrawingTest {
    private static final ScarfJoint UNDERLAID =
            ScarfJoint.of(ScarfJointCheckValuesTest.guitar(Arrangement.UNDERLAID, "20", 10));
    private static final ScarfJoint OVERLAID =
            ScarfJoint.of(ScarfJointCheckValuesTest.guitar(Arrangement.OVERLAID, "20", 10));

    @Test
    void everyMeasureOfTheTableStandsInTheSideView() {
        assertThat(labels(JointDrawing.side(UNDERLAID, LengthUnit.MM)))
                .contains(
                        "A neck front 457.0",
                        "B neck back 570.4",
                        "D head back 149.9",
                        "E glue face 86.4",
                        "F seam 115.2",
                        "G back end 27.0",
                        "t 20.0",
                        "h 15.0",
                        "H 180.0",
                        "10°")
                .anyMatch(l -> l.startsWith("C ") && l.endsWith("64.8"));
        assertThat(labels(JointDrawing.side(OVERLAID, LengthUnit.MM)))
                .contains(
                        "N 457.0", "B neck back 484.0", "C head front 180.0", "D head back 265.1", "E glue face 115.2")
                .noneMatch(l -> l.startsWith("F "));
    }

    @Test
    void eachArrangementHasTheOther() {
        assertThat(Arrangement.UNDERLAID.other()).isEqualTo(Arrangement.OVERLAID);
        assertThat(Arrangement.OVERLAID.other()).isEqualTo(Arrangement.UNDERLAID);
    }

    @Test
    void wingsAreDrawnOnlyWhereTheyAreNeeded() {
        assertThat(areas(JointDrawing.face(UNDERLAID, LengthUnit.MM)))
                .filteredOn("d-wing"::equals)
                .hasSize(2);
        assertThat(labels(JointDrawing.face(UNDERLAID, LengthUnit.MM))).contains("J wing 9.0", "w 60.0", "W 78.0");
        assertThat(areas(JointDrawing.face(OVERLAID, LengthUnit.MM))).doesNotContain("d-wing");
    }

    /** Underlaid, 10°, 20 and 15 mm: the joint ends 27.04 past the nut; 180 + 15·cot 10° − 20 / sin 10° = 149.89 to the tip. */
    @Test
    void theBackShowsWhereTheJointEnds() {
        JointDrawing back = JointDrawing.back(UNDERLAID, LengthUnit.MM);

        assertThat(labels(back))
                .contains("G back end 27.0", "K head’s back 149.9", "w 60.0", "W 78.0", "below the nut");
        assertThat(areas(back)).containsExactly("d-neck", "d-head", "d-wing", "d-wing");
        assertThat(areas(JointDrawing.back(OVERLAID, LengthUnit.MM))).containsExactly("d-neck", "d-head");
        assertThat(back.title()).isEqualTo("Back of neck and head, underlaid");
        assertThat(back.description())
                .isEqualTo(
                        "Neck and head from behind, laid flat. Neck wood 60.0 mm wide ends 27.0 mm from the nut toward the "
                                + "tip; head wood 78.0 mm wide runs from there 149.9 mm to the tip.");
    }

    @Test
    void aBackThatEndsBehindTheNutShowsNoWings() {
        JointDrawing back = JointDrawing.back(
                ScarfJoint.of(UNDERLAID.input().with(Angle.ofDegrees(17)).withHeadThickness(Length.ofMm(30))),
                LengthUnit.MM);

        assertThat(back.description()).contains("from the nut toward the heel");
        assertThat(areas(back)).containsExactly("d-neck", "d-head");
    }

    /** 180 mm is 7 3/32 in to the nearest 1/64: 180 / 25.4 · 64 = 453.5. */
    @Test
    void anInchShopReadsInches() {
        JointDrawing side = JointDrawing.side(OVERLAID, LengthUnit.INCH);

        assertThat(labels(side)).contains("C head front 7 3/32");
        assertThat(side.description()).contains("Head piece 19/32 in thick, 7 3/32 in along its front");
    }

    @Test
    void neckAndHeadDifferByMoreThanTheirTone() {
        for (JointDrawing drawing :
                List.of(JointDrawing.side(UNDERLAID, LengthUnit.MM), JointDrawing.face(OVERLAID, LengthUnit.MM))) {
            assertThat(areas(drawing)).contains("d-neck", "d-head");
            assertThat(drawing.paths())
                    .extracting(JointDrawing.Path::style)
                    .contains("d-grain", "d-grain d-grain-broken", "d-glue");
        }
    }

    @Test
    void theDescriptionCarriesTheNumbersOfTheDrawing() {
        assertThat(JointDrawing.side(UNDERLAID, LengthUnit.MM).description())
                .isEqualTo(
                        "Neck piece 20.0 mm thick, 457.0 mm along its front and 570.4 mm along its back. Head piece 15.0 mm thick, "
                                + "64.8 mm along its front and 149.9 mm along its back. Glue face 86.4 mm long. The seam crosses the "
                                + "head’s front face 115.2 mm from the nut. On the back the joint ends 27.0 mm from the nut toward the "
                                + "tip. The neck is broken off toward the heel.");
        assertThat(JointDrawing.face(OVERLAID, LengthUnit.MM).description())
                .contains("No seam and no wings on the face.");
    }

    @Test
    void aJointThatEndsBehindTheNutSaysSo() {
        ScarfJoint thickHead = ScarfJoint.of(new JointInput(
                Arrangement.OVERLAID,
                Angle.ofDegrees(17),
                Length.ofMm(14),
                Length.ofMm(30),
                Length.ofMm(457),
                Length.ofMm(180),
                Length.ofMm(60),
                Length.ofMm(78)));

        assertThat(JointDrawing.side(thickHead, LengthUnit.MM).description()).contains("from the nut toward the heel");
    }

    @Test
    void nothingIsDrawnOffThePaperWhateverTheJoint() {
        SplittableRandom random = new SplittableRandom(17);
        int drawn = 0;
        while (drawn < 200) {
            JointInput in = new JointInput(
                    random.nextBoolean() ? Arrangement.UNDERLAID : Arrangement.OVERLAID,
                    new Angle(random.nextInt(1_000, 89_000)),
                    Length.ofUm(random.nextLong(1_000, 300_000)),
                    Length.ofUm(random.nextLong(1_000, 300_000)),
                    Length.ofUm(random.nextLong(10_000, 6_000_000)),
                    Length.ofUm(random.nextLong(10_000, 6_000_000)),
                    Length.ofUm(random.nextLong(10_000, 1_200_000)),
                    Length.ofUm(random.nextLong(10_000, 1_200_000)));
            if (!ScarfJoint.refusals(in).isEmpty()) {
                continue;
            }
            drawn++;
            ScarfJoint joint = ScarfJoint.of(in);
            for (JointDrawing drawing : List.of(
                    JointDrawing.side(joint, LengthUnit.MM),
                    JointDrawing.face(joint, LengthUnit.INCH),
                    JointDrawing.back(joint, LengthUnit.MM))) {
                double[] box = numbers(drawing.viewBox()).toArray();
                Stream.concat(
                                drawing.areas().stream().map(JointDrawing.Area::points),
                                drawing.paths().stream().map(JointDrawing.Path::d))
                        .forEach(text -> {
                            double[] xy = numbers(text).toArray();
                            boolean inside = true;
                            for (int i = 0; i < xy.length; i += 2) {
                                inside &= xy[i] >= box[0] && xy[i] <= box[0] + box[2];
                                inside &= xy[i + 1] >= box[1] && xy[i + 1] <= box[1] + box[3];
                            }
                            assertThat(inside).as("%s of %s", text, in).isTrue();
                        });
            }
        }
    }

    private static List<String> labels(JointDrawing drawing) {
        return drawing.labels().stream()
                .map(l -> (l.letter() == null ? "" : l.letter() + " ")
                        + (l.word() == null ? "" : l.word() + " ")
                        + l.value())
                .toList();
    }

    private static List<String> areas(JointDrawing drawing) {
        return drawing.areas().stream().map(JointDrawing.Area::style).toList();
    }

    private static DoubleStream numbers(String text) {
        return Arrays.stream(text.split("[^-0-9.]+")).filter(s -> !s.isEmpty()).mapToDouble(Double::parseDouble);
    }
}
