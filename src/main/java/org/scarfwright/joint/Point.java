package org.scarfwright.joint;

/**
 * A point of a drawing, in millimetres on the axes of this package: x toward the tip, y from the back up.
 *
 * @param x millimetres
 * @param y millimetres
 */
public record Point(double x, double y) {
    Point plus(Point other) {
        return new Point(x + other.x, y + other.y);
    }

    Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    Point times(double factor) {
        return new Point(x * factor, y * factor);
    }

    Point middleTo(Point other) {
        return plus(other).times(0.5);
    }

    double distanceTo(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** Above 0 when the other points to the left of this one. */
    double cross(Point other) {
        return x * other.y - y * other.x;
    }
}
