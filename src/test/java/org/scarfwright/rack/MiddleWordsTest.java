package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.rack.TestPieces.mm;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class MiddleWordsTest {
    private static Warp warp(@Nullable String bow, @Nullable String crook, @Nullable String twist) {
        return new Warp(
                mm("6"),
                mm("2"),
                mm("0"),
                mm("4"),
                new MiddleReading(
                        bow == null ? null : mm(bow),
                        crook == null ? null : mm(crook),
                        twist == null ? null : mm(twist)),
                TestPieces.DAY);
    }

    @Test
    void saysNothingWhereNobodyReadTheMiddle() {
        assertThat(MiddleWords.of(warp(null, null, null))).isEmpty();
        assertThat(MiddleWords.of(Warp.UNMEASURED)).isEmpty();
    }

    @Test
    void saysThatAnEvenPieceIsEven() {
        assertThat(MiddleWords.of(warp("1.5", "0.5", "2")))
                .containsExactly(
                        "Over the middle half the bow is 1.5 mm, as one even arc would show.",
                        "Over the middle half the crook is 0.5 mm, as one even arc would show.",
                        "Over the middle half the twist is 2.0 mm, as an even twist would show.");
        // closer than a tenth of a millimetre of bow nobody reads: 4·1.525 = 6.1, 4·1.526 = 6.104
        assertThat(MiddleWords.of(warp("1.525", null, null)).get(0)).endsWith("as one even arc would show.");
        assertThat(MiddleWords.of(warp("1.526", null, null)).get(0)).contains("the middle is bent more");
        assertThat(MiddleWords.of(warp(null, null, "2.05")).get(0)).endsWith("as an even twist would show.");
        assertThat(MiddleWords.of(warp(null, null, "2.051")).get(0)).contains("the middle is twisted more");
    }

    @Test
    void saysWhereAPieceIsBentMoreAndWhatItCountsAs() {
        assertThat(MiddleWords.of(warp("3", "0", "3")))
                .containsExactly(
                        "Over the middle half the bow is 3.0 mm, where one even arc would show 1.5 mm: the middle is bent more."
                                + " Parts count as cut from an even bow of 12.0 mm, and none as more than 6.0 mm out.",
                        "Over the middle half the crook is 0.0 mm, where one even arc would show 0.5 mm: the ends are bent more."
                                + " Parts count as cut from an even crook of 8.0 mm, and none as more than 2.0 mm out.",
                        "Over the middle half the twist is 3.0 mm, where an even twist would show 2.0 mm: the middle is twisted"
                                + " more. Parts count as cut from an even twist of 6.0 mm, and none as more than 4.0 mm"
                                + " twisted.");
        assertThat(MiddleWords.of(warp(null, null, "1")))
                .containsExactly(
                        "Over the middle half the twist is 1.0 mm, where an even twist would show 2.0 mm: the ends are twisted"
                                + " more. Parts count as cut from an even twist of 6.0 mm, and none as more than 4.0 mm"
                                + " twisted.");
    }

    @Test
    void saysThatOneReadingIsTooSmallWhereTheMiddleShowsMoreThanHalf() {
        assertThat(MiddleWords.of(warp("3.1", null, "5")))
                .containsExactly(
                        "Over the middle half the bow is 3.1 mm, where one even arc would show 1.5 mm: that is more than half of"
                                + " the whole, so one of the two readings is too small. The whole counts as 6.2 mm, and parts as"
                                + " cut from an even bow of 12.4 mm.",
                        "Over the middle half the twist is 5.0 mm, where an even twist would show 2.0 mm: the middle is twisted"
                                + " more. Parts count as cut from an even twist of 10.0 mm, and none as more than 5.0 mm"
                                + " twisted.");
    }
}
