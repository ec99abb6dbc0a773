package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.rack.CellError;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NearWords;
import tools.jackson.databind.JsonNode;

/**
 * A piece as a request sends it, turned into the cells a person would have written, with the way back from a cell to the key
 * it came from.
 */
final class PieceInput {
    private static final String MM = "Mm";
    private static final double LARGEST = 1e12;

    private static final Set<PieceField> LENGTHS = Set.of(
            PieceField.LENGTH,
            PieceField.WIDTH,
            PieceField.THICKNESS,
            PieceField.BOW,
            PieceField.CROOK,
            PieceField.CUP,
            PieceField.TWIST,
            PieceField.MIDDLE_BOW,
            PieceField.MIDDLE_CROOK,
            PieceField.MIDDLE_TWIST,
            PieceField.STICK_GAP,
            PieceField.STICK_LENGTH,
            PieceField.STICK_DISTANCE,
            PieceField.MIDDLE_STICK_GAP,
            PieceField.TRIM_LEFT,
            PieceField.TRIM_RIGHT);

    /** Keys only answers carry; they are passed over, so that what was read can be sent back. */
    private static final Set<String> ANSWERS = Set.of("version", "state", "since", "volumeMm3", "zones");

    private final PieceCells cells = new PieceCells();
    private final Map<PieceField, String> keys = new EnumMap<>(PieceField.class);
    private final Set<PieceField> lists = EnumSet.noneOf(PieceField.class);
    private final List<FieldError> faults = new ArrayList<>();

    private PieceInput() {}

    PieceCells cells() {
        return cells;
    }

    /** What was found wrong in a cell, at the key it came from. */
    List<FieldError> errors(List<CellError> errors) {
        return errors.stream()
                .map(e -> {
                    String key = keys.getOrDefault(e.field(), usualKey(e.field()));
                    String item = e.item() >= 0 && lists.contains(e.field()) ? "/" + e.item() : "";
                    return new FieldError("/" + key + item, e.field().label(), e.value(), e.message());
                })
                .toList();
    }

    /**
     * Lets only a body pass whose every key is known and holds a value.
     *
     * @param others what is wrong with the cells that could be read, so that everything is told at once
     * @throws InvalidInputException with everything that is wrong
     */
    void requireReadable(Supplier<List<CellError>> others) {
        if (faults.isEmpty()) {
            return;
        }
        List<FieldError> all = new ArrayList<>(faults);
        errors(others.get()).stream().filter(this::isToldBesideFaults).forEach(all::add);
        throw new InvalidInputException(all);
    }

    /** What is missing or does not add up because its own value could not be read is no error of its own. */
    private boolean isToldBesideFaults(FieldError error) {
        return faults.stream().noneMatch(f -> {
            boolean below = f.pointer().equals(error.pointer()) || f.pointer().startsWith(error.pointer() + "/");
            boolean missing = error.value().isEmpty() && f.label().equals(error.label());
            return below || missing;
        });
    }

    /** @throws InvalidInputException when it is no object; everything else is told by {@link #requireReadable} */
    static PieceInput read(JsonNode body) {
        return read(body, EnumSet.allOf(PieceField.class));
    }

    /** The same for a body that may say only some of it. */
    static PieceInput read(JsonNode body, Set<PieceField> fields) {
        if (!body.isObject()) {
            throw new InvalidInputException(
                    new FieldError("", "The body", body.toString(), "is not a JSON object that describes a piece"));
        }
        PieceInput input = new PieceInput();
        Map<String, PieceField> known = knownKeys();
        known.values().retainAll(fields);
        for (String key : body.propertyNames()) {
            if (!known.containsKey(key) && !ANSWERS.contains(key)) {
                input.faults.add(unknown(key, known.keySet()));
            }
        }
        for (PieceField field : fields) {
            input.take(field, body);
        }
        return input;
    }

    private void take(PieceField field, JsonNode body) {
        String key = json(field);
        if (field == PieceField.LAMINATION || field == PieceField.DEFECTS) {
            takeList(field, key, body.get(key));
            return;
        }
        if (!LENGTHS.contains(field)) {
            put(field, key, body.get(key), false);
            return;
        }
        put(field, key, body.get(key), true);
        String written = cells.get(field);
        put(field, key + MM, body.get(key + MM), true);
        if (!written.isEmpty() && !written.equals(cells.get(field)) && agree(written, cells.get(field))) {
            cells.put(field, written); // the text says the same, and says it as it was written
        } else if (!written.isEmpty() && !written.equals(cells.get(field))) {
            faults.add(new FieldError(
                    "/" + key + MM,
                    field.label(),
                    cells.get(field),
                    "is “" + cells.get(field) + "” here and “" + written + "” in " + key + "; send one of the two"));
        }
    }

    private boolean agree(String one, String other) {
        try {
            LengthUnit unit = LengthUnit.MM;
            return LengthParser.parse(one, unit).equals(LengthParser.parse(other, unit));
        } catch (MeasureFormatException e) {
            return false; // what is wrong with them is said where they are read
        }
    }

    private void put(PieceField field, String key, @Nullable JsonNode value, boolean mm) {
        if (value == null || value.isNull()) {
            return;
        }
        String text = text(value, mm);
        if (text == null) {
            faults.add(new FieldError(
                    "/" + key,
                    field.label(),
                    value.toString(),
                    "has a value of the wrong kind; send a number or a text"));
            return;
        }
        cells.put(field, text);
        keys.put(field, key);
    }

    private void takeList(PieceField field, String key, @Nullable JsonNode value) {
        if (value == null || !value.isArray()) {
            put(field, key, value, false);
            return;
        }
        List<String> items = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            String item = field == PieceField.LAMINATION ? strip(value.get(i)) : flaw(value.get(i));
            if (item == null || item.contains("|") || item.contains(";") || item.contains("\n")) {
                items.add(""); // keeps the place, so that what is wrong with the next one names the right one
                faults.add(new FieldError(
                        "/" + key + "/" + i,
                        field.label(),
                        value.get(i).toString(),
                        field == PieceField.LAMINATION
                                ? "has a strip that cannot be read; send for example"
                                        + " {\"wood\": \"walnut_black\", \"widthMm\": 5}"
                                : "has a defect that cannot be read; send for example"
                                        + " {\"kind\": \"knot\", \"fromLengthMm\": 120, \"toLengthMm\": 160}"));
            } else {
                items.add(item);
            }
        }
        cells.put(field, String.join(field == PieceField.LAMINATION ? " | " : "; ", items));
        keys.put(field, key);
        lists.add(field);
    }

    private static @Nullable String strip(JsonNode node) {
        String wood = member(node, "wood", false);
        String width = member(node, "widthMm", true);
        String grain = member(node, "grain", false);
        return wood == null || width == null ? null : (wood + " " + width + " " + (grain == null ? "" : grain)).strip();
    }

    private static @Nullable String flaw(JsonNode node) {
        String kind = member(node, "kind", false);
        String from = member(node, "fromLengthMm", true);
        String to = member(node, "toLengthMm", true);
        if (kind == null || from == null || to == null) {
            return null;
        }
        String near = member(node, "fromWidthMm", true);
        String far = member(node, "toWidthMm", true);
        if ((near == null) != (far == null)) {
            return null;
        }
        JsonNode structural = node.get("structural");
        boolean said = structural != null && !structural.isNull();
        if (said && !structural.isBoolean()) {
            return null;
        }
        return kind + " " + from + " to " + to + (near == null ? "" : " x " + near + " to " + far)
                + (said ? (structural.booleanValue() ? " structural" : " looks") : "");
    }

    private static @Nullable String member(JsonNode node, String key, boolean mm) {
        JsonNode value = node.isObject() ? node.get(key) : null;
        return value == null || value.isNull() || value.isBoolean() ? null : text(value, mm);
    }

    /** Null when the value has no text. */
    private static @Nullable String text(JsonNode value, boolean mm) {
        if (value.isString()) {
            return value.stringValue();
        }
        if (value.isBoolean()) {
            return mm ? null : value.booleanValue() ? "yes" : "no";
        }
        if (!value.isNumber()) {
            return null;
        }
        double size = Math.abs(value.doubleValue());
        if (!Double.isFinite(size) || size >= LARGEST || (size != 0 && size < 1 / LARGEST)) {
            return String.valueOf(
                    value.doubleValue()); // refused where it is read; written out it could fill the memory
        }
        BigDecimal number = value.decimalValue();
        return (number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString()) + (mm ? " mm" : "");
    }

    private static FieldError unknown(String key, Set<String> known) {
        List<String> near = NearWords.of(key, known, 1);
        String escaped = key.replace("~", "~0").replace("/", "~1");
        return new FieldError(
                "/" + escaped,
                "Key",
                key,
                "“" + (key.length() > 40 ? key.substring(0, 40) + "…" : key) + "” is not known here; "
                        + (near.isEmpty()
                                ? "the keys are " + String.join(", ", known)
                                : "did you mean " + near.get(0) + "?"));
    }

    private static Map<String, PieceField> knownKeys() {
        Map<String, PieceField> known = new LinkedHashMap<>();
        for (PieceField field : PieceField.values()) {
            known.put(usualKey(field), field);
        }
        LENGTHS.forEach(f -> known.put(json(f), f));
        return known;
    }

    private static String usualKey(PieceField field) {
        return LENGTHS.contains(field) ? json(field) + MM : json(field);
    }

    /** grain_slope becomes grainSlope. */
    private static String json(PieceField field) {
        StringBuilder key = new StringBuilder();
        for (String word : field.column().split("_", -1)) {
            key.append(key.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
        }
        return key.toString();
    }
}
