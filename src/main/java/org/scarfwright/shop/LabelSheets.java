package org.scarfwright.shop;

import java.util.List;
import java.util.Optional;
import org.scarfwright.web.ConflictException;

/** The sheets of labels the shop uses. An edit names the version its editor saw. */
public interface LabelSheets {
    /** In the order of their codes. */
    List<Versioned> all();

    Optional<Versioned> find(String code);

    /**
     * @return false, and nothing changed, when another label sheet has that code
     * @throws ConflictException when two people add one of that code at the same moment
     */
    boolean add(LabelSheet sheet);

    /** @return false, and nothing changed, when somebody changed or removed the label sheet of that code since that version */
    boolean change(long seenVersion, LabelSheet sheet);

    /** @return false, and nothing changed, when somebody changed or removed it since that version */
    boolean remove(long seenVersion, String code);

    /** A label sheet and the version it stands at. */
    record Versioned(long version, LabelSheet sheet) {}
}
