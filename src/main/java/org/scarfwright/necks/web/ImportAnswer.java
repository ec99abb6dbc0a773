package org.scarfwright.necks.web;

import java.util.List;
import java.util.function.Function;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.web.FieldError;

/**
 * What became, or would become, of many entries.
 *
 * @param preview nothing was saved
 * @param added how many are new
 * @param unchanged how many were kept already with the same figures
 * @param refused how many are not right; only in a preview, because otherwise nothing is saved
 */
record ImportAnswer(
        boolean preview, long added, long unchanged, long refused, List<Row> entries, List<Problem> errors) {

    /** One entry: its code, when it has one, and new, unchanged or refused. */
    record Row(String code, String fate) {}

    /** One error, as in a refused request. */
    record Problem(String pointer, String field, String value, String message) {
        static Problem of(FieldError error) {
            return new Problem(error.pointer(), error.field(), error.value(), error.sentence());
        }
    }

    static <T> ImportAnswer of(boolean preview, List<Checked<T>> checked, Function<T, String> code) {
        return new ImportAnswer(
                preview,
                count(checked, Fate.NEW),
                count(checked, Fate.UNCHANGED),
                count(checked, Fate.REFUSED),
                checked.stream()
                        .map(c -> new Row(
                                c.value().map(code).orElse(""), c.fate().name().toLowerCase(java.util.Locale.ROOT)))
                        .toList(),
                Checked.errors(checked).stream().map(Problem::of).toList());
    }

    private static <T> long count(List<Checked<T>> checked, Fate fate) {
        return checked.stream().filter(c -> c.fate() == fate).count();
    }
}
