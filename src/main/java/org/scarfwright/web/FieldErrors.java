package org.scarfwright.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What the field fragments ask about errors; {@code @fields} in a template. */
@Component("fields")
public class FieldErrors {

    /** The first sentence for each field, by the field's name: what a page puts beside its fields. */
    public static Map<String, String> byField(List<FieldError> errors) {
        Map<String, String> sentences = new LinkedHashMap<>();
        errors.forEach(e -> sentences.putIfAbsent(e.field(), e.sentence()));
        return sentences;
    }

    /** The sentence of an error, given as such or as text. */
    public String sentence(@Nullable Object error) {
        return error instanceof FieldError e ? e.sentence() : String.valueOf(error);
    }

    /** Whether the error belongs to a field of its own on the page, not to a row of a file or of the body. */
    public boolean hasField(FieldError error) {
        return error.pointer().lastIndexOf('/') == 0 && error.pointer().length() > 1;
    }

    /** The ids of the texts below a field; empty when there are none. */
    public @Nullable String describedBy(String name, @Nullable Object hint, @Nullable Object error) {
        if (error != null) {
            return hint == null ? name + "-error" : name + "-error " + name + "-hint";
        }
        return hint == null ? null : name + "-hint";
    }
}
