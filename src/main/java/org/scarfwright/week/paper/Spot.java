package org.scarfwright.week.paper;

/** A place on the sheet, in millimetres. */
record Spot(double x, double y) {
    Spot plus(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }

    double to(Spot other) {
        return Math.hypot(other.x - x, other.y - y);
    }
}
