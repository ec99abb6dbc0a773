package org.scarfwright.shop;

/** The steps that make a joined blank of two pieces of wood, in their order. Curing is no step: nobody works on it. */
public enum StepKind {
    FLATTEN("flatten and thickness"),
    CUT("cut the bevel"),
    TRUE("true the bevel face"),
    FIT("dry-fit, align, drill for locating screws"),
    GLUE("glue and clamp"),
    /** Once the clamp time is over. */
    UNCLAMP("unclamp, remove the screws"),
    /** Once the cure is over. */
    SQUARE_UP("square up");

    private final String words;

    StepKind(String words) {
        this.words = words;
    }

    /** What is done, as a person would say it. */
    public String words() {
        return words;
    }
}
