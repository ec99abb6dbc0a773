package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A board that is really bent, made of sampled points, and what can be sawn flat and straight out of it. It knows none of the
 * formulas of the rack: lines of bend are walked station by station, and the nearest two parallel planes (or lines) that still
 * hold a part are searched for.
 *
 * @param face the board's flat face, as a line along its length seen from the side
 * @param edge its hollow edge, as a line along its length seen from above
 * @param cup rise across the width, on a true circle
 * @param twist lift of the fourth corner, even along the board
 */
record WarpedBoard(BentLine face, BentLine edge, double width, double cup, double twist) {
    private static final int STATIONS = 24;
    private static final double STEEPEST = 0.6;

    /**
     * A line of given length whose bend may differ from place to place, walked in many short straight steps.
     *
     * @param turn how sharply it bends at a place from 0 to 1: one over the radius, in 1/mm
     */
    record BentLine(double length, DoubleUnaryOperator turn) {
        private static final int STEPS = 4000;

        /** Of even bend: a true circle whose rise over a chord is given. */
        static BentLine circle(double chord, double rise) {
            if (rise == 0) {
                return new BentLine(chord, at -> 0);
            }
            double radius = (chord * chord / 4 + rise * rise) / (2 * rise);
            return new BentLine(2 * radius * Math.asin(chord / 2 / radius), at -> 1 / radius);
        }

        /** One bend in the middle half and another in both outer quarters. */
        static BentLine twoBends(double length, double middle, double ends) {
            return new BentLine(length, at -> at > 0.25 && at < 0.75 ? middle : ends);
        }

        /** Points between two places from 0 to 1. */
        List<double[]> points(double from, double to) {
            List<double[]> points = new ArrayList<>();
            double x = 0;
            double z = 0;
            double heading = 0;
            double step = length / STEPS;
            for (int i = 0; i <= STEPS; i++) {
                double at = i / (double) STEPS;
                if (at >= from - 1e-9 && at <= to + 1e-9) {
                    points.add(new double[] {x, z});
                }
                double half = heading + turn.applyAsDouble(at + 0.5 / STEPS) * step / 2;
                x += step * Math.cos(half);
                z += step * Math.sin(half);
                heading += turn.applyAsDouble(at + 0.5 / STEPS) * step;
            }
            return points;
        }

        /** What a straightedge from place to place shows: the widest gap below the chord. */
        double straightedge(double from, double to) {
            List<double[]> points = points(from, to);
            double[] a = points.get(0);
            double[] b = points.get(points.size() - 1);
            double chord = Math.hypot(b[0] - a[0], b[1] - a[1]);
            return points.stream()
                    .mapToDouble(p -> ((b[0] - a[0]) * (a[1] - p[1]) - (a[0] - p[0]) * (b[1] - a[1])) / chord)
                    .max()
                    .orElseThrow();
        }

        /** The distance of the nearest two parallel lines that hold everything between two places. */
        double strip(double from, double to) {
            List<double[]> points = points(from, to);
            double[] a = points.get(0);
            double[] b = points.get(points.size() - 1);
            double along = Math.atan2(b[1] - a[1], b[0] - a[0]);
            return least(
                    t -> {
                        double low = Double.POSITIVE_INFINITY;
                        double high = Double.NEGATIVE_INFINITY;
                        for (double[] p : points) {
                            double across = p[1] * Math.cos(along + t) - p[0] * Math.sin(along + t);
                            low = Math.min(low, across);
                            high = Math.max(high, across);
                        }
                        return high - low;
                    },
                    -0.3,
                    0.3);
        }
    }

    /** A part: where it lies along the board and across it, each from 0 to 1. */
    record Place(double from, double to, double near, double far) {}

    /** The thickness that flattening both faces of a part takes away at least. */
    double flattening(Place part) {
        List<double[]> line = face.points(part.from(), part.to());
        List<double[]> stations = new ArrayList<>();
        for (int i = 0; i <= STATIONS; i++) {
            stations.add(line.get((int) Math.round(i * (line.size() - 1) / (double) STATIONS)));
        }
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i <= STATIONS; i++) {
            double at = part.from() + (part.to() - part.from()) * i / STATIONS;
            for (int j = 0; j <= STATIONS; j++) {
                double y = (part.near() + (part.far() - part.near()) * j / STATIONS - 0.5) * width;
                double[] s = stations.get(i);
                points.add(new double[] {s[0], y, s[1] + acrossAt(y) + twist * at * (y / width)});
            }
        }
        // The spread over a plane is convex in the plane's two slopes: a nested section search finds its least value.
        double[] first = stations.get(0);
        double[] last = stations.get(STATIONS);
        double slope = (last[1] - first[1]) / (last[0] - first[0]);
        return least(a -> least(b -> spread(points, a, b), -STEEPEST, STEEPEST), slope - 0.05, slope + 0.05);
    }

    /** The width that jointing both edges of a part takes away at least; the far edge runs beside the hollow one. */
    double jointing(double from, double to) {
        List<double[]> hollow = edge.points(from, to);
        double[] a = hollow.get(0);
        double[] b = hollow.get(hollow.size() - 1);
        double along = Math.atan2(b[1] - a[1], b[0] - a[0]);
        // Seen from the wood the hollow edge bulges down; the far edge lies one width further in, square to it.
        List<double[]> far = new ArrayList<>();
        for (int i = 0; i < hollow.size(); i++) {
            double[] before = hollow.get(Math.max(0, i - 1));
            double[] after = hollow.get(Math.min(hollow.size() - 1, i + 1));
            double heading = Math.atan2(after[1] - before[1], after[0] - before[0]);
            double[] p = hollow.get(i);
            double[] q = {p[0] + width * Math.sin(heading), p[1] - width * Math.cos(heading)};
            if (ahead(q, along) >= ahead(a, along) && ahead(q, along) <= ahead(b, along)) {
                far.add(q);
            }
        }
        double straight = least(
                t -> {
                    double near = hollow.stream()
                            .mapToDouble(p -> p[1] * Math.cos(along + t) - p[0] * Math.sin(along + t))
                            .min()
                            .orElseThrow();
                    double beyond = far.stream()
                            .mapToDouble(p -> p[1] * Math.cos(along + t) - p[0] * Math.sin(along + t))
                            .max()
                            .orElseThrow();
                    return beyond - near; // the negative of the width between the two lines
                },
                -0.3,
                0.3);
        return width + straight;
    }

    private static double ahead(double[] point, double direction) {
        return point[0] * Math.cos(direction) + point[1] * Math.sin(direction);
    }

    private double acrossAt(double y) {
        if (cup == 0) {
            return 0;
        }
        double radius = (width * width / 4 + cup * cup) / (2 * cup);
        return radius - Math.sqrt(radius * radius - y * y);
    }

    private static double spread(List<double[]> points, double a, double b) {
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

    private static double least(DoubleUnaryOperator f, double from, double to) {
        double lo = from;
        double hi = to;
        while (hi - lo > 1e-7) {
            double third = (hi - lo) / 3;
            if (f.applyAsDouble(lo + third) < f.applyAsDouble(hi - third)) {
                hi -= third;
            } else {
                lo += third;
            }
        }
        return f.applyAsDouble((lo + hi) / 2);
    }
}
