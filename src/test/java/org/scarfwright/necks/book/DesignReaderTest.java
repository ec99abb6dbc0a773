package org.scarfwright.necks.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;

class DesignReaderTest {
    private final DesignReader reader = new DesignReader(Drafts.WOODS);

    private NeckDesign read(Draft draft) {
        Reading<NeckDesign> reading = reader.read(draft);
        assertThat(reading.flaws()).isEmpty();
        return reading.value().orElseThrow();
    }

    private List<Flaw> flaws(DesignField field, String text) {
        return reader.read(Drafts.design().with(field, text)).flaws();
    }

    private void refuses(DesignField field, String text, String sentence) {
        assertThat(flaws(field, text)).singleElement().satisfies(f -> {
            assertThat(f.field()).isEqualTo(field);
            assertThat(field.label() + " " + f.message()).isEqualTo(sentence);
        });
    }

    @Test
    void readsADesignAndFillsInWhatMayBeLeftOut() {
        NeckDesign d = read(Drafts.design());
        assertThat(d.neckLength().length()).isEqualTo(Length.ofMm(457));
        assertThat(d.angles()).containsExactly(Angle.ofDegrees(10), Angle.ofDegrees(13));
        assertThat(d.arrangements()).containsExactly(Arrangement.UNDERLAID, Arrangement.OVERLAID);
        assertThat(d.finish()).isEqualTo(FaceFinish.OPAQUE);
        assertThat(d.match()).isEqualTo(MatchRule.ANY);
        assertThat(d.neckWoods()).isEmpty();
        assertThat(d.linesMeet()).isFalse();
        assertThat(d.wingsAllowed()).isFalse();
        assertThat(d.endAllowance().length()).isEqualTo(Length.ofMm(2));
        assertThat(d.neckWidth()).isEqualTo(Length.ofMm(57));
    }

    /** 1 in is exactly 25.4 mm (international yard and pound agreement, 1959), so 25 3/8 in is 644.525 mm. */
    @Test
    void keepsWhatWasTypedBesideTheLength() {
        NeckDesign d = read(Drafts.design().with(DesignField.NECK_LENGTH, " 25 3/8 in "));
        assertThat(d.neckLength().typed()).isEqualTo("25 3/8 in");
        assertThat(d.neckLength().length()).isEqualTo(Length.ofUm(644_525));
        assertThat(DesignText.draftOf(d).text(DesignField.NECK_LENGTH)).isEqualTo("25 3/8 in");
    }

    @Test
    void readsABareNumberInTheUnitOfItsFile() {
        Draft inches = new Draft(
                Map.of(
                        DesignField.CODE, "IN-1",
                        DesignField.NAME, "In inches",
                        DesignField.NECK_LENGTH, "18",
                        DesignField.NUT_WIDTH, "1 11/16",
                        DesignField.HEEL_WIDTH, "2 1/4",
                        DesignField.NECK_THICKNESS, "1",
                        DesignField.HEAD_LENGTH, "7",
                        DesignField.HEAD_WIDTH, "3",
                        DesignField.HEAD_THICKNESS, "9/16",
                        DesignField.ANGLE, "13"),
                LengthUnit.INCH);
        NeckDesign d = read(inches.with(DesignField.ARRANGEMENTS, "underlaid").with(DesignField.FINISH, "Clear"));
        assertThat(d.neckLength().length()).isEqualTo(Length.ofUm(457_200));
        assertThat(d.neckLength().typed()).isEqualTo("18 in");
        assertThat(d.finish()).isEqualTo(FaceFinish.CLEAR);
    }

    @Test
    void writesADesignOutSoThatItReadsTheSame() {
        NeckDesign d = read(Drafts.design()
                .with(DesignField.HEAD_LENGTH, "8 1/2 in")
                .with(DesignField.NECK_WOODS, "maple_sugar walnut_black")
                .with(DesignField.MATCH, "same wood")
                .with(DesignField.WINGS, "yes"));
        assertThat(read(DesignText.draftOf(d))).isEqualTo(d);
    }

    @ParameterizedTest
    @CsvSource({
        "NECK_LENGTH, 3 km, Neck length is 3 km; it lies between 100 mm and 1500 mm; for example 457 mm",
        "NECK_LENGTH, 3000 m, Neck length is 3000 m; it lies between 100 mm and 1500 mm; for example 457 mm",
        "NECK_LENGTH, 0, Neck length is 0 mm; it lies between 100 mm and 1500 mm; for example 457 mm",
        "NECK_LENGTH, 99.999, Neck length is 99.999 mm; it lies between 100 mm and 1500 mm; for example 457 mm",
        "HEAD_LENGTH, 501, Head length is 501 mm; it lies between 50 mm and 500 mm; for example 180 mm",
        "HEAD_WIDTH, 1 m, Head width is 1 m; it lies between 10 mm and 300 mm; for example 78 mm",
        "NUT_WIDTH, 9, Width at the nut is 9 mm; it lies between 10 mm and 300 mm; for example 43 mm",
        "NECK_THICKNESS, 61, Neck thickness is 61 mm; it lies between 5 mm and 60 mm; for example 20 mm",
        "END_ALLOWANCE, 60, End allowance is 60 mm; it lies between 0 mm and 50 mm; for example 2 mm"
    })
    void refusesALengthOutOfRange(DesignField field, String text, String sentence) {
        refuses(field, text, sentence.replace("mm; for", "mm, for"));
    }

    @Test
    void givesAnExampleInInchesWhereABareNumberIsInches() {
        Draft inches = new Draft(Map.of(DesignField.NECK_LENGTH, "457"), LengthUnit.INCH);
        assertThat(reader.read(inches).flaws())
                .filteredOn(f -> f.field() == DesignField.NECK_LENGTH)
                .extracting(Flaw::message)
                .containsExactly("is 457 in; it lies between 100 mm and 1500 mm, for example 18 in");
    }

    @Test
    void refusesTextThatIsNoLength() {
        refuses(
                DesignField.NECK_LENGTH,
                "long",
                "Neck length “long” is not a length; write for example 640, 64 cm or 25 3/8 in");
        refuses(
                DesignField.NECK_LENGTH,
                "-5",
                "Neck length “-5” is negative; write for example 640, 64 cm or 25 3/8 in");
        refuses(DesignField.NECK_LENGTH, "", "Neck length is empty; write for example 640, 64 cm or 25 3/8 in");
        assertThat(flaws(DesignField.NECK_LENGTH, "9".repeat(5_000_000)))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).hasSizeLessThan(150));
    }

    @ParameterizedTest
    @CsvSource({"0, 0°", "90, 90°", "2.9, 2.9°", "30.1, 30.1°"})
    void refusesAnAngleNoNeckHas(String text, String shown) {
        refuses(DesignField.ANGLE, text, "Angle is " + shown + "; a design takes 3° to 30°, usual are 7° to 17°");
    }

    @Test
    void readsSeveralAnglesShallowestFirst() {
        for (String text :
                List.of("13 10", "13; 10", "10° 13°", "10 ° 13 °", "10/13", "10 | 13", "10, 13", "13 10 10")) {
            assertThat(read(Drafts.design().with(DesignField.ANGLE, text)).angles())
                    .as(text)
                    .containsExactly(Angle.ofDegrees(10), Angle.ofDegrees(13));
        }
        assertThat(read(Drafts.design().with(DesignField.ANGLE, "10,5")).angles())
                .containsExactly(new Angle(10_500));
    }

    @Test
    void refusesAnglesThatCanBeReadTwoWays() {
        refuses(DesignField.ANGLE, "10,13", "Angle “10,13” can be read two ways; write 10.13 or 10 13");
        refuses(
                DesignField.ANGLE,
                "",
                "Angle is empty; write degrees, for example 10, or several that are allowed, for example 10 13");
        refuses(DesignField.ANGLE, "ten", "Angle “ten” is not a number; write for example 10 or 12.5");
    }

    @Test
    void refusesAHeadThickerThanTheNeckStock() {
        refuses(
                DesignField.HEAD_THICKNESS,
                "21",
                "Head thickness is 21 mm, thicker than the neck stock of 20 mm; make the head at most 20 mm or the neck"
                        + " thicker");
        assertThat(flaws(DesignField.HEAD_THICKNESS, "20")).isEmpty();
    }

    /** Underlaid, the seam lies t / sin a from the nut: 20 / sin 5° = 229.5 mm, off a head of 180 mm. */
    @Test
    void refusesEveryImpossibleJointOfTheArrangementsAndAnglesItAllows() {
        List<Flaw> flaws = flaws(DesignField.ANGLE, "5 6 10");
        assertThat(flaws).hasSize(2).allSatisfy(f -> assertThat(f.field()).isEqualTo(DesignField.HEAD_LENGTH));
        assertThat(flaws.get(0).message()).contains("at 5°").contains("229.5 mm from the nut");
        assertThat(flaws.get(1).message()).contains("at 6°").contains("191.3 mm from the nut");
        assertThat(reader.read(Drafts.design()
                                .with(DesignField.ANGLE, "5 6 10")
                                .with(DesignField.ARRANGEMENTS, "overlaid"))
                        .flaws())
                .isEmpty();
    }

    @Test
    void refusesNoArrangement() {
        refuses(DesignField.ARRANGEMENTS, "", "Arrangements is empty; write underlaid, overlaid or both");
        refuses(
                DesignField.ARRANGEMENTS,
                "sideways",
                "Arrangements “sideways” is none of them; write underlaid, overlaid or both");
    }

    @Test
    void namesTheWoodThatAMistypedOneMayBe() {
        refuses(
                DesignField.NECK_WOODS,
                "maple_shugar",
                "Neck woods “maple_shugar” is not a wood the program knows; did you mean maple_sugar?");
        refuses(
                DesignField.HEAD_WOODS,
                "zebrano",
                "Head woods “zebrano” is not a wood the program knows; write for example maple_sugar, walnut_black or"
                        + " cherry_black");
        assertThat(flaws(DesignField.NECK_WOODS, "sapele sapelle, chery_black")).hasSize(2);
    }

    @Test
    void readsWoodsByIdAndByName() {
        for (String text : List.of(
                "walnut_black sapele",
                "walnut_black;sapele",
                "Black walnut, Sapele",
                "JUGLANS NIGRA | sapele",
                "walnut_black\nsapele\nsapele")) {
            assertThat(read(Drafts.design().with(DesignField.NECK_WOODS, text)).neckWoods())
                    .as(text)
                    .containsExactly("walnut_black", "sapele");
        }
        assertThat(read(Drafts.design().with(DesignField.NECK_WOODS, "any")).neckWoods())
                .isEmpty();
    }

    @Test
    void tellsEverythingThatIsWrongAtOnce() {
        Reading<NeckDesign> reading = reader.read(new Draft(Map.of(), LengthUnit.MM));
        assertThat(reading.value()).isEmpty();
        assertThat(reading.flaws())
                .extracting(Flaw::field)
                .containsExactly(
                        DesignField.CODE,
                        DesignField.NAME,
                        DesignField.NECK_LENGTH,
                        DesignField.NUT_WIDTH,
                        DesignField.HEEL_WIDTH,
                        DesignField.NECK_THICKNESS,
                        DesignField.HEAD_LENGTH,
                        DesignField.HEAD_WIDTH,
                        DesignField.HEAD_THICKNESS,
                        DesignField.ANGLE,
                        DesignField.ARRANGEMENTS,
                        DesignField.FINISH);
    }

    @Test
    void refusesCodesAndNamesThatCannotBeWritten() {
        refuses(
                DesignField.CODE,
                "my neck",
                "Code “my neck” is not a code; use letters, digits and - _ . without blanks, for example WITHY-6");
        refuses(DesignField.CODE, "X".repeat(41), "Code is 41 characters long; a code has at most 40");
        refuses(
                DesignField.CODE,
                "../etc",
                "Code “../etc” is not a code; use letters, digits and - _ . without blanks, for example WITHY-6");
        refuses(DesignField.NAME, "  ", "Name is empty; write for example Withy six-string");
        refuses(DesignField.NAME, "Wi\u0007thy", "Name holds a character that cannot be printed; write it anew");
        refuses(DesignField.FINISH, "shiny", "Finish “shiny” is none of them; write clear, opaque or veneered");
        refuses(DesignField.WINGS, "maybe", "Wings “maybe” is neither; write yes or no");
        refuses(
                DesignField.MATCH,
                "alike",
                "Match “alike” is none of them; write any, same_wood, same_lot or same_piece");
    }

    /** In Turkish the capital of i is İ; codes and words must not follow the machine's language. */
    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "tr"})
    void readsTheSameWhateverTheMachineSpeaks(String language) {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(language));
        try {
            NeckDesign d = read(Drafts.design()
                    .with(DesignField.CODE, "withy-i6")
                    .with(DesignField.ARRANGEMENTS, "UNDERLAID")
                    .with(DesignField.FINISH, "VENEERED")
                    .with(DesignField.NECK_LENGTH, "457,5")
                    .with(DesignField.NECK_WOODS, "WALNUT_BLACK"));
            assertThat(d.code()).isEqualTo("WITHY-I6");
            assertThat(d.arrangements()).containsExactly(Arrangement.UNDERLAID);
            assertThat(d.neckLength().length()).isEqualTo(Length.ofUm(457_500));
            assertThat(d.neckWoods()).containsExactly("walnut_black");
            assertThat(DesignText.word(d.finish())).isEqualTo("veneered");
            assertThat(DesignField.FINISH.column()).isEqualTo("finish");
        } finally {
            Locale.setDefault(before);
        }
    }
}
