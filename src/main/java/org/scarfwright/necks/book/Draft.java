package org.scarfwright.necks.book;

import java.util.LinkedHashMap;
import java.util.Map;
import org.scarfwright.measure.LengthUnit;

/**
 * What somebody wrote, as written, before anything is known about it.
 *
 * @param texts by field; a field that is missing was not given
 * @param unit what a bare number means in a length
 */
public record Draft(Map<Field, String> texts, LengthUnit unit) {
    public Draft {
        texts = Map.copyOf(texts);
    }

    /** Empty when it was not given. */
    public String text(Field field) {
        return texts.getOrDefault(field, "");
    }

    /** The same with one text replaced. */
    public Draft with(Field field, String text) {
        Map<Field, String> changed = new LinkedHashMap<>(texts);
        changed.put(field, text);
        return new Draft(changed, unit);
    }

    /** By the names of the form's fields: what a page fills its form with. */
    public Map<String, String> form() {
        Map<String, String> form = new LinkedHashMap<>();
        texts.forEach((field, text) -> form.put(field.form(), text));
        return form;
    }
}
