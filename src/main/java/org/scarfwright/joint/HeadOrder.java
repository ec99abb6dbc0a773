package org.scarfwright.joint;

import java.util.Locale;

/** When, and from which face, a head piece is brought from its stock to the thickness it ends with. */
public enum HeadOrder {
    /** Thinned to its last thickness, then bevelled and glued. */
    PLANED_FIRST("planed before the bevel is cut"),
    BACK_BEFORE_GLUING("from its back, after the bevel and before gluing"),
    FRONT_BEFORE_GLUING("from its front, after the bevel and before gluing"),
    BACK_AFTER_GLUING("from its back, after gluing"),
    FRONT_AFTER_GLUING("from its front, after gluing");

    private final String words;

    HeadOrder(String words) {
        this.words = words;
    }

    /** Reads on from: the head piece is thinned. */
    public String words() {
        return words;
    }

    /** As written in the API: back-after-gluing. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    boolean fromFront() {
        return this == FRONT_BEFORE_GLUING || this == FRONT_AFTER_GLUING;
    }

    boolean afterGluing() {
        return this == BACK_AFTER_GLUING || this == FRONT_AFTER_GLUING;
    }
}
