package org.scarfwright.ledger;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;

/**
 * Writing down what a cut really gave. What the plan says is filled in; a person types only what differs. A field that is left as
 * it was filled in stands for the plan's exact figure, not for the rounded one that is shown.
 *
 * <p>Fields, all text: {@code section-1} to say that this section was cut ({@code true}); for part 1 of section 1
 * {@code part-1-1-length} (long side), {@code -width}, {@code -thickness} and {@code -spoilt} ({@code true}); for rest 1
 * {@code rest-1-length}, {@code -width}, {@code -thickness}, {@code -place}, {@code -code}, {@code -note} and {@code -waste}
 * ({@code true} where it is not worth keeping); for waste {@code waste-kerf} and so on, in cm³; for what is left of the piece
 * under its own code {@code left-length}, {@code -width}, {@code -thickness}, empty when it is used up; {@code who} and
 * {@code why}.
 */
public interface CutRecording {
    /** Rows for rests beyond those the plan has. */
    int MORE_RESTS = 3;

    /**
     * What would be recorded if nothing differed.
     *
     * @param sections numbers of the sections that were cut, from 1; empty for all that are not cut yet
     * @throws NotFoundException when there is no such piece
     */
    Proposal propose(String code, List<Integer> sections);

    /**
     * Records a cut.
     *
     * @param seen version of the piece the person saw
     * @param typed fields by name; what is left out stands as it was proposed
     * @throws InvalidInputException with everything that is wrong, pointers named after the fields; nothing is saved
     * @throws ConflictException when the piece changed since, or cannot be cut
     */
    Recorded record(String code, long seen, List<Integer> sections, Map<String, String> typed);

    /**
     * @param plan the plan the piece is cut for; empty when nobody holds it
     * @param sections as the plan lays them; empty without a plan
     * @param wastes one for each cause a cut can have
     * @param leftStays something is left of the piece by the plan's figures
     * @param fields what every field is filled in with, by name
     */
    record Proposal(
            Piece piece,
            @Nullable Long plan,
            List<Section> sections,
            List<Part> parts,
            List<Rest> rests,
            List<Waste> wastes,
            boolean leftStays,
            Map<String, String> fields) {
        public Proposal {
            sections = List.copyOf(sections);
            parts = List.copyOf(parts);
            rests = List.copyOf(rests);
            wastes = List.copyOf(wastes);
            fields = Map.copyOf(fields);
        }

        /** Numbers of the sections this is a proposal for. */
        public List<Integer> chosen() {
            return sections.stream()
                    .filter(Section::chosen)
                    .map(Section::number)
                    .toList();
        }
    }

    /** @param cut it was recorded already */
    record Section(int number, String title, boolean cut, boolean chosen) {}

    /** @param name what its fields begin with, such as part-1-1 */
    record Part(String name, Outcome.NeckPart neck, Volume planned) {}

    /** @param planned empty for a row the plan does not have */
    record Rest(String name, int number, Optional<Volume> planned) {}

    /** @param name of its field */
    record Waste(String name, Outcome.Cause cause, Volume planned) {}

    /** What came of it. */
    record Recorded(Entry entry, List<String> restCodes) {
        public Recorded {
            restCodes = List.copyOf(restCodes);
        }
    }
}
