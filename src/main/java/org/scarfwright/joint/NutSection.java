package org.scarfwright.joint;

import org.scarfwright.measure.Length;

/**
 * The section of the head at the nut, where the strings bend it most: square to the head's face, taken as a rectangle. A real
 * section is rounded at the back and weaker than that.
 *
 * <p><b>Source:</b> bending stress σ = M·c/I with I = w·z³/12 and c = z/2 (beam theory, any text on strength of materials); the arm
 * is derived here from the side view.
 *
 * @param width w, across the neck, above 0
 * @param thickness z, square to the face, above 0
 */
public record NutSection(Length width, Length thickness) {
    public NutSection {
        if (!width.isPositive() || !thickness.isPositive()) {
            throw new IllegalArgumentException("no section: " + width + " × " + thickness);
        }
    }

    /**
     * Distance in mm of the string's run to its post from the middle of the section: (z/2)·cos(β − a) + g·cos β.
     */
    public double arm(StringPath path) {
        double beta = path.breakRadians();
        return thickness.mm() / 2 * Math.cos(beta - path.tilt().radians())
                + path.slot().mm() * Math.cos(beta);
    }

    /**
     * Bending moment in newton metres: the pull times its arm. Above 0 it bends the head up, pressing its face together.
     *
     * @param newtons pull of all strings together
     */
    public double momentNm(double newtons, StringPath path) {
        return newtons * arm(path) / 1000;
    }

    /** Bending stress in megapascals (N/mm²) at face and back, 6·M/(w·z²); the pull's own pressure is not in it. */
    public double stressMpa(double newtons, StringPath path) {
        double z = thickness.mm();
        return 6 * momentNm(newtons, path) * 1000 / (width.mm() * z * z);
    }
}
