package org.scarfwright.necks.book;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.TypedLength;

/** Reads the fields of one draft and collects everything that is wrong. A field that is wrong comes back empty. */
final class DraftReader {
    private static final Pattern CODE = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]*");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
    private static final Pattern CONTROL = Pattern.compile("[\\p{Cntrl}&&[^\\r\\n\\t]]");
    private static final Map<String, Boolean> YES_NO =
            Map.of("yes", true, "true", true, "1", true, "x", true, "no", false, "false", false, "0", false);

    private final Draft draft;
    private final List<Flaw> flaws = new ArrayList<>();

    DraftReader(Draft draft) {
        this.draft = draft;
    }

    List<Flaw> flaws() {
        return List.copyOf(flaws);
    }

    boolean isSound() {
        return flaws.isEmpty();
    }

    String text(Field field) {
        return draft.text(field).strip();
    }

    void flaw(Field field, String message) {
        flaw(field, text(field), message);
    }

    void flaw(Field field, String value, String message) {
        Flaw flaw = new Flaw(field, value, message);
        if (!flaws.contains(flaw)) {
            flaws.add(flaw);
        }
    }

    /** The text in quotes, cut short. */
    static String quote(String text) {
        return text.length() <= 40 ? "“" + text + "”" : "“" + text.substring(0, 40) + "…”";
    }

    /** The form in which codes are kept and compared: blanks off, upper case whatever the machine's language. */
    static String plainCode(String code) {
        return Normalizer.normalize(code.strip(), Normalizer.Form.NFC).toUpperCase(Locale.ROOT);
    }

    /** A code as people write it on wood; empty text is a flaw. */
    Optional<String> code(Field field, int longest, String example) {
        String code = plainCode(text(field));
        if (code.isEmpty()) {
            flaw(field, "is empty; write for example " + example);
        } else if (code.length() > longest) {
            flaw(field, "is " + code.length() + " characters long; a code has at most " + longest);
        } else if (!CODE.matcher(code).matches()) {
            flaw(
                    field,
                    quote(text(field)) + " is not a code; use letters, digits and - _ . without blanks, for example "
                            + example);
        } else {
            return Optional.of(code);
        }
        return Optional.empty();
    }

    /** Free text without control characters; may be empty. */
    Optional<String> words(Field field, int longest) {
        String words = text(field);
        if (words.length() > longest) {
            flaw(field, "is " + words.length() + " characters long; it holds at most " + longest);
        } else if (CONTROL.matcher(words).find()) {
            flaw(
                    field,
                    CONTROL.matcher(words).replaceAll("?"),
                    "holds a character that cannot be printed; write it anew");
        } else {
            return Optional.of(words);
        }
        return Optional.empty();
    }

    /**
     * The bounds of a length and what stands for it when none is given.
     *
     * @param example as a maker writes it in millimetres
     * @param exampleInches the same on an inch rule
     */
    record Range(Length least, Length most, String example, String exampleInches, Optional<Length> whenEmpty) {
        static Range of(long leastMm, long mostMm, String example, String exampleInches) {
            return new Range(Length.ofMm(leastMm), Length.ofMm(mostMm), example, exampleInches, Optional.empty());
        }

        Range orElse(long mm) {
            return new Range(least, most, example, exampleInches, Optional.of(Length.ofMm(mm)));
        }
    }

    Optional<TypedLength> length(Field field, Range range) {
        String text = text(field);
        if (text.isEmpty() && range.whenEmpty().isPresent()) {
            return range.whenEmpty().map(TypedLength::of);
        }
        try {
            TypedLength typed = TypedLength.parse(text, draft.unit());
            if (typed.length().isShorterThan(range.least()) || typed.length().isLongerThan(range.most())) {
                flaw(
                        field,
                        "is " + typed.typed() + "; it lies between " + range.least() + " and " + range.most()
                                + ", for example "
                                + (draft.unit() == LengthUnit.INCH ? range.exampleInches() : range.example()));
                return Optional.empty();
            }
            return Optional.of(typed);
        } catch (MeasureFormatException e) {
            flaw(field, e.getMessage() + "");
            return Optional.empty();
        }
    }

    /** @param whenEmpty empty when the number must be given */
    Optional<Integer> whole(Field field, int least, int most, Optional<Integer> whenEmpty) {
        String text = text(field);
        if (text.isEmpty() && whenEmpty.isPresent()) {
            return whenEmpty;
        }
        String right = "; write a whole number from " + least + " to " + most;
        if (text.isEmpty()) {
            flaw(field, "is empty" + right);
        } else if (text.charAt(0) == '-' || text.charAt(0) == '\u2212') {
            flaw(field, quote(text) + " is negative" + right);
        } else if (!WHOLE.matcher(text).matches()) {
            flaw(field, quote(text) + " is not a whole number" + right);
        } else {
            int value = Integer.parseInt(text);
            if (value >= least && value <= most) {
                return Optional.of(value);
            }
            flaw(field, "is " + value + right);
        }
        return Optional.empty();
    }

    boolean yes(Field field, boolean whenEmpty) {
        String text = text(field).toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return whenEmpty;
        }
        Boolean yes = YES_NO.get(text);
        if (yes == null) {
            flaw(field, quote(text(field)) + " is neither; write yes or no");
            return whenEmpty;
        }
        return yes;
    }

    /**
     * One of a few words, written in any case, with blanks, hyphens or underscores between their parts.
     *
     * @param whenEmpty empty when a word must be given
     */
    <E extends Enum<E>> Optional<E> oneOf(Field field, Class<E> words, Optional<E> whenEmpty) {
        String text = text(field);
        if (text.isEmpty() && whenEmpty.isPresent()) {
            return whenEmpty;
        }
        for (E word : words.getEnumConstants()) {
            if (word.name().equals(text.toUpperCase(Locale.ROOT).replaceAll("[\\s_-]+", "_"))) {
                return Optional.of(word);
            }
        }
        flaw(field, (text.isEmpty() ? "is empty" : quote(text) + " is none of them") + "; write " + list(words));
        return Optional.empty();
    }

    private static <E extends Enum<E>> String list(Class<E> words) {
        List<String> names = new ArrayList<>();
        for (E word : words.getEnumConstants()) {
            names.add(word.name().toLowerCase(Locale.ROOT));
        }
        String last = names.remove(names.size() - 1);
        return String.join(", ", names) + " or " + last;
    }
}
