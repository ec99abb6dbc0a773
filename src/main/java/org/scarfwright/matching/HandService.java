package org.scarfwright.matching;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.scarfwright.measure.Angle;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Notes decisions after asking the rules whether they can hold. */
@Service
class HandService implements Hands {
    /** A shop decides a handful of things a week; a program that decides without end is told so. */
    static final int MOST = 500;

    private final PlanService.Rooms rooms;
    private final PlanService plans;
    private final JdbcHands rows;
    private final Clock clock;

    HandService(PlanService.Rooms rooms, PlanService plans, JdbcHands rows, Clock clock) {
        this.rooms = rooms;
        this.plans = plans;
        this.rows = rows;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Kept> of(IsoWeek week) {
        return rows.of(week);
    }

    @Override
    @Transactional
    public Kept add(IsoWeek week, Hand wanted) {
        Hand hand = known(week, wanted);
        List<Kept> there = rows.of(week);
        Optional<Kept> same = there.stream().filter(k -> k.hand().equals(hand)).findFirst();
        if (same.isPresent()) {
            return same.get();
        }
        List<Hand> hands = new ArrayList<>(there.stream().map(Kept::hand).toList());
        String contradiction = ByHand.contradiction(hands, hand);
        if (contradiction != null) {
            throw refused("order", "Decision", "", contradiction);
        }
        if (there.size() >= MOST) {
            throw refused("order", "Decision", "", "is one too many; a week takes " + MOST + ", undo some first");
        }
        if (hand instanceof Hand.Arrange a) {
            refuseWhatTheDesignForbids(a);
        }
        if (hand instanceof Hand.Pin pin) {
            refuseWhatCannotHold(week, hands, pin);
        }
        // Databases keep microseconds: what is answered now must be what is read later.
        return rows.insert(week, hand, clock.instant().truncatedTo(ChronoUnit.MICROS));
    }

    @Override
    @Transactional
    public void undo(IsoWeek week, long id) {
        if (!rows.delete(week, id)) {
            throw new NotFoundException("Week " + week + " has no decision " + id + ".");
        }
    }

    /** The same decision with pieces named as the rack writes them. */
    private Hand known(IsoWeek week, Hand hand) {
        if (hand instanceof Hand.Pin p) {
            order(week, p.order());
            return new Hand.Pin(p.order(), neckPiece(p.neck()), headPiece(p.head()));
        }
        if (hand instanceof Hand.Forbid f) {
            if (f.order() != null) {
                order(week, f.order());
            }
            return new Hand.Forbid(piece("piece", "Piece", f.piece()), f.order());
        }
        if (hand instanceof Hand.ForbidPair f) {
            return new Hand.ForbidPair(neckPiece(f.neck()), headPiece(f.head()));
        }
        if (hand instanceof Hand.Keep k) {
            order(week, k.order());
            return new Hand.Keep(piece("piece", "Piece", k.piece()), k.order());
        }
        order(week, hand instanceof Hand.Arrange a ? a.order() : ((Hand.LeaveOut) hand).order());
        return hand;
    }

    private String neckPiece(String code) {
        return piece("neckPiece", "Neck piece", code);
    }

    private String headPiece(String code) {
        return piece("headPiece", "Head piece", code);
    }

    private void order(IsoWeek week, String code) {
        if (rooms.orders().inWeek(week).stream().noneMatch(o -> o.code().equals(code))) {
            throw refused("order", "Order", code, "“" + code + "” is no order of week " + week + "; name one that is");
        }
    }

    private String piece(String field, String label, String code) {
        return rooms.rack()
                .find(code)
                .map(Piece::code)
                .orElseThrow(
                        () -> refused(field, label, code, "“" + code + "” is no piece of the rack; name one that is"));
    }

    private void refuseWhatTheDesignForbids(Hand.Arrange a) {
        NeckDesign design = rooms.orders()
                .find(a.order())
                .flatMap(o -> rooms.designs().find(o.designCode()))
                .orElseThrow(() -> refused("order", "Order", a.order(), "asks for a design that is not on file"));
        if (a.arrangement() != null && !design.arrangements().contains(a.arrangement())) {
            throw refused(
                    "arrangement",
                    "Arrangement",
                    a.arrangement().word(),
                    "“" + a.arrangement().word() + "” is not allowed by design " + design.code() + ", which is "
                            + Words.list(design.arrangements().stream()
                                    .map(x -> x.word())
                                    .toList()));
        }
        if (a.angle() != null && !design.angles().contains(a.angle())) {
            throw refused(
                    "angle",
                    "Angle",
                    a.angle().toString(),
                    "“" + a.angle() + "” is not allowed by design " + design.code() + ", which takes "
                            + Words.list(design.angles().stream()
                                    .map(Angle::toString)
                                    .toList()));
        }
    }

    private void refuseWhatCannotHold(IsoWeek week, List<Hand> there, Hand.Pin pin) {
        List<Hand> hands = new ArrayList<>(there);
        hands.add(pin);
        MatchInput input = plans.question(week, Plan.Asked.WEEK, hands).input();
        MatchInput.Line line = input.lines().stream()
                .filter(l -> pin.equals(l.pin()))
                .findFirst()
                .orElseThrow(() -> refused(
                        "order",
                        "Order",
                        pin.order(),
                        "has no neck left to pin: every one is in an accepted plan or pinned already"));
        PinTrial.refusal(line, input).ifPresent(reason -> {
            throw refused("neckPiece", "Pin", "", "cannot hold: " + reason);
        });
    }

    private static InvalidInputException refused(String field, String label, String value, String message) {
        return new InvalidInputException(new FieldError("/" + field, label, Objects.toString(value, ""), message));
    }
}
