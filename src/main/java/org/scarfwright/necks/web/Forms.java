package org.scarfwright.necks.web;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Field;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldError;
import org.springframework.util.MultiValueMap;

/** Drafts from the fields of a page's form or of an address. */
final class Forms {
    /** Name of the field that says which unit the labels named, and so what a bare number in the form means. */
    static final String UNIT = "shownUnit";

    /** Name of the field with the version the editor saw. */
    static final String VERSION = "version";

    private Forms() {}

    /** A field that is sent several times, as the ticks of a group are, is one text with blanks between. */
    static Draft draft(MultiValueMap<String, String> sent, List<? extends Field> fields, LengthUnit shopUnit) {
        Map<Field, String> texts = new HashMap<>();
        for (Field field : fields) {
            List<String> values = sent.getOrDefault(field.form(), List.of());
            if (!values.isEmpty()) {
                texts.put(field, String.join(" ", values));
            }
        }
        return new Draft(texts, unit(sent.getFirst(UNIT), shopUnit));
    }

    static LengthUnit unit(@Nullable String symbol, LengthUnit shopUnit) {
        return Stream.of(LengthUnit.values())
                .filter(u -> u.symbol().equals(symbol))
                .findFirst()
                .orElse(shopUnit);
    }

    /** A version nobody can read is no version anything ever had. */
    static long version(@Nullable String text) {
        return text != null && text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }

    static FieldError changedMeanwhile(String what) {
        return new FieldError(
                "",
                what,
                "",
                "was changed since you opened this page; your entries are kept below. Save again to replace what is there");
    }

    /** The words of an enum with what a person reads for each. */
    static <E extends Enum<E>> List<Choice> choices(Map<E, String> labels) {
        return labels.entrySet().stream()
                .map(e -> new Choice(e.getKey().name().toLowerCase(Locale.ROOT), e.getValue()))
                .toList();
    }
}
