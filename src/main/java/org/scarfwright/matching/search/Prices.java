package org.scarfwright.matching.search;

/**
 * Multipliers of the rows that tie layouts to necks, in whole numbers: {@link #ONE} stands for one unit of the level's objective.
 *
 * @param level what is minimised: {@link SearchResult.Measure#BOOK_VALUE}, or {@link SearchResult.Measure#FILLED} with its sign
 *     changed
 * @param supply what one part is worth, by supply
 * @param filled what one unit of weight filled is worth; not below 0
 */
@SuppressWarnings("ArrayRecordComponent") // read in inner loops and never compared
record Prices(SearchResult.Measure level, long[] supply, long filled) {
    static final long ONE = 1L << 20;

    /** {@link #ONE} when a hundredth lost counts on this level, else 0. */
    long cent() {
        return level == SearchResult.Measure.BOOK_VALUE ? ONE : 0;
    }

    /** The nearest whole multiplier. */
    static long of(double dual) {
        return Math.round(dual * ONE);
    }
}
