package org.scarfwright.necks.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.Field;
import org.scarfwright.necks.book.NeckFiles;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NearWords;
import tools.jackson.databind.JsonNode;

/**
 * Drafts from JSON, one object or an array of them. A value may be a number, a text as people write it, true or false, or an
 * array of those; what a text means is decided where drafts are read.
 */
final class DraftJson {
    private static final double LARGEST = 1e12;

    private final List<? extends Field> fields;
    private final Set<String> answers;

    /**
     * @param fields the keys that are read
     * @param answers keys that only answers carry; they are passed over, so that what was read can be sent back changed
     */
    DraftJson(List<? extends Field> fields, Set<String> answers) {
        this.fields = fields;
        this.answers = answers;
    }

    /** @throws InvalidInputException when it is neither an object nor an array with at least one element */
    List<Entry> entries(JsonNode body) {
        if (body.isObject()) {
            return List.of(entry(body, ""));
        }
        if (!body.isArray() || body.isEmpty()) {
            throw new InvalidInputException(new FieldError(
                    "",
                    "The body",
                    body.toString(),
                    "is not what is expected; send one JSON object or an array of them"));
        }
        int most = NeckFiles.LIMITS.rows();
        if (body.size() > most) {
            throw new InvalidInputException(new FieldError(
                    "",
                    "The body",
                    body.size() + " elements",
                    "has more than " + most + " elements; send fewer at once"));
        }
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < body.size(); i++) {
            entries.add(entry(body.get(i), "/" + i));
        }
        return entries;
    }

    /** @throws InvalidInputException when it is not one object */
    Entry single(JsonNode body) {
        if (!body.isObject()) {
            throw new InvalidInputException(
                    new FieldError("", "The body", body.toString(), "is not what is expected; send one JSON object"));
        }
        return entry(body, "");
    }

    private Entry entry(JsonNode node, String parent) {
        Map<Field, String> texts = new HashMap<>();
        List<FieldError> faults = new ArrayList<>();
        if (!node.isObject()) {
            faults.add(
                    new FieldError(parent, "Element " + parent.substring(1), node.toString(), "is not a JSON object"));
            return Entry.ofJson(new Draft(texts, LengthUnit.MM), parent, faults);
        }
        List<String> known = fields.stream().map(Field::json).toList();
        for (String key : node.propertyNames()) {
            if (!known.contains(key) && !answers.contains(key)) {
                faults.add(unknown(key, parent, known));
            }
        }
        for (Field field : fields) {
            JsonNode value = node.get(field.json());
            if (value == null || value.isNull()) {
                continue;
            }
            String text = text(value);
            if (text == null) {
                faults.add(new FieldError(
                        parent + "/" + field.json(),
                        field.label(),
                        value.toString(),
                        "has a value of the wrong kind; send a number or a text"));
            } else {
                texts.put(field, text);
            }
        }
        return Entry.ofJson(new Draft(texts, LengthUnit.MM), parent, faults);
    }

    private static FieldError unknown(String key, String parent, List<String> known) {
        List<String> near = NearWords.of(key, known, 1);
        String escaped = key.replace("~", "~0").replace("/", "~1");
        return new FieldError(
                parent + "/" + escaped,
                "Key",
                key,
                "“" + (key.length() > 40 ? key.substring(0, 40) + "…" : key) + "” is not known here; "
                        + (near.isEmpty()
                                ? "the keys are " + String.join(", ", known)
                                : "did you mean " + near.get(0) + "?"));
    }

    /** Null when the value has no text. */
    private static @Nullable String text(JsonNode value) {
        if (value.isString()) {
            return value.stringValue();
        }
        if (value.isBoolean()) {
            return value.booleanValue() ? "yes" : "no";
        }
        if (value.isNumber()) {
            return number(value);
        }
        if (!value.isArray()) {
            return null;
        }
        List<@Nullable String> items = new ArrayList<>();
        for (JsonNode item : value) {
            items.add(item.isArray() ? null : text(item));
        }
        return items.contains(null) ? null : items.stream().collect(Collectors.joining("; "));
    }

    /** Plain digits; a number beyond any sense stays as it was sent, and is refused where it is read. */
    private static String number(JsonNode value) {
        double size = Math.abs(value.doubleValue());
        boolean plain = Double.isFinite(size) && size < LARGEST && (size == 0 || size > 1 / LARGEST);
        if (!plain) {
            return value.toString();
        }
        BigDecimal decimal = value.decimalValue();
        return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
    }
}
