package org.scarfwright.ledger.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.Yield.Question;
import org.scarfwright.ledger.Yield.Wanted;
import org.scarfwright.ledger.YieldFigure;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** What an address asks of the yield, as it was typed, with everything that is wrong with it. */
final class YieldQuery {
    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(9998, 12, 31);

    private final Map<String, String> typed;
    private final List<FieldError> errors = new ArrayList<>();
    private final Question question;

    YieldQuery(Map<String, String> typed) {
        this.typed = typed;
        By by = By.WEEK;
        if (!text("by").isEmpty()) {
            by = By.ofWord(text("by")).orElse(By.WEEK);
            if (By.ofWord(text("by")).isEmpty()) {
                wrong("by", "By", "is none of week, month, wood, lot, design, person");
            }
        }
        LocalDate from = day("from", "From");
        LocalDate to = day("to", "To");
        if (from != null && to != null && from.isAfter(to)) {
            wrong("to", "To", "is before the first day, " + from + "; write the same day or a later one");
        }
        this.question = new Question(by, from, to);
    }

    private void wrong(String name, String label, String message) {
        errors.add(new FieldError("/" + name, label, text(name), message));
    }

    String text(String name) {
        return typed.getOrDefault(name, "").strip();
    }

    private @Nullable LocalDate day(String name, String label) {
        String text = text(name);
        if (text.isEmpty()) {
            return null;
        }
        try {
            LocalDate day = LocalDate.parse(text);
            if (!day.isBefore(EARLIEST) && !day.isAfter(LATEST)) {
                return day;
            }
        } catch (DateTimeParseException e) {
            // Told below, as a day that is far off is.
        }
        wrong(name, label, "is not a day; write for example 2026-11-30");
        return null;
    }

    /** The input where none is named. */
    private YieldFigure figure() {
        if (text("what").isEmpty()) {
            return YieldFigure.INPUT;
        }
        return YieldFigure.ofWord(text("what")).orElseGet(() -> {
            wrong("what", "What", "is no figure of the yield; write for example parts, kerf or input");
            return YieldFigure.INPUT;
        });
    }

    /** Which line; empty for all. */
    @Nullable
    String key() {
        return typed.get("key");
    }

    /** Which rows: those of a line, a figure and an entry, all of them or beside what the plans said. */
    Wanted wanted() {
        YieldFigure figure = figure();
        String beside = text("beside");
        if (!beside.isEmpty() && !beside.equals("plan")) {
            wrong("beside", "Beside", "is nothing rows can stand beside; write plan, or leave it out");
        }
        String entry = text("entry");
        boolean number = entry.matches("[1-9]\\d{0,17}");
        if (!entry.isEmpty() && !number) {
            wrong("entry", "Entry", "is no number of an entry; write for example 57");
        }
        return new Wanted(question, key(), figure, beside.equals("plan"), number ? Long.valueOf(entry) : null);
    }

    /**
     * Whether rows are all that their plans said of the figure; else parts that were planned and spoilt are missing among them.
     */
    static boolean tellsPlanned(Wanted wanted) {
        return wanted.besidePlan() || wanted.entry() != null;
    }

    Question question() {
        return question;
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

    /** The question as an address asks it: by=week&from=2026-11-01. */
    String address() {
        StringBuilder address = new StringBuilder("by=").append(question.by().word());
        if (question.from() != null) {
            address.append("&from=").append(question.from());
        }
        if (question.to() != null) {
            address.append("&to=").append(question.to());
        }
        return address.toString();
    }

    /** What is asked of the rows as well, but for their line, which is text, and their page. */
    String address(Wanted wanted) {
        return address() + "&what=" + wanted.figure().word() + (wanted.besidePlan() ? "&beside=plan" : "")
                + (wanted.entry() == null ? "" : "&entry=" + wanted.entry());
    }
}
