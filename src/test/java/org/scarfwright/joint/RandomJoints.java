package org.scarfwright.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * Seeded joints, every fourth of them drawn to an edge: the shallowest and the steepest angle, a head as thick as the neck, a
 * head or a neck whose front all but runs out to a feather edge.
 */
final class RandomJoints {
    /** What is left of a front that all but runs out. */
    static final double FEATHER = 0.002;

    private static final List<HeadOrder> ORDERS = List.of(HeadOrder.values());

    private final SplittableRandom random;

    RandomJoints(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Any joint, possible or not. */
    JointInput any() {
        JointInput plain = new JointInput(
                random.nextBoolean() ? Arrangement.UNDERLAID : Arrangement.OVERLAID,
                new Angle(random.nextInt(3_000, 30_001)),
                um(12_000, 40_000),
                um(8_000, 40_000),
                um(60_000, 900_000),
                um(60_000, 350_000),
                um(35_000, 90_000),
                um(35_000, 120_000));
        return switch (random.nextInt(20)) {
            case 0 -> plain.with(DesignRules.SHALLOWEST);
            case 1 -> plain.with(DesignRules.STEEPEST);
            case 2 -> plain.with(new Angle(random.nextInt(500, 89_000)));
            case 3 -> plain.withHeadThickness(plain.neckThickness());
            case 4 -> feather(plain);
            default -> plain;
        };
    }

    private JointInput feather(JointInput in) {
        boolean underlaid = in.arrangement() == Arrangement.UNDERLAID;
        double taken = (underlaid ? in.neckThickness() : in.headThickness()).mm()
                / Math.sin(Math.toRadians(in.angle().toDegrees().doubleValue()));
        Length edge = Length.nearestMm(taken + FEATHER);
        return new JointInput(
                in.arrangement(),
                in.angle(),
                in.neckThickness(),
                in.headThickness(),
                underlaid ? in.neckLength() : edge,
                underlaid ? edge : in.headLength(),
                in.neckWidth(),
                in.headWidth());
    }

    /** Joints that can be, half of them underlaid. */
    List<JointInput> possible(int count) {
        List<JointInput> found = new ArrayList<>();
        int underlaid = 0;
        while (found.size() < count) {
            JointInput in = any();
            if (!ScarfJoint.refusals(in).isEmpty()) {
                continue;
            }
            boolean under = in.arrangement() == Arrangement.UNDERLAID;
            if (under ? underlaid < count / 2 : found.size() - underlaid < count - count / 2) {
                found.add(in);
                underlaid += under ? 1 : 0;
            }
        }
        return found;
    }

    /** A head's stock: as thick as it ends, or up to 25 mm thicker. */
    Length stock(Length finished) {
        return random.nextInt(10) == 0 ? finished : finished.plus(um(1, 25_000));
    }

    HeadOrder order() {
        return ORDERS.get(random.nextInt(ORDERS.size()));
    }

    Length um(long from, long to) {
        return Length.ofUm(random.nextLong(from, to));
    }
}
