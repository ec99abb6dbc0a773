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
}
