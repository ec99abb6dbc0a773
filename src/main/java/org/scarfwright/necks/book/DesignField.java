package org.scarfwright.necks.book;

import java.util.Locale;

/** What a design is written with, in the order people fill it in. */
public enum DesignField implements Field {
    CODE("Code", "code"),
    NAME("Name", "name"),
    NECK_LENGTH("Neck length", "neckLength"),
    NUT_WIDTH("Width at the nut", "nutWidth"),
    HEEL_WIDTH("Width at the heel", "heelWidth"),
    NECK_THICKNESS("Neck thickness", "neckThickness"),
    HEAD_LENGTH("Head length", "headLength"),
    HEAD_WIDTH("Head width", "headWidth"),
    HEAD_THICKNESS("Head thickness", "headThickness"),
    ANGLE("Angle", "angle"),
    ARRANGEMENTS("Arrangements", "arrangements"),
    FINISH("Finish", "finish"),
    NECK_WOODS("Neck woods", "neckWoods"),
    HEAD_WOODS("Head woods", "headWoods"),
    MATCH("Match", "match"),
    LINES_MEET("Lines meet", "linesMeet"),
    WINGS("Wings", "wings"),
    END_ALLOWANCE("End allowance", "endAllowance"),
    SIDE_ALLOWANCE("Side allowance", "sideAllowance");

    private final String label;
    private final String form;

    DesignField(String label, String form) {
        this.label = label;
        this.form = form;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String form() {
        return form;
    }

    @Override
    public String json() {
        return switch (this) {
            case ANGLE -> "angles";
            case WINGS -> "wingsAllowed";
            default -> isLength() ? form + "Mm" : form;
        };
    }

    @Override
    public String column() {
        return name().toLowerCase(Locale.ROOT);
    }

    @Override
    public boolean isLength() {
        return switch (this) {
            case NECK_LENGTH,
                    NUT_WIDTH,
                    HEEL_WIDTH,
                    NECK_THICKNESS,
                    HEAD_LENGTH,
                    HEAD_WIDTH,
                    HEAD_THICKNESS,
                    END_ALLOWANCE,
                    SIDE_ALLOWANCE -> true;
            default -> false;
        };
    }
}
