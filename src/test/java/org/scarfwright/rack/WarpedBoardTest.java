package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scarfwright.rack.TestPieces.mm;
import static org.scarfwright.rack.TestPieces.piece;
import static org.scarfwright.rack.TestPieces.warp;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.WarpedBoard.BentLine;
import org.scarfwright.rack.WarpedBoard.Place;

/**
 * The laws of warp against boards that are really bent, with parts anywhere along and across them. One law by itself is exact
 * but for what an arc differs from a parabola; together they may ask for more than is needed and never for less.
 */
class WarpedBoardTest {
    /** A twentieth of the least a page shows: what sampling in steps may miss. */
    private static final double SAMPLED = 0.005;

    @Test
    void flatteningNeverTakesMoreThanTheLawsSayWhereverThePartLies() {
        Random random = new Random(20_261_125);
        double spared = 0;
        for (int i = 0; i < 120; i++) {
            int length = 200 + random.nextInt(1000);
            int width = 40 + random.nextInt(110);
            Warp warp = new Warp(
                    Length.ofUm(random.nextInt(9_000)),
                    Length.ZERO,
                    Length.ofUm(random.nextInt(1_500)),
                    Length.ofUm(random.nextInt(6_000)),
                    TestPieces.DAY);
            Place part = place(random);
            double law = lawOfFlattening(length, width, warp, part);
            double needed = board(length, width, warp).flattening(part);
            double twistLeft = warp.twist().mm() * (part.to() - part.from()) * (part.far() - part.near()) / 2;
            assertThat(law).as("%d x %d, %s, %s", length, width, warp, part).isGreaterThanOrEqualTo(needed - SAMPLED);
            // Planes that suit the arcs suit the twist too, at best: never more than the twist's half is spared.
            assertThat(law - needed).as("%s, %s", warp, part).isLessThanOrEqualTo(twistLeft + 0.01);
            spared = Math.max(spared, law - needed);
        }
        assertThat(spared)
                .as("cases in which the laws together ask for more than is needed")
                .isGreaterThan(0.2);
    }

    @Test
    void oneKindOfWarpCostsExactlyWhatItsLawSays() {
        Random random = new Random(20_261_126);
        for (Warp warp : new Warp[] {
            warp("6", "0", "0", "0"), warp("0", "0", "1.2", "0"), warp("0", "0", "0", "5"), warp("3", "0", "0.8", "0")
        }) {
            for (int i = 0; i < 6; i++) {
                Place part = place(random);
                double law = lawOfFlattening(700, 80, warp, part);
                assertThat(board(700, 80, warp).flattening(part))
                        .as("%s at %s", warp, part)
                        .isCloseTo(law, within(SAMPLED + 0.004 * law));
            }
        }
    }

    @Test
    void jointingTakesTheWidthThatTheLawOfCrookSaysWhereverThePartLies() {
        Random random = new Random(20_261_127);
        for (int i = 0; i < 60; i++) {
            int length = 300 + random.nextInt(900);
            int width = 50 + random.nextInt(150);
            Warp warp =
                    new Warp(Length.ZERO, Length.ofUm(random.nextInt(9_000)), Length.ZERO, Length.ZERO, TestPieces.DAY);
            Place part = place(random);
            Piece board = piece(String.valueOf(length), String.valueOf(width), "25", warp);
            Length partLength = partLength(BentLine.circle(length, warp.crook().mm()), part);
            double law =
                    width - UsableSize.width(board, partLength, Length.ZERO).mm();
            double needed = board(length, width, warp).jointing(part.from(), part.to());
            assertThat(law).as("%d x %d, %s, %s", length, width, warp, part).isGreaterThanOrEqualTo(needed - SAMPLED);
            // The far edge runs on a larger circle than the hollow one and costs less; nothing else is spared.
            double radius = length * length / 8.0 / Math.max(1e-9, warp.crook().mm());
            assertThat(law - needed).isLessThanOrEqualTo(SAMPLED + (0.01 + width / radius) * law);
        }
    }

    @Test
    void twoReadingsCoverAPieceThatBendsUnevenlyWhereverThePartLies() {
        Random random = new Random(20_261_128);
        int middleWorse = 0;
        int endsWorse = 0;
        int bentBack = 0;
        for (int i = 0; i < 150; i++) {
            double length = 400 + random.nextInt(600);
            double inner = random.nextDouble() * 1e-4;
            double outer = (random.nextDouble() * 1.3 - 0.3) * 1e-4;
            BentLine line = BentLine.twoBends(length, inner, outer);
            double bow = line.straightedge(0, 1);
            double middle = line.straightedge(0.25, 0.75);
            if (middle > bow / 2) {
                continue; // it would rock on the straightedge, and nobody could read it over its ends
            }
            Place part = place(random);
            double law = WarpLaw.rise(
                    Length.nearestMm(bow),
                    Length.nearestMm(middle),
                    partLength(line, part).mm() / chord(line, 0, 1));
            double needed = line.strip(part.from(), part.to());
            assertThat(law)
                    .as("bends %s and %s over %s, %s", inner, outer, length, part)
                    .isGreaterThanOrEqualTo(needed * 0.99 - SAMPLED);
            middleWorse += inner > outer ? 1 : 0;
            endsWorse += outer > inner ? 1 : 0;
            bentBack += outer < 0 ? 1 : 0;
        }
        assertThat(middleWorse).isGreaterThan(30);
        assertThat(endsWorse).isGreaterThan(30);
        assertThat(bentBack).isGreaterThan(5);
    }

    @Test
    void partInTheSharperBendIsLeftWithExactlyWhatTwoReadingsSay() {
        BentLine sharpMiddle = BentLine.twoBends(700, 1.2e-4, 0.4e-4);
        BentLine sharpEnds = BentLine.twoBends(700, 0.3e-4, 1.1e-4);
        assertThat(lawOver(sharpMiddle, 0.3, 0.7)).isCloseTo(sharpMiddle.strip(0.3, 0.7), within(0.01));
        assertThat(lawOver(sharpEnds, 0.02, 0.24)).isCloseTo(sharpEnds.strip(0.02, 0.24), within(0.01));
        assertThat(lawOver(sharpEnds, 0.0, 1.0)).isCloseTo(sharpEnds.strip(0.0, 1.0), within(0.01));
    }

    @Test
    void unevenTwistCostsNoMoreThanTwoReadingsSay() {
        Random random = new Random(20_261_129);
        for (int i = 0; i < 200; i++) {
            double inner = random.nextInt(6_000) / 1000.0;
            double outer = (random.nextInt(8_000) - 2_000) / 1000.0;
            double whole = inner + outer;
            if (whole < 0) {
                continue; // the middle would be twisted the other way than the whole, which two readings cannot tell
            }
            double from = random.nextDouble() * 0.9;
            double to = from + random.nextDouble() * (1 - from);
            // A sheet whose cross sections only turn lies between two planes half the range of their lifts apart.
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int s = 0; s <= 400; s++) {
                double lift = lift(inner, outer, from + (to - from) * s / 400);
                low = Math.min(low, lift);
                high = Math.max(high, lift);
            }
            assertThat(WarpLaw.twist(Length.nearestMm(whole), Length.nearestMm(inner), to - from))
                    .as("%s inside, %s outside, %s to %s", inner, outer, from, to)
                    .isGreaterThanOrEqualTo(high - low - 1e-9);
        }
    }

    /** Lift at a place, with one twist over the middle half and another shared by the outer quarters. */
    private static double lift(double inner, double outer, double at) {
        double inside = Math.min(0.5, Math.max(0, at - 0.25));
        return inner * 2 * inside + outer * 2 * (at - inside);
    }

    private static double lawOver(BentLine line, double from, double to) {
        return WarpLaw.rise(
                Length.nearestMm(line.straightedge(0, 1)),
                Length.nearestMm(line.straightedge(0.25, 0.75)),
                chord(line, from, to) / chord(line, 0, 1));
    }

    private static Place place(Random random) {
        double share = 0.12 + 0.88 * random.nextDouble();
        double from = (1 - share) * random.nextDouble();
        double across = 0.35 + 0.65 * random.nextDouble();
        double near = (1 - across) * random.nextDouble();
        return new Place(from, from + share, near, near + across);
    }

    private static double chord(BentLine line, double from, double to) {
        var points = line.points(from, to);
        double[] a = points.get(0);
        double[] b = points.get(points.size() - 1);
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
    }

    /** As a tape measures it, rounded up. */
    private static Length partLength(BentLine line, Place part) {
        return Length.upFromMm(chord(line, part.from(), part.to()));
    }

    private static WarpedBoard board(int length, int width, Warp warp) {
        return new WarpedBoard(
                BentLine.circle(length, warp.bow().mm()),
                BentLine.circle(length, warp.crook().mm()),
                width,
                warp.cup().mm(),
                warp.twist().mm());
    }

    private static double lawOfFlattening(int length, int width, Warp warp, Place part) {
        Piece board = piece(String.valueOf(length), String.valueOf(width), "30", warp);
        Length partLength = partLength(BentLine.circle(length, warp.bow().mm()), part);
        Length partWidth = Length.upFromMm(width * (part.far() - part.near()));
        Length left = UsableSize.thickness(board, partLength, partWidth, Length.ZERO);
        assertThat(UsableSize.flattening(board, partLength, partWidth)).isEqualTo(mm("30").minus(left));
        return mm("30").minus(left).mm();
    }
}
