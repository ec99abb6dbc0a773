/**
 * The week on the floor: which work on which day, and what has been done of it.
 *
 * <p><b>From plan to steps.</b> Every neck of an accepted plan is made in the steps of {@link org.scarfwright.shop.StepKind}. They
 * are kept, each with what it needs, when it is planned and how far it is. Laying ({@link org.scarfwright.week.WeekWork#lay})
 * writes down the steps that are missing and gives every step that is not done a time; it changes nothing that is done and opens
 * no clamp early.
 *
 * <p><b>At the bench.</b> {@link org.scarfwright.week.Bench} is what a page beside the saw calls: the steps of a day in order, start,
 * done, something else happened, go on, take back. It keeps the order of steps and refuses with a sentence a person can act on.
 * Clamp time and cure are instants that are stored when a joint is glued, so that they outlast the program and run on while it
 * sleeps.
 *
 * <p><b>Time.</b> Instants are kept; days and hours are the shop's wall clock, in the zone of the program's clock.
 */
@ApplicationModule(allowedDependencies = {"measure", "wood", "joint", "shop", "rack", "necks", "matching", "web"})
@NullMarked
package org.scarfwright.week;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
