package org.scarfwright.rack;

import java.util.Locale;

/** What a person writes about a piece, cell by cell. A page's field, a file's column and an error's pointer share the name. */
public enum PieceField {
    CODE("Code"),
    WOOD("Wood"),
    LENGTH("Length"),
    WIDTH("Width"),
    THICKNESS("Thickness"),
    UNIT("Unit"),
    MOISTURE("Moisture"),
    BOW("Bow"),
    CROOK("Crook"),
    CUP("Cup"),
    TWIST("Twist"),
    MIDDLE_BOW("Bow over the middle half"),
    MIDDLE_CROOK("Crook over the middle half"),
    MIDDLE_TWIST("Twist over the middle half"),
    STICK_GAP("Gap at the winding sticks"),
    STICK_LENGTH("Length of the winding sticks"),
    STICK_DISTANCE("Distance between the winding sticks"),
    MIDDLE_STICK_GAP("Gap with the sticks at the quarter points"),
    LAMINATION("Lamination"),
    DEFECTS("Defects"),
    PLACE("Place"),
    LOT("Lot"),
    COST("Cost"),
    NOTE("Note"),
    GRAIN("Grain"),
    GRAIN_SLOPE("Grain slope"),
    TRIM_LEFT("Trim at the left end"),
    TRIM_RIGHT("Trim at the right end"),
    SET_ASIDE("Set aside"),
    NECK_ALLOWED("Neck allowed"),
    MEASURED_ON("Measured on"),
    MOISTURE_ON("Moisture read on"),
    WARP_ON("Warp read on"),
    METER("Meter"),
    LOT_READY_ON("Lot ready on");

    private final String label;

    PieceField(String label) {
        this.label = label;
    }

    /** As a page names it, such as Grain slope. */
    public String label() {
        return label;
    }

    /** As a file and a form name it, such as grain_slope. */
    public String column() {
        return name().toLowerCase(Locale.ROOT);
    }
}
