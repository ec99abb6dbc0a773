package org.scarfwright.matching.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** The sizes of a blank as text. */
record BlankForm(
        @Nullable String blankLength,
        @Nullable String blankWidth,
        @Nullable String blankThickness) {
    private static final Length LONGEST = Length.ofMm(6000);
    private static final Length WIDEST = Length.ofMm(1200);
    private static final Length THICKEST = Length.ofMm(300);

    /** Length, width and thickness. */
    record Sizes(Length length, Length width, Length thickness) {}

    boolean isEmpty() {
        return text(blankLength).isEmpty()
                && text(blankWidth).isEmpty()
                && text(blankThickness).isEmpty();
    }

    /** @throws InvalidInputException naming every size that is missing or wrong */
    Sizes read(LengthUnit usual) {
        List<FieldError> errors = new ArrayList<>();
        Length length = size("blankLength", "Length", blankLength, new Range(usual, LONGEST, errors));
        Length width = size("blankWidth", "Width", blankWidth, new Range(usual, WIDEST, errors));
        Length thickness = size("blankThickness", "Thickness", blankThickness, new Range(usual, THICKEST, errors));
        if (!errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return new Sizes(length, width, thickness);
    }

    private record Range(LengthUnit usual, Length most, List<FieldError> errors) {}

    private static Length size(String field, String label, @Nullable String typed, Range range) {
        String text = text(typed);
        String wrong;
        try {
            Length length = LengthParser.parse(text, range.usual());
            if (length.isPositive() && !length.isLongerThan(range.most())) {
                return length;
            }
            wrong = "“" + text + "” is not between 0 and " + range.most() + "; write for example 22";
        } catch (MeasureFormatException e) {
            wrong = text.isEmpty() ? "is missing; write for example 700" : "is not right: " + e.getMessage();
        }
        range.errors().add(new FieldError("/" + field, label, text, wrong));
        return Length.ZERO;
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }
}
