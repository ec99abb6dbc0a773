package org.scarfwright.necks.web;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.HeelNeed;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.TunerHoles;
import org.scarfwright.joint.VoluteNeed;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.QueryText;

/**
 * What may be asked beside the joint itself. Every one may be left out.
 *
 * @param headStock thickness of the head's stock before it is thinned; the head's own thickness when left out
 * @param kerf zero when left out
 */
record JointExtras(
        Length headStock,
        Length kerf,
        TunerHoles tuners,
        @Nullable VoluteNeed volute,
        @Nullable HeelNeed heel) {
    static final String TUNERS = "tuners";
    private static final int MOST_HOLES = 24;

    private static final Pattern BETWEEN_HOLES = Pattern.compile("[;\\n]|,\\s+");
    private static final Length HEEL_EXAMPLE = Length.ofMm(100);

    /** What a figure is called, what would be right and what it may be at most. */
    enum Field {
        HEAD_STOCK("headStock", "Head stock", "20 mm", 300),
        KERF("kerf", "Kerf", "1 mm", 10),
        VOLUTE("volute", "Volute", "8 mm", 100),
        HEEL_DEPTH("heelDepth", "Heel depth", "95 mm", 300),
        HEEL_LENGTH("heelLength", "Heel length", "100 mm", 1000);

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

        String label() {
            return label;
        }
    }

    /** Names of everything that may be asked. */
    static List<String> keys() {
        return Stream.concat(Stream.of(Field.values()).map(Field::key), Stream.of(TUNERS))
                .toList();
    }

    /**
     * Reads what is there; what is wrong is added to the query's errors.
     *
     * @param input the joint; null when that could not be read
     */
    static JointExtras read(QueryText query, @Nullable JointInput input, LengthUnit unit) {
        Length stock = optional(query, Field.HEAD_STOCK, unit);
        Length kerf = optional(query, Field.KERF, unit);
        Length volute = optional(query, Field.VOLUTE, unit);
        Length depth = optional(query, Field.HEEL_DEPTH, unit);
        Length length = optional(query, Field.HEEL_LENGTH, unit);
        TunerHoles holes = new TunerHoles(holes(query, unit));
        if (input == null) {
            return new JointExtras(Length.ZERO, Length.ZERO, holes, null, null);
        }
        Length head = input.headThickness();
        if (stock != null && stock.isShorterThan(head)) {
            query.refuse(
                    Field.HEAD_STOCK.key,
                    Field.HEAD_STOCK.label,
                    "is " + query.typed(Field.HEAD_STOCK.key).strip() + ", thinner than the head it becomes, " + head
                            + "; write at least " + head + ", or leave it empty");
        }
        for (Length off : holes.offTheHead(input.headLength())) {
            query.refuse(
                    TUNERS,
                    "Tuner holes",
                    "name " + off + ", which is not on the head; a centre lies between the nut and the tip, "
                            + input.headLength() + " from it");
        }
        return new JointExtras(
                stock == null ? head : stock,
                kerf == null ? Length.ZERO : kerf,
                holes,
                volute == null ? null : new VoluteNeed(volute),
                depth == null
                        ? null
                        : new HeelNeed(
                                depth,
                                length == null ? HEEL_EXAMPLE : length,
                                input.neckThickness(),
                                input.neckThickness()));
    }

    private static @Nullable Length optional(QueryText query, Field field, LengthUnit unit) {
        if (query.typed(field.key).isBlank()) {
            return null;
        }
        return query.read(field.key, field.label, field.example, text -> {
            Length length = LengthParser.parse(text, unit);
            if (!length.isPositive() || length.isLongerThan(Length.ofMm(field.mostMm))) {
                throw new MeasureFormatException("is " + text.strip() + "; it lies above 0 and up to " + field.mostMm
                        + " mm" + ", for example " + field.example + ", or is left empty");
            }
            return length;
        });
    }

    private static List<Length> holes(QueryText query, LengthUnit unit) {
        if (query.typed(TUNERS).isBlank()) {
            return List.of();
        }
        List<Length> read = query.read(TUNERS, "Tuner holes", "30,62,95", text -> {
            String[] parts = text.strip().split(between(text), -1);
            if (parts.length > MOST_HOLES) {
                throw new MeasureFormatException("are " + parts.length + "; write at most " + MOST_HOLES
                        + " with commas between, for example 30, 62, 95");
            }
            List<Length> found = new ArrayList<>();
            for (String part : parts) {
                found.add(hole(part, unit));
            }
            return found;
        });
        return read == null ? List.of() : read;
    }

    /** A comma with a blank after it parts two holes. Without a blank one comma is a decimal comma, and several part them. */
    private static String between(String text) {
        if (BETWEEN_HOLES.matcher(text).find()) {
            return BETWEEN_HOLES.pattern();
        }
        return text.indexOf(',') == text.lastIndexOf(',') ? ";" : ",";
    }

    private static Length hole(String part, LengthUnit unit) {
        try {
            return LengthParser.parse(part, unit);
        } catch (MeasureFormatException e) {
            throw new MeasureFormatException(
                    "are distances from the nut with commas between, for example 30, 62, 95: one " + e.getMessage());
        }
    }
}
