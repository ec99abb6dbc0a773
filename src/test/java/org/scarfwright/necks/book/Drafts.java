package org.scarfwright.necks.book;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.wood.Species;

/** Drafts that are right, to put one thing wrong in. */
public final class Drafts {
    static final List<Species> WOODS = List.of(
            wood("maple_sugar", "Hard maple (sugar)", "Acer saccharum"),
            wood("walnut_black", "Black walnut", "Juglans nigra"),
            wood("cherry_black", "Black cherry", "Prunus serotina"),
            wood("sapele", "Sapele", "Entandrophragma cylindricum"));

    private Drafts() {}

    public static Draft design() {
        Map<Field, String> texts = new HashMap<>();
        texts.put(DesignField.CODE, "WITHY-6");
        texts.put(DesignField.NAME, "Withy six-string");
        texts.put(DesignField.NECK_LENGTH, "457");
        texts.put(DesignField.NUT_WIDTH, "43");
        texts.put(DesignField.HEEL_WIDTH, "57");
        texts.put(DesignField.NECK_THICKNESS, "20");
        texts.put(DesignField.HEAD_LENGTH, "180");
        texts.put(DesignField.HEAD_WIDTH, "76");
        texts.put(DesignField.HEAD_THICKNESS, "15");
        texts.put(DesignField.ANGLE, "10 13");
        texts.put(DesignField.ARRANGEMENTS, "both");
        texts.put(DesignField.FINISH, "opaque");
        return new Draft(texts, LengthUnit.MM);
    }

    public static Draft order() {
        Map<Field, String> texts = new HashMap<>();
        texts.put(OrderField.CODE, "A-101");
        texts.put(OrderField.DESIGN, "WITHY-6");
        texts.put(OrderField.QUANTITY, "2");
        texts.put(OrderField.DUE, "2026-12-04");
        return new Draft(texts, LengthUnit.MM);
    }

    private static Species wood(String id, String name, String botanical) {
        return new Species(id, name, botanical, null, null, null, null, null, null, null, null, null, "", "", "");
    }
}
