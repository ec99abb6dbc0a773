package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Enters and changes designs. */
@Service
public class DesignBook {
    private final JdbcDesigns designs;
    private final SpeciesCatalog species;

    DesignBook(JdbcDesigns designs, SpeciesCatalog species) {
        this.designs = designs;
        this.species = species;
    }

    /** @throws NotFoundException when there is none */
    public NeckDesign get(String code) {
        return designs.find(code)
                .orElseThrow(() -> new NotFoundException("There is no design " + DraftReader.quote(code) + "."));
    }

    /** What would become of each entry; nothing is saved. */
    @Transactional(readOnly = true)
    public List<Checked<NeckDesign>> check(List<Entry> entries) {
        DesignReader reader = new DesignReader(species.all());
        Map<String, NeckDesign> kept =
                designs.all().stream().collect(Collectors.toMap(NeckDesign::code, Function.identity()));
        Map<String, NeckDesign> before = new HashMap<>();
        List<Checked<NeckDesign>> checked = new ArrayList<>();
        for (Entry entry : entries) {
            Reading<NeckDesign> reading = reader.read(entry.draft());
            if (reading.value().isEmpty() || !entry.faults().isEmpty()) {
                checked.add(Checked.refused(entry, reading));
                continue;
            }
            NeckDesign design = reading.value().get();
            NeckDesign there = kept.getOrDefault(design.code(), before.get(design.code()));
            before.putIfAbsent(design.code(), design);
            if (there == null) {
                checked.add(Checked.accepted(entry, Fate.NEW, design));
                continue;
            }
            List<String> differences = DesignText.differences(there, design);
            checked.add(
                    differences.isEmpty()
                            ? Checked.accepted(entry, Fate.UNCHANGED, there)
                            : Checked.refused(entry, taken(design, differences)));
        }
        return checked;
    }

    private static Flaw taken(NeckDesign design, List<String> differences) {
        return new Flaw(
                DesignField.CODE,
                design.code(),
                "“" + design.code() + "” is taken: " + String.join(", ", differences)
                        + "; edit that design, or give this one a code of its own");
    }

    /**
     * Enters all of them, or none. What is kept already with the same figures stays as it is.
     *
     * @throws InvalidInputException with every error when one is refused
     */
    @Transactional
    public List<Checked<NeckDesign>> add(List<Entry> entries) {
        List<Checked<NeckDesign>> checked = check(entries);
        Checked.requireAll(checked);
        try {
            checked.stream()
                    .filter(c -> c.fate() == Fate.NEW)
                    .forEach(c -> designs.insert(c.value().orElseThrow()));
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody entered a design with the same code just now; send it again.");
        }
        return checked;
    }

    /**
     * Changes a design. Its code stays.
     *
     * @param seenVersion the version the editor saw
     * @throws EditConditionException when it was changed since
     * @throws InvalidInputException with every error
     */
    @Transactional
    public NeckDesign change(String code, long seenVersion, Entry entry) {
        NeckDesign there = get(code);
        if (there.version() != seenVersion) {
            throw EditConditionException.stale();
        }
        Entry full =
                entry.draft().text(DesignField.CODE).isBlank() ? entry.with(DesignField.CODE, there.code()) : entry;
        Reading<NeckDesign> reading = new DesignReader(species.all()).read(full.draft());
        if (reading.value().isEmpty() || !full.faults().isEmpty()) {
            throw new InvalidInputException(Checked.refused(full, reading).errors());
        }
        NeckDesign design = reading.value().get();
        if (!design.code().equals(there.code())) {
            throw new InvalidInputException(full.error(new Flaw(
                    DesignField.CODE, design.code(), "cannot be changed; this design stays “" + there.code() + "”")));
        }
        if (!designs.update(there.id(), seenVersion, design)) {
            throw EditConditionException.stale();
        }
        return get(code);
    }
}
