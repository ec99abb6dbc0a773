package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.QueryText;
import tools.jackson.databind.JsonNode;

/** A flat JSON object as the texts a form would send. */
final class FlatJson {
    private static final double LARGEST = 1e12;

    private FlatJson() {}

    /**
     * @param keys what may be given; null is the same as left out
     * @param answers keys only answers carry; they are passed over, so that what was read can be sent back
     * @throws InvalidInputException naming every key that is unknown or holds something else than a value
     */
    static QueryText read(JsonNode body, List<String> keys, Set<String> answers) {
        if (!body.isObject()) {
            throw new InvalidInputException(new FieldError(
                    "", "The body", body.toString(), "is not a JSON object with the keys " + String.join(", ", keys)));
        }
        List<FieldError> faults = new ArrayList<>();
        Map<String, String[]> texts = new LinkedHashMap<>();
        for (String key : body.propertyNames()) {
            JsonNode value = body.get(key);
            if (answers.contains(key) || value.isNull()) {
                continue;
            }
            if (!keys.contains(key)) {
                faults.add(new FieldError(
                        "/" + key, key, "", "is not known here; the keys are " + String.join(", ", keys)));
            } else if (value.isNumber() || value.isString()) {
                texts.put(key, new String[] {value.isNumber() ? number(value) : value.stringValue()});
            } else {
                faults.add(new FieldError("/" + key, key, value.toString(), "is neither a number nor a text"));
            }
        }
        if (!faults.isEmpty()) {
            throw new InvalidInputException(faults);
        }
        return new QueryText(texts);
    }

    /** A huge exponent is left as it was written: written out it would take all memory, and it is refused anyway. */
    private static String number(JsonNode value) {
        double size = Math.abs(value.doubleValue());
        boolean plain = size == 0 || (size < LARGEST && size > 1 / LARGEST);
        return plain ? value.decimalValue().toPlainString() : value.toString();
    }
}
