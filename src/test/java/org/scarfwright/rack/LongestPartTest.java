package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.defect;
import static org.scarfwright.rack.TestPieces.mm;
import static org.scarfwright.rack.TestPieces.piece;
import static org.scarfwright.rack.TestPieces.warp;

import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.LongestPart.Limit;
import org.scarfwright.rack.LongestPart.Wanted;

/** Lengths worked out by hand by solving T − b·(l/L)² = t, or b·(l/L)² = s, for l. */
class LongestPartTest {
    private static final Length ANY = Length.ofMm(1000);

    @Test
    void bowedBlankGivesAsLongAPartAsItsBowLeavesThick() {
        Piece blank = piece("700", "80", "25", warp("6", "0", "0", "0"));
        // 25 - 6·(l/700)² = 21.5  =>  l = 700·√(3.5/6) = 534.634...
        LongestPart part = LongestPart.of(blank, new Wanted(mm("21.5"), Length.ZERO, ANY));
        assertThat(part.limit()).isEqualTo(Limit.THICKNESS);
        assertThat(part.length().mm()).isCloseTo(534.634, within(0.001));
    }

    @Test
    void neckIsAsLongAsItIsStraight() {
        Piece blank = piece("700", "80", "30", warp("6", "0", "0", "0"));
        // 6·(l/700)² = 1  =>  l = 700/√6 = 285.774...
        LongestPart part = LongestPart.of(blank, new Wanted(mm("20"), mm("1"), mm("1")));
        assertThat(part.limit()).isEqualTo(Limit.STRAIGHTNESS);
        assertThat(part.length().mm()).isCloseTo(285.774, within(0.001));
    }

    @Test
    void flatPieceGivesItsLongestClearStretch() {
        Piece board = piece("900", "80", "25", warp("0", "0", "0", "0"), defect("300", "340", true));
        LongestPart part = LongestPart.of(board, new Wanted(mm("20"), mm("1"), mm("1")));
        assertThat(part).isEqualTo(new LongestPart(mm("560"), Limit.CLEAR_STRETCH));
    }

    @Test
    void pieceThatIsTooThinGivesNone() {
        Piece thin = piece("900", "80", "19", warp("0", "0", "0", "0"));
        LongestPart part = LongestPart.of(thin, new Wanted(mm("20"), Length.ZERO, ANY));
        assertThat(part).isEqualTo(new LongestPart(Length.ZERO, Limit.THICKNESS));
    }

    @Test
    void headIsNeverTooCrookedAndKeepsItsStretchToTheMicrometre() {
        Piece blank = piece("700", "80", "25", warp("60", "0", "0", "0"));
        // 25 - 2 - 60·(l/700)² = 15  =>  l = 700·√(8/60) = 255.603858…
        LongestPart head = LongestPart.of(blank, Wanted.head(mm("15"), mm("1")));
        assertThat(head).isEqualTo(new LongestPart(Length.ofUm(255_603), Limit.THICKNESS));
    }

    @Test
    void pieceRippedFirstGivesALongerPartWhereItIsCuppedOrTwisted() {
        Piece board = piece("700", "80", "25", warp("6", "0", "1.6", "0"));
        // over 80 mm: 25 - 1.6 - 6·(l/700)² = 20  =>  l = 700·√(3.4/6) = 526.940…
        assertThat(LongestPart.of(board, Wanted.head(mm("20"), Length.ZERO))
                        .length()
                        .mm())
                .isCloseTo(526.940, within(0.001));
        // over 40 mm the cup is 0.4: l = 700·√(4.6/6) = 612.9165…
        Wanted ripped = Wanted.head(mm("20"), Length.ZERO).rippedTo(mm("40"));
        assertThat(ripped).isEqualTo(new Wanted(mm("20"), Length.ZERO, Length.ofMm(6000), mm("40")));
        assertThat(LongestPart.of(board, ripped).length().mm()).isCloseTo(612.916, within(0.001));
    }

    @Test
    void straightStretchAsksNoThickness() {
        Piece thin = piece("700", "80", "3", warp("6", "0", "0", "0"));
        // 6·(l/700)² = 1.5  =>  l = 350
        assertThat(LongestPart.straight(thin, mm("1.5"))).isEqualTo(new LongestPart(mm("350"), Limit.STRAIGHTNESS));
        assertThat(LongestPart.straight(piece("700", "80", "25", warp("1", "0", "0", "0")), mm("1")))
                .isEqualTo(new LongestPart(mm("700"), Limit.CLEAR_STRETCH));
    }

    @Test
    void tellsStraightnessWhereBothEndTogetherOnlyIfItIsThickEnough() {
        Piece blank = piece("700", "80", "25", warp("6", "0", "0", "0"));
        // both limits at l = 350: 25 − 1.5 = 23.5 and 1.5 out; one micrometre more is too thin already
        assertThat(LongestPart.of(blank, new Wanted(mm("23.5"), Length.ZERO, mm("1.5"))))
                .isEqualTo(new LongestPart(mm("350"), Limit.THICKNESS));
        assertThat(LongestPart.of(blank, new Wanted(mm("23.4"), Length.ZERO, mm("1.5"))))
                .isEqualTo(new LongestPart(mm("350"), Limit.STRAIGHTNESS));
    }

    @Test
    void pieceWithoutAClearStretchGivesNothing() {
        Piece board = piece("600", "70", "22", warp("0", "0", "0", "0"), defect("0", "600", true));
        assertThat(LongestPart.of(board, Wanted.head(mm("15"), mm("1"))))
                .isEqualTo(new LongestPart(Length.ZERO, Limit.CLEAR_STRETCH));
    }
}
