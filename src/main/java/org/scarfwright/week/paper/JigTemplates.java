package org.scarfwright.week.paper;

import java.util.List;
import java.util.Locale;
import org.scarfwright.joint.JigWedge;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.week.paper.Sheet.Align;

/** The wedge of each saw set-up at 1 : 1, over several sheets where it is longer than one, to be cut out and joined. */
public final class JigTemplates {
    private static final double FIGURE = 2.8;
    /** What two neighbouring sheets share, so that they can be laid on each other. */
    private static final double OVERLAP = 12;

    private JigTemplates() {}

    /** As a PDF: every set-up of the plan. */
    public static byte[] pdf(PlanOnPaper plan, PaperSize size, Correction correction) {
        try (Sheets sheets = written(plan, size, correction)) {
            return sheets.bytes();
        }
    }

    /** The same sheets for a page that a browser prints. */
    public static List<SheetPicture> pictures(PlanOnPaper plan, PaperSize size, Correction correction) {
        try (Sheets sheets = written(plan, size, correction)) {
            return sheets.pictures();
        }
    }

    private static Sheets written(PlanOnPaper plan, PaperSize size, Correction correction) {
        Sheets sheets = new Sheets(
                size, correction, "Jig templates of plan " + plan.plan().id());
        List<PlanOnPaper.SetUp> setUps = plan.setUps();
        LengthFormat format = new LengthFormat(plan.unit(), Locale.ROOT);
        for (PlanOnPaper.SetUp s : setUps) {
            write(
                    sheets,
                    JigWedge.backing(s.sawnThickness(), s.angle()),
                    plan.unit(),
                    plan.sawName(s.saw()) + ", pieces " + format.print(s.sawnThickness()) + " thick");
        }
        if (setUps.isEmpty()) {
            sheets.upright()
                    .text(new Spot(0, 10), 4, Align.LEFT, "This plan has no bevel, so there is no wedge to print.");
        }
        return sheets;
    }

    /**
     * As a PDF: one wedge.
     *
     * @param angle above 0° and below 45°
     */
    public static byte[] pdf(
            Angle angle, Length sawnThickness, LengthUnit unit, PaperSize size, Correction correction) {
        try (Sheets sheets = new Sheets(size, correction, "Jig template for " + angle)) {
            write(
                    sheets,
                    JigWedge.backing(sawnThickness, angle),
                    unit,
                    "pieces " + new LengthFormat(unit, Locale.ROOT).print(sawnThickness) + " thick");
            return sheets.bytes();
        }
    }

    private static void write(Sheets sheets, JigWedge wedge, LengthUnit unit, String forWhat) {
        double base = wedge.base().mm();
        double done = 0;
        int part = 1;
        boolean goesOn;
        do {
            Sheet sheet = sheets.lying();
            double left = 2;
            double room = sheet.width() - 2 * left - 8;
            double here = Math.min(base - done, room);
            goesOn = done + here < base - 1e-6;
            sheetOf(sheet, new Stretch(wedge, unit, done, here, part), forWhat, left, goesOn || part > 1);
            done += goesOn ? here - OVERLAP : here;
            part++;
        } while (goesOn);
    }

    /**
     * What of a wedge one sheet shows.
     *
     * @param from how far from its thin end, in millimetres
     * @param length of it
     */
    private record Stretch(JigWedge wedge, LengthUnit unit, double from, double length, int part) {}

    private static void sheetOf(Sheet sheet, Stretch s, String forWhat, double left, boolean parted) {
        LengthFormat format = new LengthFormat(s.unit(), Locale.ROOT);
        JigWedge wedge = s.wedge();
        double rise = wedge.rise().mm();
        double base = wedge.base().mm();
        sheet.text(new Spot(0, 6), 6, Align.LEFT, "Jig wedge " + wedge.angle() + (parted ? ", part " + s.part() : ""));
        double y = sheet.paragraph(
                new Spot(0, 12),
                3.2,
                sheet.width(),
                "For " + forWhat + ". True to scale, 1 : 1. Base " + format.print(wedge.base()) + ", thick end "
                        + format.print(wedge.rise()) + ", sloping face " + format.print(wedge.face())
                        + ". Glue the sheet to a board, saw beside the line and plane to it, then check the angle with a test cut in "
                        + "scrap: a wedge off by " + format.print(Length.ofUm(500)) + " at its thick end is off by "
                        + wedge.angleOff(Length.ofUm(500)) + "."
                        + (parted
                                ? " Lay the sheets on each other so that the left end of each meets the dashed line before it."
                                : ""));
        double bottom = Math.max(y + 8 + rise, sheet.height() - 40);
        double step = rise / base;
        Spot thin = new Spot(left, bottom);
        double risesTo = (s.from() + s.length()) * step;
        double risesFrom = s.from() * step;
        // The sloping edge passes over the base line at the stretch's own heights.
        List<Spot> outline =
                List.of(thin, thin.plus(s.length(), 0), thin.plus(s.length(), -risesTo), thin.plus(0, -risesFrom));
        sheet.outline(Line.THIN, outline);
        boolean first = s.from() < 1e-9;
        boolean last = s.from() + s.length() > base - 1e-6;
        if (first && last) {
            sheet.measure(thin.plus(0, 7), thin.plus(base, 7), FIGURE, format.number(wedge.base()));
        } else {
            sheet.measure(
                    thin.plus(0, 7), thin.plus(s.length(), 7), FIGURE, format.number(Length.nearestMm(s.length())));
            if (!first) {
                mark(sheet, thin.plus(OVERLAP, 0), risesFrom + OVERLAP * step);
            }
            if (!last) {
                mark(sheet, thin.plus(s.length() - OVERLAP, 0), risesTo - OVERLAP * step);
            }
        }
        if (last) {
            sheet.measure(
                    thin.plus(s.length() + 4, 0),
                    thin.plus(s.length() + 4, -rise),
                    FIGURE,
                    format.number(wedge.rise()));
        }
        bars(sheet);
    }

    /** Where the neighbouring sheet is laid on: a line across the wedge at the same place of both sheets. */
    private static void mark(Sheet sheet, Spot at, double height) {
        sheet.line(Line.DASHED, at.plus(0, 3), at.plus(0, -height - 3));
    }

    private static void bars(Sheet sheet) {
        double base = sheet.height() - 8;
        sheet.measure(new Spot(0, base), new Spot(100, base), 2.6, "100 mm");
        sheet.measure(new Spot(110, base), new Spot(211.6, base), 2.6, "4 in");
        sheet.text(
                new Spot(0, base + 6),
                2.4,
                Align.LEFT,
                "Print at 100 %. If the bar of 100 mm measures otherwise, type what it measures and print again. The saw’s manual, "
                        + "local rules and licensed practice come before any jig.");
    }
}
