package org.scarfwright.shop;

import java.util.Arrays;
import java.util.List;

/**
 * What a shop's own records say of one kind of step: the median of the last hands-on minutes people recorded.
 *
 * <p>A median, because one bad day among ten does not move it. Between two middle values it is their mean; half a minute is
 * rounded up, as everything the work needs is.
 *
 * <p><b>Source:</b> definition of the median, NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.1, written from
 * memory; how many records count and from how many on they are used are choices of this program.
 *
 * @param minutes the median, 1 to {@value #LONGEST}; 1 where the records say 0
 * @param records how many it is of, 1 to {@value #LAST}
 * @param least the fewest minutes among them
 * @param most the most minutes among them
 */
public record LearnedMinutes(int minutes, int records, int least, int most) {
    /** How many of the last records count. */
    public static final int LAST = 10;

    /** From so many records on the work is laid with them. */
    public static final int ENOUGH = 3;

    /** Most minutes a step can be laid with. */
    static final int LONGEST = 480;

    /**
     * @param recorded hands-on minutes as they were recorded, the latest first; those after the first {@value #LAST} do not count
     * @throws IllegalArgumentException when nothing was recorded
     */
    public static LearnedMinutes of(List<Integer> recorded) {
        if (recorded.isEmpty()) {
            throw new IllegalArgumentException("Nothing was recorded, so nothing is learned");
        }
        int[] sorted = recorded.stream().limit(LAST).mapToInt(Integer::intValue).toArray();
        Arrays.sort(sorted);
        int count = sorted.length;
        int twice = sorted[(count - 1) / 2] + sorted[count / 2];
        int median = Math.floorDiv(twice + 1, 2);
        return new LearnedMinutes(Math.max(1, Math.min(LONGEST, median)), count, sorted[0], sorted[count - 1]);
    }

    /** True when there are enough records to lay work with. */
    public boolean isEnough() {
        return records >= ENOUGH;
    }
}
