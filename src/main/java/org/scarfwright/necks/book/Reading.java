package org.scarfwright.necks.book;

import java.util.List;
import java.util.Optional;

/**
 * What a draft came to: the thing, or everything that is wrong with it.
 *
 * @param value empty exactly when there are flaws
 */
public record Reading<T>(Optional<T> value, List<Flaw> flaws) {
    public Reading {
        flaws = List.copyOf(flaws);
        if (value.isPresent() != flaws.isEmpty()) {
            throw new IllegalArgumentException("a reading is a value or flaws");
        }
    }

    static <T> Reading<T> of(T value) {
        return new Reading<>(Optional.of(value), List.of());
    }

    static <T> Reading<T> refused(List<Flaw> flaws) {
        return new Reading<>(Optional.empty(), flaws);
    }
}
