package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What to measure on a bevel cut in scrap before the piece is cut.
 *
 * <p>The run of a shallow bevel tells its angle better than any scale: at 10° through 20 mm half a degree moves it by more than 5 mm.
 * Two such scraps with their thin ends together open at twice the angle, and so show twice its error; bevel on bevel, thick end on
 * thin, their outer faces must be parallel.
 *
 * <p><b>Source:</b> the figures are derived here; turning one scrap over to double the error is common practice.
 *
 * @param angle wanted; above half a degree and below 45°
 * @param thickness of the scrap
 */
public record TestCut(Angle angle, Length thickness) {
    private static final int HALF_A_DEGREE = 500;
    private static final int STEEPEST = 45_000;

    /** Whether a test cut tells this angle: above half a degree and below 45°. */
    public static boolean canBeMeasured(Angle angle) {
        return angle.millidegrees() > HALF_A_DEGREE && angle.millidegrees() < STEEPEST;
    }

    /** Run the scrap's bevel should have: s·cot a, to the nearest micrometre. */
    public Length run() {
        return at(0);
    }

    /** How much longer the run is when the bevel came out half a degree too shallow. */
    public Length longerWhenShallow() {
        return at(-HALF_A_DEGREE).minus(run());
    }

    /** How much shorter the run is when the bevel came out half a degree too steep. */
    public Length shorterWhenSteep() {
        return run().minus(at(HALF_A_DEGREE));
    }

    /** What two scraps open at with their thin ends together: 2a. */
    public Angle doubled() {
        return new Angle(2 * angle.millidegrees());
    }

    /** Rise of the doubled angle over a length: b·tan 2a, to the nearest micrometre. */
    public Length doubledRise(Length base) {
        return new JigWedge(doubled(), base).rise();
    }

    private Length at(int off) {
        return Length.nearestMm(thickness.mm() * new Angle(angle.millidegrees() + off).cot());
    }
}
