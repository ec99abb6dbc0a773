package org.scarfwright.measure;

/** The unit a person writes a length in. */
public enum LengthUnit {
    MM(1_000),
    CM(10_000),
    M(1_000_000),
    INCH(25_400);

    private final long um;

    LengthUnit(long um) {
        this.um = um;
    }

    /** Micrometres in one of this unit; exact by definition (international inch, 1959). */
    public long um() {
        return um;
    }

    /** How the unit is written after a number. */
    public String symbol() {
        return switch (this) {
            case MM -> "mm";
            case CM -> "cm";
            case M -> "m";
            case INCH -> "in";
        };
    }
}
