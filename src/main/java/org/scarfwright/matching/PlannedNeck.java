package org.scarfwright.matching;

/**
 * One neck of a plan.
 *
 * @param number which neck of the order, from 1
 */
public record PlannedNeck(long plan, String order, int number) {
    /** A-101 no. 2. */
    public String title() {
        return order + " no. " + number;
    }
}
