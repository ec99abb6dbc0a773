package org.scarfwright.necks.book;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.web.NearWords;

/** Reads an order. Which designs there are is told to it. */
final class OrderReader {
    static final int LONGEST_CODE = 40;
    static final int LONGEST_NOTE = 500;
    static final int USUAL_PRIORITY = 5;

    private static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(2999, 12, 31);
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ISO_LOCAL_DATE.withResolverStyle(ResolverStyle.STRICT);

    private final Collection<String> designs;

    OrderReader(Collection<String> designs) {
        this.designs = designs;
    }

    /** An order without a code comes back with an empty one. */
    Reading<NeckOrder> read(Draft draft) {
        DraftReader in = new DraftReader(draft);
        Optional<String> code = in.text(OrderField.CODE).isEmpty()
                ? Optional.of("")
                : in.code(OrderField.CODE, LONGEST_CODE, "A-101, or leave it empty");
        Optional<String> design = design(in);
        Optional<Integer> quantity = in.whole(OrderField.QUANTITY, 1, 999, Optional.empty());
        Optional<LocalDate> due = due(in);
        Optional<Integer> priority = in.whole(OrderField.PRIORITY, 1, 9, Optional.of(USUAL_PRIORITY));
        Optional<IsoWeek> week = week(in, due);
        Optional<String> note = in.words(OrderField.NOTE, LONGEST_NOTE);
        if (!in.isSound()) {
            return Reading.refused(in.flaws());
        }
        return Reading.of(new NeckOrder(
                0,
                0,
                code.orElseThrow(),
                design.orElseThrow(),
                quantity.orElseThrow(),
                due.orElseThrow(),
                priority.orElseThrow(),
                week.orElseThrow(),
                note.orElseThrow()));
    }

    private Optional<String> design(DraftReader in) {
        String code = DraftReader.plainCode(in.text(OrderField.DESIGN));
        if (code.isEmpty()) {
            in.flaw(
                    OrderField.DESIGN,
                    "is empty; an order needs the code of a design"
                            + (designs.isEmpty() ? ", and there is no design yet" : ", for example " + firstDesign()));
            return Optional.empty();
        }
        if (designs.contains(code)) {
            return Optional.of(code);
        }
        List<String> near = NearWords.of(code, designs, 3);
        String right;
        if (designs.isEmpty()) {
            right = "there is no design yet; enter it first";
        } else if (near.isEmpty()) {
            right = "enter the design first, or write one there is, for example " + firstDesign();
        } else {
            right = "did you mean " + String.join(" or ", near) + "?";
        }
        in.flaw(OrderField.DESIGN, DraftReader.quote(in.text(OrderField.DESIGN)) + " is no design; " + right);
        return Optional.empty();
    }

    private String firstDesign() {
        return designs.stream().sorted().findFirst().orElse("");
    }

    private static Optional<LocalDate> due(DraftReader in) {
        String text = in.text(OrderField.DUE);
        if (text.isEmpty()) {
            in.flaw(OrderField.DUE, "is empty; write a day as year-month-day, for example 2026-12-04");
            return Optional.empty();
        }
        try {
            LocalDate day = LocalDate.parse(text, DAY);
            if (day.isBefore(EARLIEST) || day.isAfter(LATEST)) {
                in.flaw(OrderField.DUE, "is " + text + "; it lies between " + EARLIEST + " and " + LATEST);
                return Optional.empty();
            }
            return Optional.of(day);
        } catch (DateTimeParseException e) {
            in.flaw(
                    OrderField.DUE,
                    DraftReader.quote(text)
                            + " is not a day of the calendar; write year-month-day, for example 2026-12-04");
            return Optional.empty();
        }
    }

    private static Optional<IsoWeek> week(DraftReader in, Optional<LocalDate> due) {
        String text = in.text(OrderField.WEEK);
        if (text.isEmpty()) {
            return due.map(IsoWeek::of);
        }
        try {
            return Optional.of(IsoWeek.parse(text));
        } catch (MeasureFormatException e) {
            in.flaw(OrderField.WEEK, text, asContinuation(String.valueOf(e.getMessage())));
            return Optional.empty();
        }
    }

    /** Sentences about a year begin with it: "The year 2027 has no week 53". */
    private static String asContinuation(String message) {
        return message.startsWith("The year") ? "is not there: t" + message.substring(1) : message;
    }
}
