package org.scarfwright.week.paper;

/** Kinds of lines. Thick 0.5 mm and thin 0.25 mm, as on a workshop drawing (ISO 128 line groups). */
enum Line {
    THICK(0.5, 0),
    THIN(0.25, 0),
    HAIR(0.13, 0),
    DASHED(0.25, 1.5);

    private final double width;
    private final double dash;

    Line(double width, double dash) {
        this.width = width;
        this.dash = dash;
    }

    double width() {
        return width;
    }

    double dash() {
        return dash;
    }
}
