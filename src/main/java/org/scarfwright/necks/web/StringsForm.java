package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.NutSection;
import org.scarfwright.joint.Pitch;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Species;

/** A set of strings as it stands in an address: raw text in, the set or every reason out. */
final class StringsForm {
    static final String STRINGS = "strings";
    static final String WOOD = "stringsWood";

    private static final String COMPARED = "maple_sugar";
    private static final int RIGHT_ANGLE = 90_000;
    private static final int MOST_STRINGS = 24;
    private static final BigDecimal LIGHTEST = new BigDecimal("0.01");
    private static final BigDecimal HEAVIEST = new BigDecimal("200");
    private static final Pattern LINE = Pattern.compile("(.+?)\\s+(\\d{1,4}(?:[.,]\\d{1,6})?)\\s*(?:g/m)?");

    /** What a length may be, what it is called, and what it is when an address does not name it. */
    enum Field {
        SCALE("scale", "Scale length", "648", 100, 2000),
        NUT_HEIGHT("nutHeight", "String above the neck’s top at the nut", "7", 0, 40),
        POST_HEIGHT("postHeight", "Winding above the head’s face", "10", 0, 60),
        POST_DISTANCE("postDistance", "Post from the nut", "60", 5, 500),
        SECTION_WIDTH("sectionWidth", "Width at the nut", "45", 5, 300),
        SECTION_THICKNESS("sectionThickness", "Thickness at the nut", "16", 3, 100);

        private final String key;
        private final String label;
        private final String example;
        private final long leastMm;
        private final long mostMm;

        Field(String key, String label, String example, long leastMm, long mostMm) {
            this.key = key;
            this.label = label;
            this.example = example;
            this.leastMm = leastMm;
            this.mostMm = mostMm;
        }

        String key() {
            return key;
        }

        private Length parse(String text, LengthUnit unit) {
            Length length = LengthParser.parse(text, unit);
            if (length.isShorterThan(Length.ofMm(leastMm)) || length.isLongerThan(Length.ofMm(mostMm))) {
                throw new MeasureFormatException("is " + text.strip() + "; it lies between " + leastMm + " and "
                        + mostMm + " mm, for example " + example + " mm");
            }
            return length;
        }
    }

    /** One string of the set. */
    record Strand(Pitch pitch, BigDecimal gramsPerMetre) {}

    /** @param wood of a one-piece head to compare with; null when none was chosen */
    record StringSet(
            List<Strand> strands,
            Length scale,
            Length nutHeight,
            Length postHeight,
            Length postDistance,
            NutSection section,
            @Nullable Species wood) {}

    private StringsForm() {}

    /** What stands in the form when an address names nothing. */
    static Map<String, String> example() {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(STRINGS, "");
        for (Field field : Field.values()) {
            texts.put(field.key, field.example + " mm");
        }
        texts.put(WOOD, COMPARED);
        return texts;
    }

    /** The texts as typed, with the example's where an address names none. */
    static Map<String, String> typed(QueryText query) {
        Map<String, String> texts = example();
        texts.replaceAll((key, otherwise) -> query.has(key) ? query.typed(key) : otherwise);
        return texts;
    }

    /** Whether any string was asked about. */
    static boolean asked(QueryText query) {
        return !query.typed(STRINGS).isBlank();
    }

    /** The tilt by itself, for a question that is about nothing else of the joint. */
    static @Nullable Angle tilt(QueryText query) {
        return query.read(JointForm.ANGLE, "Angle", "10", text -> {
            Angle angle = Angle.parse(text);
            if (angle.millidegrees() <= 0 || angle.millidegrees() >= RIGHT_ANGLE) {
                throw new MeasureFormatException(
                        "is " + angle + ", but a tilt lies between 0° and 90°; usual are 7° to 17°, for example 10");
            }
            return angle;
        });
    }

    /**
     * @param unit of a bare number
     * @return null when no string was given or anything was refused; the reasons are then the query's errors
     */
    static @Nullable StringSet read(QueryText query, List<Species> woods, LengthUnit unit) {
        if (!asked(query)) {
            return null;
        }
        List<Strand> strands = query.read(STRINGS, "Strings", "E4 0.309", StringsForm::strands);
        Length scale = length(query, Field.SCALE, unit);
        Length nutHeight = length(query, Field.NUT_HEIGHT, unit);
        Length postHeight = length(query, Field.POST_HEIGHT, unit);
        Length postDistance = length(query, Field.POST_DISTANCE, unit);
        Length width = length(query, Field.SECTION_WIDTH, unit);
        Length thickness = length(query, Field.SECTION_THICKNESS, unit);
        String id = woodId(query);
        Optional<Species> wood = wood(query, woods);
        boolean unknown = wood.isEmpty() && !id.isEmpty();
        if (unknown) {
            query.refuse(
                    WOOD,
                    "Wood to compare",
                    "“" + cut(id) + "” is no wood the shop knows; write for example maple_sugar");
        }
        if (strands == null
                || scale == null
                || nutHeight == null
                || postHeight == null
                || postDistance == null
                || width == null
                || thickness == null
                || unknown) {
            return null;
        }
        return new StringSet(
                strands,
                scale,
                nutHeight,
                postHeight,
                postDistance,
                new NutSection(width, thickness),
                wood.orElse(null));
    }

    /** The wood that was chosen; empty for none and for one the shop does not know. */
    static Optional<Species> wood(QueryText query, List<Species> woods) {
        String id = woodId(query);
        return woods.stream().filter(w -> w.id().equals(id)).findFirst();
    }

    private static String woodId(QueryText query) {
        return query.has(WOOD) ? query.typed(WOOD).strip() : COMPARED;
    }

    private static @Nullable Length length(QueryText query, Field field, LengthUnit unit) {
        return query.has(field.key)
                ? query.read(field.key, field.label, field.example, text -> field.parse(text, unit))
                : field.parse(field.example, LengthUnit.MM);
    }

    private static List<Strand> strands(String text) {
        List<Strand> strands = new ArrayList<>();
        for (String line : text.split("[\\n\\r;]+", -1)) {
            if (!line.isBlank()) {
                if (strands.size() == MOST_STRINGS) {
                    throw new MeasureFormatException(
                            "are more than " + MOST_STRINGS + "; write " + MOST_STRINGS + " at most");
                }
                strands.add(strand(line.strip(), strands.size() + 1));
            }
        }
        if (strands.isEmpty()) {
            throw new MeasureFormatException("name no string; write one a line, for example E4 0.309");
        }
        return List.copyOf(strands);
    }

    private static Strand strand(String line, int number) {
        Matcher parts = LINE.matcher(line.length() > 100 ? "" : line);
        if (!parts.matches()) {
            throw new MeasureFormatException("have “" + cut(line) + "” as string " + number
                    + "; write its pitch and its mass in grams per metre, for example E4 0.309");
        }
        BigDecimal mass = new BigDecimal(parts.group(2).replace(',', '.'));
        if (mass.compareTo(LIGHTEST) < 0 || mass.compareTo(HEAVIEST) > 0) {
            throw new MeasureFormatException("have " + mass.toPlainString() + " g/m as mass of string " + number
                    + "; it lies between 0.01 and 200, for example 0.309");
        }
        try {
            return new Strand(Pitch.parse(parts.group(1)), mass);
        } catch (MeasureFormatException e) {
            throw new MeasureFormatException("have a wrong pitch as string " + number + ": " + e.getMessage());
        }
    }

    private static String cut(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }
}
