package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.defect;
import static org.scarfwright.rack.TestPieces.mm;
import static org.scarfwright.rack.TestPieces.piece;
import static org.scarfwright.rack.TestPieces.trimmed;
import static org.scarfwright.rack.TestPieces.warp;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;

/**
 * Checked against a worked example (derived here by hand: 25 − 6·(570/700)² and 25 − 6·(150/700)²) and against a numeric
 * construction that knows none of the formulas: a warped board is sampled on a grid from a true circle, a true circle
 * across and a twisted sheet, and the pair of parallel planes nearest to each other that still holds the sampled part is
 * searched for.
 */
class UsableSizeTest {
    private static final Warp FLAT = warp("0", "0", "0", "0");

    @Test
    void bowedBlankTooThinForALongNeckStillGivesAThickHead() {
        Piece blank = piece("700", "80", "25", warp("6", "0", "0", "0"));
        assertThat(UsableSize.thickness(blank, mm("570"), mm("60"), Length.ZERO).mm())
                .isCloseTo(21.02, within(0.005));
        assertThat(UsableSize.thickness(blank, mm("150"), mm("60"), Length.ZERO).mm())
                .isCloseTo(24.72, within(0.005));
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
    void needsNoLessThanTwoPlanesRoundTheSampledPart() {
        Random random = new Random(20_260_302);
        for (int i = 0; i < 60; i++) {
            double length = 200 + random.nextInt(700);
            double width = 40 + random.nextInt(80);
            Warp warp = new Warp(
                    upTo(random, 8_000), Length.ZERO, upTo(random, 1_500), upTo(random, 6_000), TestPieces.DAY);
            Piece board = piece(text(length), text(width), "30", warp);
            double l = length * (0.15 + 0.85 * random.nextDouble());
            double w = width * (0.4 + 0.6 * random.nextDouble());
            double law = UsableSize.flattening(board, Length.nearestMm(l), Length.nearestMm(w))
                    .mm();
            double sampled = slab(board, l, w);
            double twistLeft = warp.twist().mm() * (l / length) * (w / width) / 2;
            assertThat(law).as("board %s, part %s x %s", board, l, w).isGreaterThanOrEqualTo(sampled - 0.002);
            // The planes that suit the twist suit the arcs too, at best: never more than the twist's half is saved.
            assertThat(law - sampled).isLessThanOrEqualTo(twistLeft + 0.01);
        }
    }

    @Test
    void isExactWhereOnlyOneKindOfWarpIsThere() {
        for (Warp warp : new Warp[] {
            warp("6", "0", "0", "0"), warp("0", "0", "1.2", "0"), warp("0", "0", "0", "5"), warp("2", "0", "0.5", "0")
        }) {
            Piece board = piece("700", "80", "25", warp);
            for (double l : new double[] {150, 300, 570, 700}) {
                double law = UsableSize.flattening(board, Length.nearestMm(l), mm("64"))
                        .mm();
                assertThat(slab(board, l, 64)).as("%s over %s", warp, l).isCloseTo(law, within(0.004));
            }
        }
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

    /** The distance of the nearest two parallel planes that hold a part cut from the middle of the board. */
    private static double slab(Piece board, double l, double w) {
        double length = board.length().length().mm();
        double width = board.width().length().mm();
        int steps = 24;
        double[][] points = new double[(steps + 1) * (steps + 1)][];
        int n = 0;
        for (int i = 0; i <= steps; i++) {
            for (int j = 0; j <= steps; j++) {
                double x = (i / (double) steps - 0.5) * l;
                double y = (j / (double) steps - 0.5) * w;
                double z = arc(board.warp().bow().mm(), length, x)
                        + arc(board.warp().cup().mm(), width, y)
                        + board.warp().twist().mm() * (x / length) * (y / width);
                points[n++] = new double[] {x, y, z};
            }
        }
        // The spread over a plane is convex in the plane's two slopes: a nested section search finds its least value.
        double steepest = 0.5;
        return least(a -> least(b -> spread(points, a, b), -steepest, steepest), -steepest, steepest);
    }

    /** Height of a true circle with the given rise over a chord, at a distance from the chord's middle. */
    private static double arc(double rise, double chord, double x) {
        if (rise == 0) {
            return 0;
        }
        double radius = (chord * chord / 4 + rise * rise) / (2 * rise);
        return radius - Math.sqrt(radius * radius - x * x);
    }

    private static double spread(double[][] points, double a, double b) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] p : points) {
            double rest = p[2] - a * p[0] - b * p[1];
            low = Math.min(low, rest);
            high = Math.max(high, rest);
        }
        // measured square to the planes
        return (high - low) / Math.sqrt(1 + a * a + b * b);
    }

    private static double least(java.util.function.DoubleUnaryOperator f, double from, double to) {
        double lo = from;
        double hi = to;
        for (int i = 0; i < 50; i++) {
            double third = (hi - lo) / 3;
            if (f.applyAsDouble(lo + third) < f.applyAsDouble(hi - third)) {
                hi -= third;
            } else {
                lo += third;
            }
        }
        return f.applyAsDouble((lo + hi) / 2);
    }

    private static Length upTo(Random random, int um) {
        return Length.ofUm(random.nextInt(um));
    }

    private static String text(double mm) {
        return String.valueOf((long) mm);
    }
}
