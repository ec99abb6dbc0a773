package org.scarfwright.week.paper;

import java.util.List;
import org.scarfwright.week.paper.Sheet.Align;

/** Lays text, tables and figures one below the other, and goes on to a new sheet where one is full. */
final class Flow {
    static final double BODY = 3.4;
    private static final double LEAD = 1.45;
    /** The bars of 100 mm and 4 in, and the sheet's number. */
    private static final double FOOT = 17;

    private final Sheets sheets;
    private final String head;
    private final String foot;
    private Sheet sheet;
    private double y;

    /**
     * @param head what stands large at the top of every sheet, such as a piece's code
     * @param foot what stands small at the bottom
     */
    Flow(Sheets sheets, String head, String foot) {
        this.sheets = sheets;
        this.head = head;
        this.foot = foot;
        this.sheet = begin(head);
    }

    private Sheet begin(String title) {
        sheet = sheets.upright();
        bars();
        sheet.text(new Spot(0, 7), 8, Align.LEFT, sheet.fitted(title, 8, sheet.width()));
        sheet.line(Line.THICK, new Spot(0, 9.5), new Spot(sheet.width(), 9.5));
        y = 14;
        return sheet;
    }

    /** What tells a person whether the sheet was printed true to scale, and by how much it was not. */
    private void bars() {
        double base = sheet.height() - 6;
        sheet.measure(new Spot(0, base), new Spot(100, base), 2.6, "100 mm");
        sheet.measure(new Spot(0, base - 7), new Spot(101.6, base - 7), 2.6, "4 in");
        sheet.text(
                new Spot(106, base - 6), 2.4, Align.LEFT, "Print at 100 %. If the bar of 100 mm measures otherwise,");
        sheet.text(new Spot(106, base - 2.5), 2.4, Align.LEFT, "type what it measures and print again.");
        sheet.text(new Spot(sheet.width(), base + 5), 2.4, Align.RIGHT, foot + " · sheet " + sheets.count());
    }

    Sheet sheet() {
        return sheet;
    }

    double y() {
        return y;
    }

    double width() {
        return sheet.width();
    }

    /** Room for something this high, on a new sheet where this one has none. */
    void need(double height) {
        if (y + height > sheet.height() - FOOT && y > 15) {
            begin(head + ", continued");
        }
    }

    void down(double by) {
        y += by;
    }

    void heading(String words) {
        need(14);
        y += 3;
        sheet.text(new Spot(0, y), 4.4, Align.LEFT, words);
        y += 5.5;
    }

    void words(String words) {
        for (String line : sheet.lines(words, BODY, sheet.width())) {
            need(BODY * LEAD);
            sheet.text(new Spot(0, y), BODY, Align.LEFT, line);
            y += BODY * LEAD;
        }
    }

    /** What a figure shows and at which scale, in small type above it. */
    void note(String words) {
        y = sheet.paragraph(new Spot(0, y), 2.8, sheet.width(), words);
    }

    /** Numbered, with a box to tick. */
    void step(int number, String words) {
        List<String> lines = sheet.lines(words, BODY, sheet.width() - 13);
        need(lines.size() * BODY * LEAD + 1);
        sheet.rectangle(Line.THIN, new Spot(0, y - 3), 3.4, 3.4);
        sheet.text(new Spot(10.5, y), BODY, Align.RIGHT, number + ".");
        for (String line : lines) {
            sheet.text(new Spot(13, y), BODY, Align.LEFT, line);
            y += BODY * LEAD;
        }
        y += 0.8;
    }

    /** A caution, in a box that is kept on one sheet. */
    void caution(String words) {
        List<String> lines = sheet.lines(words, BODY, sheet.width() - 8);
        double height = lines.size() * BODY * LEAD + 4;
        y += 2;
        need(height + 3);
        sheet.rectangle(Line.THICK, new Spot(0, y - 3), sheet.width(), height);
        double at = y + 1.6;
        for (String line : lines) {
            sheet.text(new Spot(4, at), BODY, Align.LEFT, line);
            at += BODY * LEAD;
        }
        y += height + 3;
    }

    /** @param shares of the width, one for each column; the first column stands left, the others right */
    void table(List<Double> shares, List<List<String>> rows) {
        for (int r = 0; r < rows.size(); r++) {
            need(BODY * 1.7);
            double right = 0;
            for (int c = 0; c < shares.size(); c++) {
                double w = shares.get(c) * sheet.width();
                right += w;
                String cell = sheet.fitted(rows.get(r).get(c), BODY, w - 1.5);
                sheet.text(new Spot(c == 0 ? right - w : right - 1, y), BODY, c == 0 ? Align.LEFT : Align.RIGHT, cell);
            }
            sheet.line(r == 0 ? Line.THIN : Line.HAIR, new Spot(0, y + 1.4), new Spot(sheet.width(), y + 1.4));
            y += BODY * 1.7;
        }
        y += 1.5;
    }
}
