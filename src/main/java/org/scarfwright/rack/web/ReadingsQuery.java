package org.scarfwright.rack.web;

import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.ReadingTrend;
import org.scarfwright.rack.ReadingTrend.Measure;
import org.scarfwright.rack.ReadingTrend.Question;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** What an address asks of the readings, as it was typed, with everything that is wrong with it. */
final class ReadingsQuery {
    private final Map<String, String> typed;
    private final List<FieldError> errors = new ArrayList<>();
    private final Question question;
    private final @Nullable YearMonth month;

    ReadingsQuery(Map<String, String> typed, ReadingTrend trend, Rack rack) {
        this.typed = typed;
        Measure measure = Measure.MOISTURE;
        if (!text("what").isEmpty()) {
            String word = text("what").toUpperCase(Locale.ROOT);
            if (Stream.of(Measure.values()).anyMatch(m -> m.name().equals(word))) {
                measure = Measure.valueOf(word);
            } else {
                wrong("what", "What", "is none of " + words());
            }
        }
        String wood = text("wood");
        if (!wood.isEmpty() && trend.woods().stream().noneMatch(w -> w.id().equals(wood))) {
            wrong("wood", "Wood", "is no wood any piece is of; choose one of the list");
        }
        String lot = text("lot");
        if (!lot.isEmpty() && trend.lot(lot).isEmpty()) {
            wrong("lot", "Lot", "is no lot on the rack; write it as a piece’s page shows it");
        }
        String piece = text("piece").toUpperCase(Locale.ROOT);
        if (!piece.isEmpty() && rack.find(piece).isEmpty()) {
            wrong("piece", "Piece", "is no piece’s code; write for example M-14");
        }
        this.question = new Question(
                measure,
                wood.isEmpty() ? null : wood,
                lot.isEmpty() ? null : trend.lot(lot).orElse(lot),
                piece.isEmpty() ? null : piece);
        this.month = readMonth();
    }

    private @Nullable YearMonth readMonth() {
        String text = text("month");
        if (text.isEmpty()) {
            return null;
        }
        try {
            YearMonth read = YearMonth.parse(text);
            if (read.getYear() >= 1900 && read.getYear() <= 9998) {
                return read;
            }
        } catch (DateTimeException e) {
            // Told below, as a month that is far off is.
        }
        wrong("month", "Month", "is not a month; write for example 2026-11");
        return null;
    }

    private static String words() {
        return Stream.of(Measure.values())
                .map(m -> m.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
    }

    private void wrong(String name, String label, String message) {
        errors.add(new FieldError("/" + name, label, text(name), "“" + shown(text(name)) + "” " + message));
    }

    private static String shown(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }

    String text(String name) {
        return typed.getOrDefault(name, "").strip();
    }

    Question question() {
        return question;
    }

    @Nullable
    YearMonth month() {
        return month;
    }

    List<FieldError> errors() {
        return List.copyOf(errors);
    }

    /** @throws InvalidInputException when anything is wrong */
    void check() {
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
    }
}
