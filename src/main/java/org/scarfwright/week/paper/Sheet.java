package org.scarfwright.week.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;

/** One page being drawn, in millimetres from the top left corner of its printable part. */
final class Sheet {
    /** Most printers cannot reach further out. */
    static final double MARGIN = 8;

    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final double TICK = 1.2;
    private static final Pattern STEP = Pattern.compile("([MLQZ])([^MLQZ]*)");

    /** Of capital letters over the size of the type. */
    static final double CAPITALS = 1409.0 / 2048;

    private final PDPageContentStream out;
    private final PDFont font;
    private final double width;
    private final double height;

    /** The same marks for a page of the program, in the order they were made. */
    private final List<SheetPicture.Mark> marks = new ArrayList<>();

    private StringBuilder route = new StringBuilder();

    /** Of the whole paper, in millimetres. */
    record Extent(double width, double height) {
        /** The same paper lying. */
        Extent turned() {
            return new Extent(/* width= */ height, /* height= */ width);
        }
    }

    enum Align {
        LEFT,
        MIDDLE,
        RIGHT
    }

    /** A page without margins, corrected about its middle: whatever lies on it is placed from its top left corner. */
    static Sheet whole(PDDocument document, PDPage page, PDFont font, Extent paper, Correction correction)
            throws IOException {
        return new Sheet(document, page, font, paper, correction.factor());
    }

    private Sheet(PDDocument document, PDPage page, PDFont font, Extent paper, double factor) throws IOException {
        this.font = font;
        out = new PDPageContentStream(document, page);
        width = paper.width();
        height = paper.height();
        float scale = (float) (POINTS_PER_MM * factor);
        out.transform(
                new Matrix(scale, 0, 0, scale, points(width * (1 - factor) / 2), points(height * (1 - factor) / 2)));
    }

    Sheet(PDDocument document, PDPage page, PDFont font, Extent paper, Correction correction) throws IOException {
        this.font = font;
        out = new PDPageContentStream(document, page);
        double factor = correction.factor();
        width = (paper.width() - 2 * MARGIN) / factor;
        height = (paper.height() - 2 * MARGIN) / factor;
        float scale = (float) (POINTS_PER_MM * factor);
        // One unit is a millimetre of what the paper will measure; y still counts upward and is turned over by each
        // call.
        out.transform(new Matrix(scale, 0, 0, scale, points(MARGIN), points(MARGIN)));
    }

    static float points(double mm) {
        return (float) (mm * POINTS_PER_MM);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    void line(Line kind, Spot a, Spot b) {
        draw(() -> {
            set(kind);
            move(a);
            to(b);
            paint(kind, 1, true);
        });
    }

    void outline(Line kind, List<Spot> corners) {
        draw(() -> {
            set(kind);
            path(corners);
            paint(kind, 1, true);
        });
    }

    /** @param grey 0 is black, 1 is white */
    void fill(double grey, List<Spot> corners) {
        draw(() -> {
            path(corners);
            paint(Line.HAIR, grey, false);
        });
    }

    /** Fills boxes that do not overlap, black and as one shape, so that no hair line shows where they touch. */
    void fill(List<Box> boxes) {
        draw(() -> {
            for (Box box : boxes) {
                out.addRect((float) box.x(), up(box.y() + box.height()), (float) box.width(), (float) box.height());
            }
            out.fill();
        });
    }

    void rectangle(Line kind, Spot corner, double w, double h) {
        outline(kind, List.of(corner, corner.plus(w, 0), corner.plus(w, h), corner.plus(0, h)));
    }

    /** Lines at 45° inside a rectangle. */
    void hatch(Spot corner, double w, double h, double spacing) {
        for (double c = spacing / 2; c < w + h; c += spacing) {
            Spot a = corner.plus(Math.min(c, w), Math.max(0, c - w));
            Spot b = corner.plus(Math.max(0, c - h), Math.min(c, h));
            if (a.to(b) > 0.2) {
                line(Line.HAIR, a, b);
            }
        }
    }

    /**
     * Where a drawing stands on the sheet.
     *
     * @param at where its origin comes
     * @param scale millimetres of paper for one of the drawing
     */
    record Placement(Spot at, double scale) {
        Spot of(double x, double y) {
            return new Spot(at.x() + x * scale, at.y() + y * scale);
        }
    }

    /** SVG path data of the drawings of the pages: moves, lines, quadratic curves and closings, all absolute. */
    void svg(String data, Placement place, Ink ink) {
        draw(() -> {
            set(ink.line());
            Spot here = new Spot(0, 0);
            Matcher step = STEP.matcher(data);
            while (step.find()) {
                double[] n = numbers(step.group(2));
                switch (step.group(1)) {
                    case "M" -> {
                        here = place.of(n[0], n[1]);
                        move(here);
                    }
                    case "L" -> {
                        here = place.of(n[0], n[1]);
                        to(here);
                    }
                    case "Q" -> {
                        Spot control = place.of(n[0], n[1]);
                        Spot end = place.of(n[2], n[3]);
                        curve(here, control, end);
                        here = end;
                    }
                    default -> close();
                }
            }
            paint(ink.line(), ink.grey(), ink.stroked());
        });
    }

    /**
     * How a path is drawn.
     *
     * @param grey of the fill, 0 black to 1 none; with nothing stroked, 1 is paper
     */
    record Ink(Line line, double grey, boolean stroked) {}

    /** Ends the path that was begun: with a line, a fill, or both. */
    private void paint(Line kind, double grey, boolean stroked) throws IOException {
        marks.add(SheetPicture.path(route.toString(), kind, grey, stroked));
        route = new StringBuilder();
        boolean filled = grey < 1 || !stroked;
        if (!filled) {
            out.stroke();
            return;
        }
        out.setNonStrokingColor((float) grey);
        if (stroked) {
            out.fillAndStroke();
        } else {
            out.fill();
        }
        out.setNonStrokingColor(0f);
    }

    private static double[] numbers(String text) {
        String[] parts = text.strip().split("[ ,]+", -1);
        if (parts.length == 1 && parts[0].isEmpty()) {
            return new double[0];
        }
        double[] numbers = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            numbers[i] = Double.parseDouble(parts[i]);
        }
        return numbers;
    }

    /** A quadratic curve as the cubic one it equals. */
    private void curve(Spot start, Spot control, Spot end) throws IOException {
        route.append('Q')
                .append(SheetPicture.number(control.x()))
                .append(' ')
                .append(SheetPicture.number(control.y()))
                .append(' ')
                .append(SheetPicture.number(end.x()))
                .append(' ')
                .append(SheetPicture.number(end.y()));
        out.curveTo(
                (float) (start.x() + 2 * (control.x() - start.x()) / 3),
                up(start.y() + 2 * (control.y() - start.y()) / 3),
                (float) (end.x() + 2 * (control.x() - end.x()) / 3),
                up(end.y() + 2 * (control.y() - end.y()) / 3),
                (float) end.x(),
                up(end.y()));
    }

    /**
     * One line of text.
     *
     * @param at where it stands, on its base line
     * @param size height of the type in millimetres; capitals are 0.69 of it
     */
    void text(Spot at, double size, Align align, String words) {
        turned(at, size, align, 0, words);
    }

    /** @param degrees counted against the clock */
    void turned(Spot at, double size, Align align, double degrees, String words) {
        String printable = printable(words);
        double wide = widthOf(printable, size);
        double shift = switch (align) {
            case LEFT -> 0;
            case MIDDLE -> -wide / 2;
            case RIGHT -> -wide;
        };
        double turn = Math.toRadians(degrees);
        marks.add(SheetPicture.letters(at, size, align, degrees, new SheetPicture.Words(printable, wide)));
        draw(() -> {
            out.beginText();
            out.setFont(font, (float) size);
            out.setTextMatrix(new Matrix(
                    (float) Math.cos(turn),
                    (float) Math.sin(turn),
                    (float) -Math.sin(turn),
                    (float) Math.cos(turn),
                    (float) (at.x() + shift * Math.cos(turn)),
                    up(at.y() - shift * Math.sin(turn))));
            out.showText(printable);
            out.endText();
        });
    }

    /** Breaks words to lines of at most a width; returns where the next line would stand. */
    double paragraph(Spot at, double size, double widest, String words) {
        double y = at.y();
        for (String line : lines(words, size, widest)) {
            text(new Spot(at.x(), y), size, Align.LEFT, line);
            y += size * 1.35;
        }
        return y;
    }

    List<String> lines(String words, double size, double widest) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.strip().split("\\s+", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && widthOf(longer, size) > widest) {
                lines.add(line.toString());
                line = new StringBuilder(word);
            } else {
                line = new StringBuilder(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    /** The words, cut short with an ellipsis where they are wider than there is room. */
    String fitted(String words, double size, double room) {
        if (widthOf(words, size) <= room) {
            return words;
        }
        String shorter = words;
        while (!shorter.isEmpty() && widthOf(shorter + "…", size) > room) {
            shorter = shorter.substring(0, shorter.offsetByCodePoints(shorter.length(), -1));
        }
        return shorter.stripTrailing() + "…";
    }

    double widthOf(String words, double size) {
        try {
            return font.getStringWidth(printable(words)) / 1000 * size;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the letters of the type cannot show is shown as a box, as on screens. */
    private String printable(String words) {
        StringBuilder shown = new StringBuilder();
        words.codePoints().forEach(c -> shown.append(hasLetter(c) ? Character.toString(c) : "□"));
        return shown.toString();
    }

    private boolean hasLetter(int codePoint) {
        if (Character.isISOControl(codePoint)) {
            return false;
        }
        try {
            font.encode(Character.toString(codePoint));
            return true;
        } catch (IOException | IllegalArgumentException e) {
            return false;
        }
    }

    /**
     * A dimension with its line between two spots and its figure beside the middle; both spots are where the line ends.
     *
     * @param size of the figure
     */
    void measure(Spot a, Spot b, double size, String figure) {
        measure(() -> dimension(a, b, size, figure));
    }

    /** Marks what is drawn as a dimension: its line first, then its figure. */
    void measure(Runnable dimension) {
        draw(() -> {
            out.beginMarkedContent(COSName.getPDFName("Measure"));
            dimension.run();
            out.endMarkedContent();
        });
    }

    private void dimension(Spot a, Spot b, double size, String figure) {
        line(Line.THIN, a, b);
        double length = a.to(b);
        double wayX = (b.x() - a.x()) / length;
        double wayY = (b.y() - a.y()) / length;
        for (Spot end : List.of(a, b)) {
            double dx = (wayX - wayY) * TICK / 2;
            double dy = (wayX + wayY) * TICK / 2;
            line(Line.THICK, end.plus(-dx, -dy), end.plus(dx, dy));
        }
        // The figure stands above the line, read from below or from the right.
        boolean flips = wayX < -1e-9 || (Math.abs(wayX) <= 1e-9 && wayY > 0);
        double readX = flips ? -wayX : wayX;
        double readY = flips ? -wayY : wayY;
        double degrees = -Math.toDegrees(Math.atan2(readY, readX));
        Spot middle = new Spot((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
        boolean fits = widthOf(figure, size) + 1 < length;
        if (fits) {
            turned(middle.plus(readY * 0.8, -readX * 0.8), size, Align.MIDDLE, degrees, figure);
        } else {
            Spot end = flips ? a : b;
            turned(end.plus(readX * 1.2 + readY * 0.4, readY * 1.2 - readX * 0.4), size, Align.LEFT, degrees, figure);
        }
    }

    private void set(Line kind) throws IOException {
        out.setLineWidth((float) kind.width());
        float dash = (float) kind.dash();
        out.setLineDashPattern(dash == 0 ? new float[0] : new float[] {dash, dash * 0.7f}, 0);
    }

    private void path(List<Spot> corners) throws IOException {
        move(corners.get(0));
        for (Spot corner : corners.subList(1, corners.size())) {
            to(corner);
        }
        close();
    }

    private void close() throws IOException {
        route.append('Z');
        out.closePath();
    }

    private void move(Spot s) throws IOException {
        on('M', s);
        out.moveTo((float) s.x(), up(s.y()));
    }

    private void to(Spot s) throws IOException {
        on('L', s);
        out.lineTo((float) s.x(), up(s.y()));
    }

    private void on(char step, Spot s) {
        route.append(step).append(SheetPicture.number(s.x())).append(' ').append(SheetPicture.number(s.y()));
    }

    private float up(double y) {
        return (float) (height - y);
    }

    private interface Drawing {
        void draw() throws IOException;
    }

    private static void draw(Drawing drawing) {
        try {
            drawing.draw();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    SheetPicture picture() {
        return new SheetPicture(SheetPicture.number(width), SheetPicture.number(height), List.copyOf(marks));
    }

    void finish() throws IOException {
        out.close();
    }
}
