package org.scarfwright.necks.web;

import java.util.List;

/**
 * A stretch of a list that is too long for one page.
 *
 * @param number counted from 1
 * @param last number of the last page; 1 when there is nothing
 */
record PageOf<T>(List<T> rows, int number, int last, int total) {
    PageOf {
        rows = List.copyOf(rows);
    }

    /** @param wanted the page asked for; the nearest there is is given */
    static <T> PageOf<T> of(List<T> all, String wanted, int size) {
        int last = Math.max(1, (all.size() + size - 1) / size);
        int asked = wanted.matches("\\d{1,6}") ? Integer.parseInt(wanted) : 1;
        int number = Math.max(1, Math.min(last, asked));
        List<T> rows = all.subList((number - 1) * size, Math.min(all.size(), number * size));
        return new PageOf<>(rows, number, last, all.size());
    }

    /** Number of the page before this one; 0 when there is none. */
    public int before() {
        return number - 1;
    }

    /** Number of the page after this one; 0 when there is none. */
    public int after() {
        return number < last ? number + 1 : 0;
    }
}
