package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.transaction.annotation.Transactional;

@Transactional
abstract class LabelSheetsContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    LabelSheets sheets;

    @Test
    void aNewShopHasSheetsOnBothPapersAndSingleLabelsAndEachLiesRight() {
        assertThat(sheets.all()).extracting(s -> s.sheet().paper()).contains(LabelPaper.values());
        assertThat(sheets.all())
                .isSortedAccordingTo(
                        (a, b) -> a.sheet().code().compareTo(b.sheet().code()))
                .allSatisfy(s -> assertThat(s.sheet().flaws()).isEmpty());
    }

    @Test
    void theNumberInTheNameOfADefaultIsWhatItsPageHolds() {
        for (LabelSheets.Versioned s : sheets.all()) {
            if (s.sheet().paper() != LabelPaper.SINGLE) {
                assertThat(s.sheet().name())
                        .contains(" " + s.sheet().onPage() + " on "
                                + s.sheet().paper().word());
            }
        }
    }

    @Test
    void givesBackALabelSheetAsItWasSaved() {
        assertThat(sheets.add(ours("ours"))).isTrue();
        assertThat(sheets.find("ours").orElseThrow()).isEqualTo(new LabelSheets.Versioned(0, ours("ours")));
        assertThat(sheets.add(ours("ours"))).isFalse();
    }

    @Test
    void theSecondOfTwoEditorsIsTold() {
        sheets.add(ours("ours"));
        assertThat(sheets.change(0, ours("ours"))).isTrue();
        assertThat(sheets.change(0, ours("ours"))).isFalse();
        assertThat(sheets.remove(0, "ours")).isFalse();
        assertThat(sheets.remove(1, "ours")).isTrue();
        assertThat(sheets.find("ours")).isEmpty();
    }

    @Test
    void theTableItselfRefusesLabelsThatLeaveTheirPaper() {
        LabelSheet wide =
                new LabelSheet("wide", "Wide", LabelPaper.A4, ours("x").grid(), Length.ofMm(106), Length.ofMm(30));
        assertThat(wide.flaws()).isNotEmpty();
        assertThatThrownBy(() -> sheets.add(wide)).isInstanceOf(DataIntegrityViolationException.class);
    }

    private static LabelSheet ours(String code) {
        return new LabelSheet(
                code,
                "Ours",
                LabelPaper.A4,
                new LabelSheet.Grid(
                        2, 9, Length.ofMm(5), Length.ofUm(8_500), Length.ofUm(100_250), Length.ofUm(31_001)),
                Length.ofMm(99),
                Length.ofUm(30_999));
    }
}
