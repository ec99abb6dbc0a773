package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Hand;
import org.scarfwright.matching.Hands;
import org.scarfwright.measure.Angle;

/**
 * A decision as the API gives it; see {@link HandForm}.
 *
 * @param text the decision as a sentence
 */
record HandJson(
        long id,
        String kind,
        @Nullable String order,
        @Nullable String piece,
        @Nullable String neckPiece,
        @Nullable String headPiece,
        @Nullable String arrangement,
        @Nullable BigDecimal angle,
        Instant madeAt,
        String text) {

    static HandJson of(Hands.Kept kept) {
        Hand hand = kept.hand();
        if (hand instanceof Hand.Pin p) {
            return new HandJson(
                    kept.id(), "pin", p.order(), null, p.neck(), p.head(), null, null, kept.madeAt(), p.words());
        }
        if (hand instanceof Hand.Forbid f) {
            return new HandJson(
                    kept.id(), "forbid", f.order(), f.piece(), null, null, null, null, kept.madeAt(), f.words());
        }
        if (hand instanceof Hand.ForbidPair f) {
            return new HandJson(
                    kept.id(), "forbid-pair", null, null, f.neck(), f.head(), null, null, kept.madeAt(), f.words());
        }
        if (hand instanceof Hand.Keep k) {
            return new HandJson(
                    kept.id(), "keep", k.order(), k.piece(), null, null, null, null, kept.madeAt(), k.words());
        }
        if (hand instanceof Hand.Arrange a) {
            Arrangement arrangement = a.arrangement();
            Angle angle = a.angle();
            return new HandJson(
                    kept.id(),
                    "arrange",
                    a.order(),
                    null,
                    null,
                    null,
                    arrangement == null ? null : arrangement.word(),
                    angle == null ? null : angle.toDegrees(),
                    kept.madeAt(),
                    a.words());
        }
        Hand.LeaveOut out = (Hand.LeaveOut) hand;
        return new HandJson(
                kept.id(), "leave-out", out.order(), null, null, null, null, null, kept.madeAt(), out.words());
    }
}
