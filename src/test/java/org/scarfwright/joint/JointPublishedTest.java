package org.scarfwright.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.published.PublishedTable.number;
import static org.scarfwright.published.PublishedTable.tolerance;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.published.PublishedTable;

/** The joint against worked examples and tables that stand outside the program, each to half a unit of its last printed digit. */
class JointPublishedTest {

    @Test
    void everyCheckValueOfTheTable() {
        for (NamedCsvRecord row : PublishedTable.rows("joint-check-values.csv")) {
            ScarfJoint joint = ScarfJoint.of(new JointInput(
                    row.getField("arrangement").equals("underlaid") ? Arrangement.UNDERLAID : Arrangement.OVERLAID,
                    angle(row, "angle"),
                    mm(row, "neck_thickness"),
                    mm(row, "head_thickness"),
                    mm(row, "neck_length"),
                    mm(row, "head_length"),
                    Length.ofMm(60),
                    Length.ofMm(78)));

            printed(row, "neck_front", joint, ScarfJoint::neckFrontMm);
            printed(row, "neck_back", joint, ScarfJoint::neckBackMm);
            printed(row, "head_front", joint, ScarfJoint::headFrontMm);
            printed(row, "head_back", joint, ScarfJoint::headBackMm);
            printed(row, "glue_face", joint, ScarfJoint::glueFaceMm);
            printed(row, "back_end", joint, ScarfJoint::backEndFromNutMm);
            assertThat(joint.hasSeam()).isEqualTo(!row.getField("seam_from_nut").isEmpty());
            if (joint.hasSeam()) {
                printed(row, "seam_from_nut", joint, ScarfJoint::seamFromNutMm);
            }
        }
    }

    @Test
    void oneBlankForBothParts() {
        for (NamedCsvRecord row : PublishedTable.rows("joint-one-blank.csv")) {
            LengthUnit unit = row.getField("unit").equals("in") ? LengthUnit.INCH : LengthUnit.MM;
            Length thickness = length(row, "thickness", unit);
            for (Arrangement arrangement : Arrangement.values()) {
                ScarfJoint joint = ScarfJoint.of(new JointInput(
                        arrangement,
                        angle(row, "angle"),
                        thickness,
                        thickness,
                        length(row, "neck_length", unit),
                        length(row, "head_length", unit),
                        Length.ofMm(60),
                        Length.ofMm(60)));
                double blank = joint.onePieceLength(thickness, Length.ZERO).um() / (double) unit.um();

                assertThat(blank).isCloseTo(number(row, "blank"), tolerance(row, "blank"));
            }
        }
    }

    @Test
    void slopeAndAreaRatio() {
        for (NamedCsvRecord row : PublishedTable.rows("joint-ratios.csv")) {
            ScarfJoint joint = ScarfJoint.of(ScarfJointCheckValuesTest.guitar(Arrangement.OVERLAID, "20", 10)
                    .with(angle(row, "angle")));

            printed(row, "slope", joint, ScarfJoint::slope);
            printed(row, "area_ratio", joint, ScarfJoint::glueAreaOverSection);
        }
    }

    @Test
    void gapsOfUnequalBevels() {
        for (NamedCsvRecord row : PublishedTable.rows("joint-gaps.csv")) {
            assertThat(Bevel.gap(mm(row, "glue_face"), angle(row, "difference")).mm())
                    .as("%s", row)
                    .isCloseTo(number(row, "gap"), tolerance(row, "gap"));
        }
    }

    private static void printed(
            NamedCsvRecord row, String column, ScarfJoint joint, ToDoubleFunction<ScarfJoint> figure) {
        assertThat(figure.applyAsDouble(joint))
                .as("%s of %s", column, row)
                .isCloseTo(number(row, column), tolerance(row, column));
    }

    private static Angle angle(NamedCsvRecord row, String column) {
        return Angle.ofDegrees(new BigDecimal(row.getField(column)));
    }

    private static Length mm(NamedCsvRecord row, String column) {
        return length(row, column, LengthUnit.MM);
    }

    private static Length length(NamedCsvRecord row, String column, LengthUnit unit) {
        return LengthParser.parse(row.getField(column), unit);
    }
}
