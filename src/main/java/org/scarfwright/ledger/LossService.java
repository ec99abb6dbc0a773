package org.scarfwright.ledger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceDocuments;
import org.scarfwright.rack.PieceNotFreeException;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PiecesChanged;
import org.scarfwright.rack.Rack;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class LossService implements Losses {
    private final EntryTable table;
    private final Cutting cutting;
    private final PieceDocuments documents;
    private final ApplicationEventPublisher events;

    LossService(EntryTable table, Cutting cutting, PieceDocuments documents, ApplicationEventPublisher events) {
        this.table = table;
        this.cutting = cutting;
        this.documents = documents;
        this.events = events;
    }

    @Override
    @Transactional
    public Entry writeOff(Neck neck, Set<Boolean> heads, String who, String why) {
        List<FieldError> errors = new ArrayList<>(Doing.refusals(who, why));
        if (heads.isEmpty()) {
            errors.add(0, new FieldError("/parts", "Parts", "", "are none; name the neck, the head or both"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        // Locked before it is read, so that no part is written off twice at the same moment.
        table.lockHead();
        List<Outcome> recorded = table.ofNeck(neck.plan(), neck.order(), neck.number());
        List<Outcome> outcomes = new ArrayList<>();
        Set<String> pieces = new LinkedHashSet<>();
        for (boolean head : heads.stream().sorted().toList()) {
            for (Outcome part : standing(neck, recorded, head)) {
                outcomes.add(part.reversed());
                outcomes.add(new Outcome(
                        Outcome.Kind.WASTE,
                        Outcome.Cause.SPOILT,
                        part.fromPiece(),
                        null,
                        part.volume(),
                        null,
                        part.cost(),
                        part.neck(),
                        part.size()));
                pieces.add(part.fromPiece());
            }
        }
        Map<String, String> now = documents.of(pieces);
        String lost = heads.size() == 2 ? "Neck and head" : heads.contains(true) ? "Head" : "Neck";
        List<PieceChanged> changes = pieces.stream()
                .map(code -> {
                    Volume volume = documents.volumeThere(now.getOrDefault(code, PieceDocuments.NONE));
                    return new PieceChanged(
                            PieceChanged.Kind.FAILED,
                            code,
                            volume,
                            volume,
                            neck.plan(),
                            lost + " of " + neck.title() + " that came from it written off.");
                })
                .toList();
        events.publishEvent(
                new PiecesChanged(Doing.of(PieceChanged.Kind.FAILED, who, why), changes, outcomes, Set.of()));
        return newest();
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
