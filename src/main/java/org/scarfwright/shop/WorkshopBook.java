package org.scarfwright.shop;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.scarfwright.web.ConflictException;

/** Keeps what the shop has to work with: hours, hands, clamps, glues, days off. */
public interface WorkshopBook {
    VersionedWorkshop workshop();

    /** @return false, and nothing changed, when somebody changed it since that version */
    boolean change(long seenVersion, Workshop workshop);

    /** Earliest first. */
    List<DayOff> daysOff();

    /** @return false, and nothing changed, when that day is off already */
    boolean addDayOff(DayOff day);

    /** @return false when that day was not off */
    boolean removeDayOff(LocalDate day);

    /** In order of their names. */
    List<VersionedGlue> glues();

    Optional<VersionedGlue> glue(String code);

    /** @return false, and nothing changed, when another glue has that code */
    boolean addGlue(Glue glue);

    /** @return false, and nothing changed, when somebody changed or removed the glue of that code since that version */
    boolean changeGlue(long seenVersion, Glue glue);

    /**
     * @return false, and nothing changed, when somebody changed or removed it since that version
     * @throws ConflictException when it is the shop's own choice or a design's
     */
    boolean removeGlue(long seenVersion, String code);

    /** Settings and the version they stand at. */
    record VersionedWorkshop(long version, Workshop workshop) {}

    /** A glue and the version it stands at. */
    record VersionedGlue(long version, Glue glue) {}
}
