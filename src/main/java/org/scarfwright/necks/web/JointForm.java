package org.scarfwright.necks.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.QueryText;

/** The figures of the joint calculator as they stand in an address: raw text in, a {@link JointInput} or every reason out. */
final class JointForm {
    static final String ARRANGEMENT = "arrangement";
    static final String ANGLE = "angle";

    /** The page's word for: underlaid or overlaid, whichever the wood on the rack suits. */
    static final String EITHER = "either";

    /** What a length may be, and what it is called. */
    enum Field {
        NECK_THICKNESS("neckThickness", "Neck thickness", "20", 300),
        HEAD_THICKNESS("headThickness", "Head thickness", "15", 300),
        NECK_LENGTH("neckLength", "Neck length", "457", 6000),
        HEAD_LENGTH("headLength", "Head length", "180", 6000),
        NECK_WIDTH("neckWidth", "Neck width", "60", 1200),
        HEAD_WIDTH("headWidth", "Head width", "78", 1200);

        private final String key;
        private final String label;
        private final String example;
        private final long mostMm;

        Field(String key, String label, String example, long mostMm) {
            this.key = key;
            this.label = label;
            this.example = example;
            this.mostMm = mostMm;
        }

        String key() {
            return key;
        }

        String example() {
            return example;
        }

        private Length parse(String text, LengthUnit unit) {
            Length length = LengthParser.parse(text, unit);
            if (!length.isPositive()) {
                throw new MeasureFormatException(
                        "is " + text.strip() + "; it must be above 0, for example " + example + " mm");
            }
            if (length.isLongerThan(Length.ofMm(mostMm))) {
                throw new MeasureFormatException("is " + text.strip() + ", more than the " + mostMm
                        + " mm a piece may have; write for example " + example + " mm");
            }
            return length;
        }
    }

    private JointForm() {}

    /** The worked example, each with its unit so that a link means the same in every shop. */
    static Map<String, String> example() {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(ANGLE, "10");
        for (Field field : Field.values()) {
            texts.put(field.key, field.example + " mm");
        }
        return texts;
    }

    /** As {@link #arrangement}, and {@link #EITHER} for both: what a design made of this joint will allow. */
    static List<Arrangement> arrangements(QueryText query) {
        if (query.typed(ARRANGEMENT).isBlank()
                || query.typed(ARRANGEMENT).strip().equals(EITHER)) {
            return List.of(Arrangement.values());
        }
        Arrangement one = arrangement(query);
        return one == null ? List.of(Arrangement.values()) : List.of(one);
    }

    static @Nullable Arrangement arrangement(QueryText query) {
        return query.read(ARRANGEMENT, "Arrangement", "underlaid", text -> {
            for (Arrangement a : Arrangement.values()) {
                if (a.word().equals(text.strip())) {
                    return a;
                }
            }
            String shown = text.length() <= 40 ? text : text.substring(0, 40) + "…";
            throw new MeasureFormatException("“" + shown + "” is not an arrangement; write underlaid or overlaid");
        });
    }

    /**
     * Reads every figure.
     *
     * @param unit of a bare number
     * @return null when any was refused; the reasons are then the query's errors
     */
    static @Nullable JointInput read(QueryText query, Arrangement arrangement, LengthUnit unit) {
        Angle angle = query.read(ANGLE, "Angle", "10", JointForm::angle);
        Length neckThickness = length(query, Field.NECK_THICKNESS, unit);
        Length headThickness = length(query, Field.HEAD_THICKNESS, unit);
        Length neckLength = length(query, Field.NECK_LENGTH, unit);
        Length headLength = length(query, Field.HEAD_LENGTH, unit);
        Length neckWidth = length(query, Field.NECK_WIDTH, unit);
        Length headWidth = length(query, Field.HEAD_WIDTH, unit);
        if (angle == null
                || neckThickness == null
                || headThickness == null
                || neckLength == null
                || headLength == null
                || neckWidth == null
                || headWidth == null) {
            return null;
        }
        return new JointInput(
                arrangement, angle, neckThickness, headThickness, neckLength, headLength, neckWidth, headWidth);
    }

    /** Adds why a joint cannot be to the query's errors, each at its field. */
    static void refuse(QueryText query, List<JointRefusal> refusals) {
        for (JointRefusal refusal : refusals) {
            query.refuse(refusal.field(), label(refusal.field()), refusal.reason());
        }
    }

    /** What the field of a {@link JointRefusal} is called on the page. */
    static String label(String key) {
        for (Field field : Field.values()) {
            if (field.key.equals(key)) {
                return field.label;
            }
        }
        return "Angle";
    }

    private static Angle angle(String text) {
        Angle angle = Angle.parse(text);
        if (angle.millidegrees() <= 0 || angle.millidegrees() >= 90_000) {
            throw new MeasureFormatException(
                    "is " + angle + ", but a tilt angle lies between 0° and 90°; usual are 7° to 17°, for example 10");
        }
        return angle;
    }

    private static @Nullable Length length(QueryText query, Field field, LengthUnit unit) {
        return query.read(field.key, field.label, field.example, text -> field.parse(text, unit));
    }
}
