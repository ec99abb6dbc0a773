package org.scarfwright.shop;

import org.scarfwright.measure.Length;

/** What labels come on. Source: ISO 216 for A4; 8 1/2 in by 11 in is the North American letter (ANSI A). */
public enum LabelPaper {
    A4("A4", 210_000, 297_000),
    LETTER("Letter", 215_900, 279_400),
    /** Every label is a page of its own, as in a label printer. */
    SINGLE("single", 0, 0);

    private final String word;
    private final long widthUm;
    private final long heightUm;

    LabelPaper(String word, long widthUm, long heightUm) {
        this.word = word;
        this.widthUm = widthUm;
        this.heightUm = heightUm;
    }

    public String word() {
        return word;
    }

    /** Of the upright paper; nothing for single labels, which are their own paper. */
    Length width() {
        return Length.ofUm(widthUm);
    }

    /** Of the upright paper; nothing for single labels, which are their own paper. */
    Length height() {
        return Length.ofUm(heightUm);
    }
}
