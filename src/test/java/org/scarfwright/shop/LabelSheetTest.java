package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.shop.LabelSheet.Grid;

class LabelSheetTest {
    @Test
    void labelsLieInReadingOrder() {
        LabelSheet sheet = sheet(new Grid(3, 7, mm(7), mm(15), mm(66), mm(38)), mm(63), mm(38));
        assertThat(sheet.onPage()).isEqualTo(21);
        assertThat(sheet.leftOf(0)).isEqualTo(mm(7));
        assertThat(sheet.topOf(0)).isEqualTo(mm(15));
        assertThat(sheet.leftOf(5)).isEqualTo(mm(7 + 2 * 66));
        assertThat(sheet.topOf(5)).isEqualTo(mm(15 + 38));
        assertThat(sheet.flaws()).isEmpty();
    }

    @Test
    void mayTouchEveryEdgeOfThePaperAndEachOther() {
        assertThat(sheet(new Grid(3, 9, mm(0), mm(0), mm(70), mm(33)), mm(70), mm(33))
                        .flaws())
                .isEmpty();
    }

    @Test
    void saysHowFarLabelsWouldReachPastThePaper() {
        assertThat(messages(sheet(new Grid(3, 7, mm(15), mm(50), mm(66), mm(38)), mm(64), mm(38))))
                .containsExactly(
                        "makes the labels reach 211 mm from the left edge, past A4, which is 210 mm wide; take fewer or"
                                + " narrower labels, or a smaller margin or pitch",
                        "makes the labels reach 316 mm from the top edge, past A4, which is 297 mm high; take fewer or"
                                + " lower labels, or a smaller margin or pitch");
    }

    @Test
    void saysWhichPitchMakesLabelsOverlap() {
        assertThat(messages(sheet(new Grid(2, 2, mm(5), mm(5), mm(62), mm(30)), mm(63), mm(38))))
                .containsExactly(
                        "is 62 mm, less than the width of a label, so labels would overlap; write 63 mm or more",
                        "is 30 mm, less than the height of a label, so labels would overlap; write 38 mm or more");
    }

    @Test
    void aLabelIsLargeEnoughLyingOrUpright() {
        assertThat(single(38, 17).flaws()).isEmpty();
        assertThat(single(24, 32).flaws()).isEmpty();
        assertThat(single(37, 31).flaws()).extracting(LabelSheet.Flaw::field).containsExactly("width");
        assertThat(single(60, 16).flaws()).extracting(LabelSheet.Flaw::field).containsExactly("height");
        assertThat(single(23, 90).flaws()).extracting(LabelSheet.Flaw::field).containsExactly("width");
    }

    private static LabelSheet single(int width, int height) {
        return new LabelSheet("one", "One", LabelPaper.SINGLE, Grid.ONE, mm(width), mm(height));
    }

    private static LabelSheet sheet(Grid grid, Length width, Length height) {
        return new LabelSheet("some", "Some", LabelPaper.A4, grid, width, height);
    }

    private static List<String> messages(LabelSheet sheet) {
        return sheet.flaws().stream().map(LabelSheet.Flaw::message).toList();
    }

    private static Length mm(int mm) {
        return Length.ofMm(mm);
    }
}
