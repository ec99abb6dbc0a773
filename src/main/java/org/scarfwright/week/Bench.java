package org.scarfwright.week;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.scarfwright.shop.Glue;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;

/**
 * The steps as they are worked on, for a page beside the saw.
 *
 * <p>The order of steps is kept: nothing starts before the steps it needs are done, before its plan is accepted and its pieces
 * are reserved, while a joint must stay in clamps or cures, or once the neck was stopped. What is refused is refused with a
 * {@link ConflictException} whose message says what to do first. Doing again what was done already changes nothing.
 */
public interface Bench {
    /** Longest work that can be recorded, in minutes. */
    int LONGEST = 1440;

    /**
     * What is planned for a day, in the order it is to be done, with what was left undone on days before it in front. Steps of
     * that day that are done stay in the list.
     */
    List<Card> day(LocalDate day);

    /** The next day after this one that undone work is planned for; empty when there is none. */
    Optional<LocalDate> next(LocalDate day);

    /** @throws NotFoundException when there is no such step */
    Card card(long step);

    /** Joints in clamps or curing, the one that is ready first in front. */
    List<Curing> curing();

    /** @throws ConflictException when it cannot be started now */
    Card start(long step, String who);

    /**
     * Done. A step that was never started was started when it was done. Gluing stores until when the joint stays in clamps and
     * when it is cured, by the glue of its design.
     *
     * @param minutes hands-on; empty when nobody took the time
     * @throws ConflictException when it could not be started now
     * @throws InvalidInputException when the minutes are not between 0 and {@link #LONGEST}
     */
    Card done(long step, OptionalInt minutes, String who);

    /**
     * Something else happened: the whole neck waits until a person lets it go on, and is left out when the work is laid again.
     *
     * @param reason a few words, at most 300 characters
     * @throws InvalidInputException when there is no reason, or a longer one
     * @throws ConflictException when the step is done
     */
    Card somethingElse(long step, String reason, String who);

    /** Lets a stopped neck go on; does nothing when it was not stopped. */
    Card goOn(long step);

    /**
     * Takes a start or a done back, as if the step had never been begun.
     *
     * @throws ConflictException when a step after it was begun
     */
    Card takeBack(long step);

    /**
     * A step and whether it can be done now.
     *
     * @param waitsFor why it cannot be started now, as a sentence; empty when it can, or when it is done
     * @param glue what the neck is glued with; empty when neither its design nor the shop names one
     * @param design code of its design
     */
    record Card(WorkStep step, Optional<String> waitsFor, Optional<Glue> glue, String design) {}

    /**
     * A glued joint.
     *
     * @param opened its clamps are off already
     */
    record Curing(WorkStep glued, Instant clampedUntil, Instant curedAt, boolean opened) {}
}
