package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.defect;
import static org.scarfwright.rack.TestPieces.mm;
import static org.scarfwright.rack.TestPieces.piece;
import static org.scarfwright.rack.TestPieces.trimmed;
import static org.scarfwright.rack.TestPieces.warp;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;

/** Worked by hand from the four laws; {@link WarpedBoardTest} holds the laws themselves to boards that are really bent. */
class UsableSizeTest {
    private static final Warp FLAT = warp("0", "0", "0", "0");

    /** Half a printed digit, and the micrometre by which what is left is rounded down. */
    private static final double PRINTED = 0.006;

    @Test
    void keepsWhatTheWorkedExamplesSay() {
        for (String[] row : PublishedRack.rows("rack-usable-size.csv")) {
            Piece blank = piece(row[0], row[1], row[2], warp(row[3], row[4], row[5], row[6]));
            Length thickness = UsableSize.thickness(blank, mm(row[7]), mm(row[8]), Length.ZERO);
            Length width = UsableSize.width(blank, mm(row[7]), Length.ZERO);
            assertThat(thickness.mm()).as(String.join(",", row)).isCloseTo(Double.parseDouble(row[9]), within(PRINTED));
            assertThat(width.mm()).as(String.join(",", row)).isCloseTo(Double.parseDouble(row[10]), within(PRINTED));
        }
    }

    @Test
    void takesPlaningOffBothFacesAndRoundsDown() {
        Piece blank = piece("700", "80", "25", warp("6", "0", "0", "0"));
        // 25 - 6*(570/700)^2 = 21.02163265...
        assertThat(UsableSize.thickness(blank, mm("570"), mm("60"), mm("1"))).isEqualTo(Length.ofUm(19_021));
    }

    @Test
    void flatPieceGivesItsWholeSize() {
        Piece blank = piece("640", "70", "22", FLAT);
        assertThat(UsableSize.thickness(blank, mm("640"), mm("70"), Length.ZERO))
                .isEqualTo(mm("22"));
        assertThat(UsableSize.width(blank, mm("640"), mm("2"))).isEqualTo(mm("68"));
        assertThat(UsableSize.straightness(blank, mm("640"))).isEqualTo(Length.ZERO);
    }

    @Test
    void crookCostsWidthOfALongPartAndHardlyAnyOfAShortOne() {
        Piece blank = piece("800", "70", "22", warp("0", "4", "0", "0"));
        assertThat(UsableSize.width(blank, mm("800"), mm("2"))).isEqualTo(mm("64"));
        assertThat(UsableSize.width(blank, mm("200"), mm("2"))).isEqualTo(mm("67.75"));
    }

    @Test
    void roundsWhatAPartIsStillOutUp() {
        Piece blank = piece("700", "80", "25", warp("6", "0", "0", "0"));
        // 6*(570/700)^2 = 3.97836734...
        assertThat(UsableSize.straightness(blank, mm("570"))).isEqualTo(Length.ofUm(3_979));
    }

    @Test
    void partLongerThanThePieceHasNoMoreWarpThanThePiece() {
        Piece blank = piece("700", "80", "25", warp("6", "2", "1", "3"));
        assertThat(UsableSize.thickness(blank, mm("900"), mm("120"), Length.ZERO))
                .isEqualTo(UsableSize.thickness(blank, mm("700"), mm("80"), Length.ZERO));
    }

    @Test
    void readingOverTheMiddleThatAgreesChangesNothing() {
        Piece once = piece("700", "80", "25", warp("6", "4", "1", "5"));
        Piece twice = piece("700", "80", "25", withMiddle(warp("6", "4", "1", "5"), "1.5", "1", "2.5"));
        for (String part : new String[] {"1", "150", "349.999", "570", "700", "900"}) {
            assertThat(UsableSize.thickness(twice, mm(part), mm("60"), mm("1")))
                    .isEqualTo(UsableSize.thickness(once, mm(part), mm("60"), mm("1")));
            assertThat(UsableSize.width(twice, mm(part), mm("2"))).isEqualTo(UsableSize.width(once, mm(part), mm("2")));
            assertThat(UsableSize.straightness(twice, mm(part))).isEqualTo(UsableSize.straightness(once, mm(part)));
        }
    }

    @Test
    void readingOverTheMiddleThatDisagreesCostsThicknessWidthAndStraightness() {
        // middle 3 of 6: counts as 12·(175/700)² = 0.75, where one reading says 6·(175/700)² = 0.375
        Piece bowed = piece("700", "80", "25", withMiddle(warp("6", "0", "0", "0"), "3", null, null));
        assertThat(UsableSize.straightness(bowed, mm("175"))).isEqualTo(mm("0.75"));
        assertThat(UsableSize.thickness(bowed, mm("175"), mm("80"), Length.ZERO))
                .isEqualTo(mm("24.25"));
        assertThat(UsableSize.width(bowed, mm("175"), Length.ZERO)).isEqualTo(mm("80"));
        // ends: 4·(4 − 3·0.5) = 10; 10·(140/700)² = 0.4
        Piece crooked = piece("700", "80", "25", withMiddle(warp("0", "4", "0", "0"), null, "0.5", null));
        assertThat(UsableSize.width(crooked, mm("140"), mm("1"))).isEqualTo(mm("78.6"));
        assertThat(UsableSize.straightness(crooked, mm("140"))).isEqualTo(Length.ZERO);
        // twist: 2·max(4, 5 − 4) = 8 over the length; 8·(175/700)·(40/80)/2 = 0.5
        Piece twisted = piece("700", "80", "25", withMiddle(warp("0", "0", "0", "5"), null, null, "4"));
        assertThat(UsableSize.flattening(twisted, mm("175"), mm("40"))).isEqualTo(mm("0.5"));
    }

    @Test
    void clearZonesLieBetweenTrimsAndStructuralDefects() {
        Piece board = trimmed(
                piece(
                        "900",
                        "70",
                        "22",
                        FLAT,
                        defect("500", "540", true),
                        defect("200", "230", true),
                        defect("300", "310", false)),
                "15",
                "10");
        assertThat(UsableSize.zones(board))
                .containsExactly(
                        new Zone(mm("15"), mm("200")), new Zone(mm("230"), mm("500")), new Zone(mm("540"), mm("890")));
    }

    @Test
    void overlappingDefectsAndTrimsLeaveNoEmptyZone() {
        Piece board = trimmed(
                piece(
                        "600",
                        "70",
                        "22",
                        FLAT,
                        defect("0", "40", true),
                        defect("30", "100", true),
                        defect("50", "60", true),
                        defect("580", "600", true)),
                "20",
                "20");
        assertThat(UsableSize.zones(board)).containsExactly(new Zone(mm("100"), mm("580")));
        assertThat(UsableSize.zones(piece("600", "70", "22", FLAT, defect("0", "600", true))))
                .isEmpty();
    }

    private static Warp withMiddle(Warp warp, @Nullable String bow, @Nullable String crook, @Nullable String twist) {
        return new Warp(
                warp.bow(),
                warp.crook(),
                warp.cup(),
                warp.twist(),
                new MiddleReading(
                        bow == null ? null : mm(bow),
                        crook == null ? null : mm(crook),
                        twist == null ? null : mm(twist)),
                warp.readOn());
    }
}
