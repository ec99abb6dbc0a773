package org.scarfwright.joint;

/**
 * A point of a drawing, in millimetres on the axes of this package: x toward the tip, y from the back up.
 *
 * @param x millimetres
 * @param y millimetres
 */
public record Point(double x, double y) {
    static final Point UP = new Point(0, 1);
    static final Point DOWN = new Point(0, -1);
    static final Point TO_TIP = new Point(1, 0);
    static final Point TO_HEEL = new Point(-1, 0);

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
