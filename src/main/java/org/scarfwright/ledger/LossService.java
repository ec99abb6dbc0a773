package org.scarfwright.ledger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceNotFreeException;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class LossService implements Losses {
    private final EntryTable table;
    private final Cutting cutting;

    LossService(EntryTable table, Cutting cutting) {
        this.table = table;
        this.cutting = cutting;
    }

    @Override
    @Transactional
    public Entry writeOff(Neck neck, List<LostPart> parts, String who, String why) {
        List<FieldError> errors = new ArrayList<>(Doing.refusals(who, why));
        if (parts.isEmpty()) {
            errors.add(0, new FieldError("/parts", "Parts", "", "are none; name the neck, the head or both"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        // Locked before it is read, so that no part is written off twice at the same moment.
        table.lockHead();
        List<Outcome> recorded = table.ofNeck(neck.plan(), neck.order(), neck.number());
        List<Cutting.Lost> lost = new ArrayList<>();
        for (LostPart part :
                parts.stream().sorted(Comparator.comparing(LostPart::head)).toList()) {
            List<Outcome> standing = standing(neck, recorded, part.head());
            for (int i = 0; i < standing.size(); i++) {
                Cutting.Lost one = new Cutting.Lost(standing.get(i), i == 0 ? part.rests() : List.of());
                errors.addAll(tooLarge(one, part.head()));
                lost.add(one);
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        cutting.writeOff(lost, Doing.of(PieceChanged.Kind.FAILED, who, why));
        return newest();
    }

    /** A rest cannot be more than the part it is kept of. */
    private static List<FieldError> tooLarge(Cutting.Lost lost, boolean head) {
        String part = head ? "head" : "neck";
        List<FieldError> errors = new ArrayList<>();
        Outcome.Size size = Objects.requireNonNull(lost.part().size());
        for (Cutting.Rest rest : lost.rests()) {
            longer(part, "length", rest.size().length().length(), size.length()).ifPresent(errors::add);
            longer(part, "width", rest.size().width().length(), size.width()).ifPresent(errors::add);
            longer(part, "thickness", rest.size().thickness().length(), size.thickness())
                    .ifPresent(errors::add);
        }
        if (errors.isEmpty() && lost.waste().signum() < 0) {
            errors.add(new FieldError(
                    "/" + part + "-length",
                    "What is kept of the " + part,
                    "",
                    "is more wood than the " + part + " was, whose end is a bevel; write what is square of it"));
        }
        return errors;
    }

    private static Optional<FieldError> longer(String part, String which, Length rest, Length of) {
        return rest.isLongerThan(of)
                ? Optional.of(new FieldError(
                        "/" + part + "-" + which,
                        Character.toUpperCase(which.charAt(0)) + which.substring(1) + " kept of the " + part,
                        rest.toString(),
                        "is more than the " + part + " had, " + of))
                : Optional.empty();
    }

    /** What is recorded as this part and was neither taken back nor written off. */
    private static List<Outcome> standing(Neck neck, List<Outcome> recorded, boolean head) {
        List<Outcome> parts = recorded.stream()
                .filter(o -> o.kind() == Outcome.Kind.PART
                        && o.neck() != null
                        && o.neck().head() == head)
                .toList();
        String name = (head ? "The head" : "The neck") + " of " + neck.title();
        if (parts.isEmpty()) {
            throw new NotFoundException(name + " was not recorded as cut for plan " + neck.plan() + ".");
        }
        Volume volume = parts.stream().map(Outcome::volume).reduce(Volume.ZERO, Volume::plus);
        if (volume.signum() <= 0) {
            throw new ConflictException(name + " was written off or taken back already.");
        }
        List<Outcome> made = new ArrayList<>();
        for (Outcome part : parts) {
            if (part.volume().signum() > 0) {
                made.add(part);
            } else {
                made.removeIf(m -> m.reversed().volume().equals(part.volume())
                        && m.fromPiece().equals(part.fromPiece()));
            }
        }
        return made;
    }

    @Override
    @Transactional
    public Entry remove(Collection<Rack.PieceStamp> pieces, PieceState to, String who, String why) {
        List<FieldError> errors = new ArrayList<>(Doing.refusals(who, why));
        if (pieces.isEmpty() || pieces.size() > MOST_PIECES) {
            errors.add(
                    0,
                    new FieldError(
                            "/pieces",
                            "Pieces",
                            "",
                            pieces.isEmpty()
                                    ? "are none; name at least one"
                                    : "are " + pieces.size() + "; name at most " + MOST_PIECES));
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        try {
            cutting.remove(
                    pieces,
                    to,
                    Doing.of(to == PieceState.SOLD ? PieceChanged.Kind.SOLD : PieceChanged.Kind.SCRAPPED, who, why));
        } catch (PieceNotFreeException e) {
            throw new ConflictException(String.join(" ", e.reasons()) + " Nothing was saved.", e);
        }
        return newest();
    }

    /** The end of the chain is still locked by this transaction, so it is the entry that was just written. */
    private Entry newest() {
        return table.entry(table.head().entry()).orElseThrow();
    }
}
