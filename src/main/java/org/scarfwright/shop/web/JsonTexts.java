package org.scarfwright.shop.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import tools.jackson.databind.JsonNode;

/** A flat JSON object as the texts a form would send: a number or a string for every key, no key too many, and none too few but such as may be left out. */
final class JsonTexts {
    static final String LENGTH_SUFFIX = "Mm";

    private static final double LARGEST = 1e12;

    private final Map<String, String> texts;

    private JsonTexts(Map<String, String> texts) {
        this.texts = texts;
    }

    /** @throws InvalidInputException naming every key that is missing, unknown or holds something else than a value */
    static JsonTexts read(JsonNode body, List<String> keys) {
        return read(body, keys, List.of());
    }

    /**
     * @param optional those of the keys that may be left out; their text is then empty
     * @throws InvalidInputException naming every key that is missing, unknown or holds something else than a value
     */
    static JsonTexts read(JsonNode body, List<String> keys, List<String> optional) {
        List<FieldError> errors = new ArrayList<>();
        if (!body.isObject()) {
            throw new InvalidInputException(new FieldError(
                    "", "The body", body.toString(), "is not a JSON object with the keys " + list(keys)));
        }
        for (String key : body.propertyNames()) {
            if (!keys.contains(key)) {
                errors.add(new FieldError("/" + key, key, "", "is not known here; the keys are " + list(keys)));
            }
        }
        Map<String, String> texts = new LinkedHashMap<>();
        for (String key : keys) {
            JsonNode value = body.get(key);
            if (value == null || value.isNull()) {
                if (optional.contains(key)) {
                    continue;
                }
                errors.add(new FieldError("/" + key, key, "", "is missing"));
            } else if (value.isNumber()) {
                texts.put(key, number(value));
            } else if (value.isString()) {
                texts.put(key, value.stringValue());
            } else {
                errors.add(new FieldError("/" + key, key, value.toString(), "is neither a number nor a text"));
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return new JsonTexts(texts);
    }

    /** A huge exponent is left as it was written: written out it would take all memory, and it is refused anyway. */
    private static String number(JsonNode value) {
        double size = Math.abs(value.doubleValue());
        boolean plain = size == 0 || (size < LARGEST && size > 1 / LARGEST);
        return plain ? value.decimalValue().toPlainString() : value.toString();
    }

    String text(String key) {
        return texts.getOrDefault(key, "");
    }

    String length(String name) {
        return text(name + LENGTH_SUFFIX);
    }

    private static String list(List<String> keys) {
        return String.join(", ", keys);
    }
}
