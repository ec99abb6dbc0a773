package org.scarfwright.matching.web;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.Hand;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/**
 * A decision as text.
 *
 * @param kind pin, forbid, forbid-pair, keep, arrange or leave-out
 * @param piece what forbid and keep are about
 * @param angle in degrees
 */
record HandForm(
        @Nullable String kind,
        @Nullable String order,
        @Nullable String piece,
        @Nullable String neckPiece,
        @Nullable String headPiece,
        @Nullable String arrangement,
        @Nullable String angle) {
    private static final List<String> KINDS = List.of("pin", "forbid", "forbid-pair", "keep", "arrange", "leave-out");

    /** @throws InvalidInputException naming the field that is missing or wrong */
    Hand read() {
        return switch (written(kind).toLowerCase(Locale.ROOT)) {
            case "pin" ->
                new Hand.Pin(
                        needed("order", "Order", order),
                        needed("neckPiece", "Neck piece", neckPiece),
                        needed("headPiece", "Head piece", headPiece));
            case "forbid" ->
                new Hand.Forbid(needed("piece", "Piece", piece), written(order).isEmpty() ? null : written(order));
            case "forbid-pair" ->
                new Hand.ForbidPair(
                        needed("neckPiece", "Neck piece", neckPiece), needed("headPiece", "Head piece", headPiece));
            case "keep" -> new Hand.Keep(needed("piece", "Piece", piece), needed("order", "Order", order));
            case "arrange" -> arrange();
            case "leave-out" -> new Hand.LeaveOut(needed("order", "Order", order));
            default ->
                throw refused(
                        "kind",
                        "Decision",
                        written(kind),
                        "“" + written(kind) + "” is none; write one of " + String.join(", ", KINDS));
        };
    }

    private Hand arrange() {
        String way = written(arrangement);
        String at = written(angle);
        if (way.isEmpty() && at.isEmpty()) {
            throw refused("arrangement", "Arrangement", "", "is missing; write underlaid, overlaid or an angle");
        }
        return new Hand.Arrange(
                needed("order", "Order", order),
                way.isEmpty() ? null : arrangement(way),
                at.isEmpty() ? null : angle(at));
    }

    private static Arrangement arrangement(String word) {
        for (Arrangement a : Arrangement.values()) {
            if (a.word().equalsIgnoreCase(word)) {
                return a;
            }
        }
        throw refused("arrangement", "Arrangement", word, "“" + word + "” is none; write underlaid or overlaid");
    }

    private static Angle angle(String text) {
        try {
            return Angle.parse(text);
        } catch (MeasureFormatException e) {
            throw refused("angle", "Angle", text, "is not right: " + e.getMessage());
        }
    }

    private static String needed(String field, String label, @Nullable String text) {
        String given = written(text);
        if (given.isEmpty()) {
            throw refused(field, label, "", "is missing; name it by its code");
        }
        return given;
    }

    private static String written(@Nullable String text) {
        return text == null ? "" : text.strip();
    }

    private static InvalidInputException refused(String field, String label, String value, String message) {
        return new InvalidInputException(new FieldError("/" + field, label, value, message));
    }
}
