/**
 * Laying a week's works on days. Pure: knows no orders, no database, no framework.
 *
 * <p><b>Axis.</b> Time is counted in slots of {@link org.scarfwright.week.schedule.Slots#MINUTES} minutes from the instant the
 * schedule begins. They are minutes that really pass, so a cure over a night in which the clocks change lasts as long as any
 * other. Hands-on work lies inside shop hours; what is unattended runs through nights.
 *
 * <p><b>Rounding.</b> Always the safe way: work and cure round up to whole slots, shop hours and the longest wait before gluing
 * round inward.
 */
@NullMarked
package org.scarfwright.week.schedule;

import org.jspecify.annotations.NullMarked;
