package org.scarfwright.matching.web;

import java.util.List;
import java.util.Locale;
import org.scarfwright.matching.Plan;

/**
 * Which part of a plan a page shows: a plan may have a thousand necks.
 *
 * @param find shows only necks whose order, design or pieces contain this; empty shows all
 * @param page counted from 1
 * @param size necks on a page
 */
record PlanShow(String find, int page, int size) {
    /** So many joints are drawn on one page. */
    static final int ON_A_PAGE = 20;

    /** Longer than any code. */
    private static final int LONGEST = 80;

    /** Everything, as on paper. */
    static final PlanShow ALL = new PlanShow("", 1, Integer.MAX_VALUE);

    /** From an address; a page that is no number is the first one. */
    static PlanShow of(String find, String page) {
        String text = find.strip();
        return new PlanShow(
                text.substring(0, Math.min(text.length(), LONGEST)),
                page.matches("[1-9]\\d{0,6}") ? Integer.parseInt(page) : 1,
                ON_A_PAGE);
    }

    boolean finds(Plan.Pairing p) {
        return finds(List.of(p.order(), p.design(), p.neck().piece(), p.head().piece()));
    }

    boolean finds(Plan.Unfilled u) {
        return finds(List.of(u.order(), u.design()));
    }

    private boolean finds(List<String> codes) {
        String wanted = find.toLowerCase(Locale.ROOT);
        return codes.stream().anyMatch(c -> c.toLowerCase(Locale.ROOT).contains(wanted));
    }

    /**
     * The part that is shown.
     *
     * @param found how many were found
     * @param page the page that is shown; one past the end is the last
     * @param from number of the first one shown, from 1; 0 when none is
     */
    record Part(String find, int found, int total, int page, int pages, int from, int to) {
        public int before() {
            return page - 1;
        }

        public int after() {
            return page + 1;
        }

        public boolean paged() {
            return pages > 1 || !find.isEmpty();
        }
    }

    Part part(int found, int total) {
        int pages = Math.max(1, (int) ((found + (long) size - 1) / size));
        int shown = Math.min(page, pages);
        int from = (shown - 1) * size;
        return new Part(
                find, found, total, shown, pages, found == 0 ? 0 : from + 1, (int) Math.min(found, (long) from + size));
    }
}
