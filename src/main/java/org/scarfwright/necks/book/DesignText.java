package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.NeckDesign;

/** A design written out again. */
public final class DesignText {
    private DesignText() {}

    /** As it was entered: what a form is filled with to edit it, and what a file says to enter it again. */
    public static Draft draftOf(NeckDesign design) {
        Map<Field, String> texts = new LinkedHashMap<>(words(design));
        lengths(design).forEach((field, length) -> texts.put(field, length.typed()));
        return new Draft(texts, LengthUnit.MM);
    }

    /**
     * One of its lengths.
     *
     * @throws IllegalArgumentException when the field is not a length
     */
    public static TypedLength length(NeckDesign design, DesignField field) {
        TypedLength length = lengths(design).get(field);
        if (length == null) {
            throw new IllegalArgumentException(field + " is not a length");
        }
        return length;
    }

    /** What differs between two designs, each as a phrase: "neck length is 457 mm there and 460 mm here". */
    static List<String> differences(NeckDesign there, NeckDesign here) {
        Map<DesignField, String> kept = figures(there);
        Map<DesignField, String> given = figures(here);
        List<String> found = new ArrayList<>();
        kept.forEach((field, was) -> {
            String is = Objects.requireNonNull(given.get(field));
            if (!was.equals(is)) {
                found.add(field.label().toLowerCase(Locale.ROOT) + " is " + shown(was) + " there and " + shown(is)
                        + " here");
            }
        });
        return found;
    }

    static String shown(String text) {
        return text.isEmpty() ? "empty" : text;
    }

    /** By their values: 25.4 mm and 1 in are the same. */
    private static Map<DesignField, String> figures(NeckDesign design) {
        Map<DesignField, String> figures = new EnumMap<>(words(design));
        lengths(design)
                .forEach((field, length) -> figures.put(field, length.length().toString()));
        return figures;
    }

    private static Map<DesignField, TypedLength> lengths(NeckDesign d) {
        Map<DesignField, TypedLength> lengths = new LinkedHashMap<>();
        lengths.put(DesignField.NECK_LENGTH, d.neckLength());
        lengths.put(DesignField.NUT_WIDTH, d.nutWidth());
        lengths.put(DesignField.HEEL_WIDTH, d.heelWidth());
        lengths.put(DesignField.NECK_THICKNESS, d.neckThickness());
        lengths.put(DesignField.HEAD_LENGTH, d.headLength());
        lengths.put(DesignField.HEAD_WIDTH, d.headWidth());
        lengths.put(DesignField.HEAD_THICKNESS, d.headThickness());
        lengths.put(DesignField.END_ALLOWANCE, d.endAllowance());
        lengths.put(DesignField.SIDE_ALLOWANCE, d.sideAllowance());
        return lengths;
    }

    private static Map<DesignField, String> words(NeckDesign d) {
        Map<DesignField, String> words = new LinkedHashMap<>();
        words.put(DesignField.CODE, d.code());
        words.put(DesignField.NAME, d.name());
        words.put(
                DesignField.ANGLE,
                d.angles().stream()
                        .map(Angle::toDegrees)
                        .map(a -> a.stripTrailingZeros().toPlainString())
                        .collect(Collectors.joining(" ")));
        words.put(
                DesignField.ARRANGEMENTS,
                d.arrangements().stream().map(Arrangement::word).collect(Collectors.joining(" ")));
        words.put(DesignField.FINISH, word(d.finish()));
        words.put(DesignField.NECK_WOODS, String.join(" ", d.neckWoods()));
        words.put(DesignField.HEAD_WOODS, String.join(" ", d.headWoods()));
        words.put(DesignField.MATCH, word(d.match()));
        words.put(DesignField.LINES_MEET, d.linesMeet() ? "yes" : "no");
        words.put(DesignField.WINGS, d.wingsAllowed() ? "yes" : "no");
        return words;
    }

    /** As written in files, addresses and JSON. */
    public static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
