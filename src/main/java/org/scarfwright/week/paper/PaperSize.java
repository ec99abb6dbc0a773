package org.scarfwright.week.paper;

import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** A sheet of paper, upright. Source: ISO 216 for A4; 8 1/2 in by 11 in is the North American letter (ANSI A). */
public enum PaperSize {
    A4("A4", 210, 297),
    LETTER("Letter", 215.9, 279.4);

    private final String word;
    private final double width;
    private final double height;

    PaperSize(String word, double width, double height) {
        this.word = word;
        this.width = width;
        this.height = height;
    }

    public String word() {
        return word;
    }

    /** In millimetres. */
    public double width() {
        return width;
    }

    /** In millimetres. */
    public double height() {
        return height;
    }

    /** @throws InvalidInputException naming the papers there are */
    public static PaperSize of(String typed) {
        for (PaperSize size : values()) {
            if (size.word.equalsIgnoreCase(typed.strip())) {
                return size;
            }
        }
        throw new InvalidInputException(
                new FieldError("/paper", "Paper", typed, "must be A4 or Letter, for example A4"));
    }
}
