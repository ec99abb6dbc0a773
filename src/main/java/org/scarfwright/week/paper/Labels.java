package org.scarfwright.week.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.web.FieldError;

/**
 * Labels on their sheets, laid out once for the PDF and for the pages.
 *
 * @param sheet what they are printed on
 * @param first where on the first sheet to begin, counted from 1
 * @param correction of the printer, about the middle of each page
 */
public record Labels(List<Label> labels, LabelSheet sheet, int first, Correction correction) {
    /** The most labels that are printed at a time. */
    public static final int MOST = 1000;

    private static final int MISFITS_SHOWN = 5;

    public Labels {
        labels = List.copyOf(labels);
    }

    /**
     * A page as an SVG image draws it, in millimetres.
     *
     * @param turn the correction, as an SVG transform
     * @param says which labels lie on it
     */
    public record Page(String width, String height, String turn, String says, List<Drawn> labels) {}

    /**
     * A label as an SVG image draws it.
     *
     * @param dark path of the QR code's dark modules
     */
    public record Drawn(String dark, List<Text> texts) {}

    /** A line of text; length is how wide it is drawn, whatever letters the reader's machine has. */
    public record Text(String x, String y, String size, String length, String words) {}

    public int pages() {
        return (first - 1 + labels.size() + sheet.onPage() - 1) / sheet.onPage();
    }

    /** @throws IllegalStateException when {@link #faults} has any */
    public byte[] pdf() {
        try (Sheets sheets = sheets()) {
            List<Sheet> pages = new ArrayList<>();
            for (int i = 0; i < pages(); i++) {
                pages.add(page(sheets));
            }
            List<LabelDrawing> drawings = laidOut(pages.get(0));
            for (int i = 0; i < drawings.size(); i++) {
                Sheet page = pages.get((first - 1 + i) / sheet.onPage());
                Spot corner = corner(i);
                page.fill(drawings.get(i).dark(corner));
                for (LabelDrawing.Words words : drawings.get(i).words()) {
                    page.text(words.at().plus(corner.x(), corner.y()), words.size(), Sheet.Align.LEFT, words.text());
                }
            }
            return sheets.bytes();
        }
    }

    /**
     * The pages as images.
     *
     * @param most leave out what comes after so many pages
     * @throws IllegalStateException when {@link #faults} has any
     */
    public List<Page> drawn(int most) {
        try (Sheets sheets = sheets()) {
            List<LabelDrawing> drawings = laidOut(page(sheets));
            List<Page> pages = new ArrayList<>();
            for (int p = 0; p < Math.min(most, pages()); p++) {
                int from = Math.max(0, p * sheet.onPage() - (first - 1));
                int to = Math.min(drawings.size(), (p + 1) * sheet.onPage() - (first - 1));
                List<Drawn> drawn = new ArrayList<>();
                for (int i = from; i < to; i++) {
                    drawn.add(drawn(drawings.get(i), corner(i)));
                }
                pages.add(new Page(
                        number(sheet.paperWidth().mm()),
                        number(sheet.paperHeight().mm()),
                        turn(),
                        "Page " + (p + 1) + " of " + pages() + ", labels "
                                + labels.get(from).code() + " to "
                                + labels.get(to - 1).code(),
                        drawn));
            }
            return pages;
        }
    }

    /**
     * Why these labels cannot be printed: labels that do not fit, a place the sheet has not, too many at a time, a correction that
     * pushes labels off their paper.
     *
     * @param all label sheets a person could choose instead
     */
    public List<FieldError> faults(List<LabelSheet> all) {
        List<FieldError> faults = new ArrayList<>();
        if (first > sheet.onPage()) {
            faults.add(new FieldError(
                    "/first",
                    "First label",
                    Integer.toString(first),
                    "“" + first + "” is past the last label of a sheet; write 1 to " + sheet.onPage()));
        }
        if (labels.isEmpty() || labels.size() > MOST) {
            faults.add(new FieldError(
                    "/codes",
                    "Codes",
                    "",
                    labels.isEmpty()
                            ? "name no piece, and none is on the rack as asked for; add a piece or ask for others"
                            : "name more than " + MOST + " pieces; print at most so many"
                                    + " labels at a time, for example those of one place"));
        }
        if (leavesPaper()) {
            faults.add(new FieldError(
                    "/measured",
                    "What the bar of 100 mm measures",
                    Double.toString(correction.measured()),
                    "would push labels at the edge off the paper when everything is drawn larger; take a label sheet with"
                            + " wider margins, or set the printer to print at 100 %"));
        }
        if (labels.size() <= MOST) {
            misfit(all).ifPresent(faults::add);
        }
        return faults;
    }

    private Optional<FieldError> misfit(List<LabelSheet> all) {
        try (Sheets sheets = sheets()) {
            Sheet ruler = page(sheets);
            List<Label> misfits =
                    labels.stream().filter(l -> !fits(ruler, l, sheet)).toList();
            if (misfits.isEmpty()) {
                return Optional.empty();
            }
            List<String> better = all.stream()
                    .filter(s -> misfits.stream().allMatch(l -> fits(ruler, l, s)))
                    .map(s -> "“" + s.name() + "”")
                    .toList();
            List<String> shown =
                    misfits.stream().limit(MISFITS_SHOWN).map(Label::code).toList();
            int more = misfits.size() - shown.size();
            return Optional.of(new FieldError(
                    "/sheet",
                    "Label sheet",
                    sheet.code(),
                    "“" + sheet.name() + "” is too small for " + String.join(", ", shown)
                            + (more > 0 ? " and " + more + " more" : "")
                            + ", with capitals 5 mm high and a QR code of "
                            + misfits.get(0).address() + "; "
                            + (better.isEmpty()
                                    ? "add a sheet of larger labels to the shop"
                                    : "take " + String.join(" or ", better))));
        }
    }

    private static boolean fits(Sheet ruler, Label label, LabelSheet sheet) {
        return LabelLayout.of(ruler, label, sheet.width().mm(), sheet.height().mm())
                .isPresent();
    }

    private boolean leavesPaper() {
        double factor = correction.factor();
        int last = sheet.onPage() - 1;
        double left = sheet.leftOf(0).mm() + LabelLayout.EDGE;
        double right = sheet.leftOf(last).mm() + sheet.width().mm() - LabelLayout.EDGE;
        double top = sheet.topOf(0).mm() + LabelLayout.EDGE;
        double bottom = sheet.topOf(last).mm() + sheet.height().mm() - LabelLayout.EDGE;
        double halfWidth = sheet.paperWidth().mm() / 2;
        double halfHeight = sheet.paperHeight().mm() / 2;
        return Math.max(halfWidth - left, right - halfWidth) * factor > halfWidth
                || Math.max(halfHeight - top, bottom - halfHeight) * factor > halfHeight;
    }

    private List<LabelDrawing> laidOut(Sheet ruler) {
        return labels.stream()
                .map(l -> LabelLayout.of(
                                ruler, l, sheet.width().mm(), sheet.height().mm())
                        .orElseThrow(() -> new IllegalStateException(l.code() + " does not fit " + sheet.name())))
                .toList();
    }

    private Spot corner(int label) {
        int place = (first - 1 + label) % sheet.onPage();
        return new Spot(sheet.leftOf(place).mm(), sheet.topOf(place).mm());
    }

    private String turn() {
        double factor = correction.factor();
        return "translate(" + number(sheet.paperWidth().mm() * (1 - factor) / 2) + " "
                + number(sheet.paperHeight().mm() * (1 - factor) / 2) + ") scale(" + factor + ")";
    }

    private static Drawn drawn(LabelDrawing drawing, Spot corner) {
        StringBuilder dark = new StringBuilder();
        for (Box box : drawing.dark(corner)) {
            dark.append('M')
                    .append(number(box.x()))
                    .append(' ')
                    .append(number(box.y()))
                    .append('h')
                    .append(number(box.width()))
                    .append('v')
                    .append(number(box.height()))
                    .append('h')
                    .append(number(-box.width()))
                    .append('z');
        }
        return new Drawn(
                dark.toString(),
                drawing.words().stream()
                        .map(w -> new Text(
                                number(corner.x() + w.at().x()),
                                number(corner.y() + w.at().y()),
                                number(w.size()),
                                number(w.width()),
                                w.text()))
                        .toList());
    }

    private static String number(double mm) {
        return String.format(Locale.ROOT, "%.3f", mm);
    }

    private Sheets sheets() {
        PaperSize size = sheet.paper() == LabelPaper.LETTER ? PaperSize.LETTER : PaperSize.A4;
        return new Sheets(size, correction, "Labels");
    }

    private Sheet page(Sheets sheets) {
        return sheets.whole(sheet.paperWidth().mm(), sheet.paperHeight().mm());
    }
}
