package org.scarfwright.week;

import java.time.LocalDate;
import java.util.Optional;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;

/** Laying a week's work on days, and looking at it. */
public interface WeekWork {
    LaidWeek week(IsoWeek week);

    /**
     * Lays everything that is not done yet of the accepted plans of this week and of the weeks before it, from now on. What is
     * done stays, what is in clamps stays in clamps. Necks that cannot be laid are left out, each with its reason. Takes two seconds at
     * the most; where more time can find a better schedule it is looked for after that, for a minute, and replaces this one unless
     * somebody worked on a step or laid the week again.
     *
     * @throws InvalidInputException when no accepted plan of these weeks has anything left to do
     * @throws ConflictException when the work went on meanwhile
     */
    LaidWeek lay(IsoWeek week);

    /** Whether a better schedule than the one that holds is still looked for. */
    boolean looksOn();

    /**
     * Pins a step to a day; holds from the next laying on.
     *
     * @throws NotFoundException when there is no such step
     * @throws InvalidInputException when the shop is closed that day, or the day is over
     * @throws ConflictException when the step is done
     */
    WorkStep pin(long step, LocalDate day);

    /** @throws NotFoundException when there is no such step */
    WorkStep unpin(long step);

    /** What a design is glued with, if it names a glue of its own. */
    Optional<String> glueOf(String design);

    /**
     * @param glue code of a glue; empty for the shop's own
     * @throws InvalidInputException when there is no such design or glue
     */
    void chooseGlue(String design, Optional<String> glue);
}
