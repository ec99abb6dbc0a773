package org.scarfwright.matching;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;

/** Numbers and lists inside sentences. */
final class Words {
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private Words() {}

    /** To the nearest tenth of a millimetre. */
    static String mm(Length length) {
        return MM.print(length);
    }

    /** The next tenth of a millimetre that is not less: a shortfall must never read 0.0, nor fall short when it is made good. */
    static String atLeast(Length length) {
        return BigDecimal.valueOf(length.um(), 3)
                        .setScale(1, RoundingMode.CEILING)
                        .toPlainString()
                + " mm";
    }

    /** The next tenth of a millimetre that is not more: what there is must not read as enough when it is not. */
    static String atMost(Length length) {
        return BigDecimal.valueOf(length.um(), 3)
                        .setScale(1, RoundingMode.FLOOR)
                        .toPlainString() + " mm";
    }

    static String role(Role role) {
        return role == Role.NECK ? "neck" : "head";
    }

    /** A, B and C. */
    static String list(List<String> items) {
        if (items.size() < 2) {
            return String.join("", items);
        }
        return String.join(", ", items.subList(0, items.size() - 1)) + " and " + items.get(items.size() - 1);
    }

    static String capital(String sentence) {
        return sentence.isEmpty()
                ? sentence
                : sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }
}
