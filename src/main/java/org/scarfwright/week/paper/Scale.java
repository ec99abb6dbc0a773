package org.scarfwright.week.paper;

import java.util.List;

/** How large a drawing is printed: true, or one of the usual reductions. Source: ISO 5455 and common practice between. */
record Scale(double times) {
    private static final List<Double> USUAL =
            List.of(1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 50.0, 100.0);

    /** The largest that lets this much wood onto this much paper. */
    static Scale fitting(double wood, double paper) {
        return new Scale(
                USUAL.stream().filter(t -> wood / t <= paper).findFirst().orElse(USUAL.get(USUAL.size() - 1)));
    }

    double paperPerWood() {
        return 1 / times;
    }

    boolean isTrue() {
        return times == 1;
    }

    String words() {
        return isTrue()
                ? "True to scale, 1 : 1"
                : "Scale 1 : " + (times == Math.rint(times) ? String.valueOf((int) times) : String.valueOf(times));
    }
}
