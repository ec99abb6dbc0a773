package org.scarfwright.week.paper;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Lays out a label: the QR code, the code of the piece as large as there is room for and never with capitals below
 * {@link #LEAST_CAPITALS}, and in small type its size, wood and place.
 *
 * <p>Of the ways to do it the first that fits is taken: a code on one line before one broken into two or three, everything said
 * in full before anything cut short, larger modules before smaller ones, the code beside the QR code before below it.
 */
final class LabelLayout {
    /** Height of the code's capitals in millimetres; a hair more than 5, so that rounding never makes it less. */
    static final double LEAST_CAPITALS = 5.02;

    /** What stays white along the label's edge: labels are not printed to the tenth of a millimetre. */
    static final double EDGE = 1;

    private static final double LARGEST_CAPITALS = 8;

    /** Modules below three dots blur on many label printers; common practice. Larger than five gains nothing at arm's length. */
    private static final int LEAST_DOTS = 3;

    private static final int MOST_DOTS = 5;

    private static final int MOST_CODE_LINES = 3;
    private static final double SMALLEST_TYPE = 2.3;
    private static final double LARGEST_TYPE = 3.4;
    private static final double LINE = 1.2;
    private static final double CODE_LINE = 1.3;
    private static final double GAP = 0.9;
    private static final double BASE = 0.93;

    /** The square may move to the printer's next whole dot, and round letters reach a little past capitals. */
    private static final double AROUND = QrSquare.DOT + 0.2;

    private final Sheet ruler;
    private final Label label;
    private final QrSquare qr;

    private LabelLayout(Sheet ruler, Label label) {
        this.ruler = ruler;
        this.label = label;
        qr = QrSquare.of(label.address());
    }

    /** @return empty when the code or the QR code does not fit */
    static Optional<LabelDrawing> of(Sheet ruler, Label label, double width, double height) {
        LabelLayout layout = new LabelLayout(ruler, label);
        for (int lines = 1; lines <= Math.min(MOST_CODE_LINES, label.code().length()); lines++) {
            List<String> code = broken(label.code(), lines);
            for (boolean cut : new boolean[] {false, true}) {
                for (int dots = MOST_DOTS; dots >= LEAST_DOTS; dots--) {
                    for (boolean beside : new boolean[] {true, false}) {
                        Room room = layout.room(beside, dots, width, height);
                        LabelDrawing drawing = room == null ? null : layout.drawn(room, code, cut);
                        if (drawing != null) {
                            return Optional.of(drawing);
                        }
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Where the QR code stands and what is left for words. */
    private record Room(int dots, Spot square, Box words) {}

    private @Nullable Room room(boolean beside, int dots, double width, double height) {
        double side = qr.side(dots) + AROUND;
        double wide = width - 2 * EDGE;
        double high = height - 2 * EDGE;
        if (side > wide || side > high) {
            return null;
        }
        return beside
                ? new Room(
                        dots, new Spot(EDGE, EDGE + (high - side) / 2), new Box(EDGE + side, EDGE, wide - side, high))
                : new Room(
                        dots, new Spot(EDGE + (wide - side) / 2, EDGE), new Box(EDGE, EDGE + side, wide, high - side));
    }

    private @Nullable LabelDrawing drawn(Room room, List<String> code, boolean cut) {
        double widest =
                code.stream().mapToDouble(l -> ruler.widthOf(l, 1)).max().orElse(1) / Sheet.CAPITALS;
        double capitals = Math.min(LARGEST_CAPITALS, room.words().width() / widest);
        if (capitals < LEAST_CAPITALS) {
            return null;
        }
        double left = room.words().height() - high(code, LEAST_CAPITALS) - GAP;
        Small small =
                cut ? shortened(room.words().width(), left) : whole(room.words().width(), left);
        if (small == null) {
            return null;
        }
        capitals = Math.min(capitals, LEAST_CAPITALS + (left - small.high()) / (1 + CODE_LINE * (code.size() - 1)));
        double all = high(code, capitals) + GAP + small.high();
        double y = room.words().y() + Math.max(0, (room.words().height() - all) / 2);
        List<LabelDrawing.Words> words = new ArrayList<>();
        for (int i = 0; i < code.size(); i++) {
            words.add(words(
                    new Spot(room.words().x(), y + capitals + i * CODE_LINE * capitals),
                    capitals / Sheet.CAPITALS,
                    code.get(i)));
        }
        y += high(code, capitals) + GAP;
        for (String line : small.lines()) {
            words.add(words(new Spot(room.words().x(), y + BASE * small.size()), small.size(), line));
            y += LINE * small.size();
        }
        return new LabelDrawing(qr, room.square(), room.dots(), words);
    }

    private LabelDrawing.Words words(Spot at, double size, String text) {
        return new LabelDrawing.Words(at, size, text, ruler.widthOf(text, size));
    }

    private static double high(List<String> code, double capitals) {
        return capitals * (1 + CODE_LINE * (code.size() - 1));
    }

    /** Size, wood and place in one size of type. */
    private record Small(double size, List<String> lines) {
        double high() {
            return lines.size() * LINE * size;
        }
    }

    private List<String> texts() {
        return Stream.of(label.size(), label.wood(), label.place())
                .filter(t -> !t.isEmpty())
                .toList();
    }

    /** Everything in full, in the largest type that holds it. */
    private @Nullable Small whole(double width, double height) {
        for (double size = LARGEST_TYPE; size > SMALLEST_TYPE - 0.01; size -= 0.1) {
            double type = size;
            List<String> lines = texts().stream()
                    .flatMap(t -> ruler.lines(t, type, width).stream())
                    .toList();
            Small small = new Small(type, lines);
            if (small.high() <= height && lines.stream().allMatch(l -> ruler.widthOf(l, type) <= width)) {
                return small;
            }
        }
        return null;
    }

    /** In the smallest type, what is too long cut with an ellipsis: the size gets the lines to spare first, then wood and place. */
    private @Nullable Small shortened(double width, double height) {
        List<String> texts = texts();
        int spare = (int) Math.floor(height / (LINE * SMALLEST_TYPE)) - texts.size();
        if (spare < 0) {
            return null;
        }
        List<String> lines = new ArrayList<>();
        for (String text : texts) {
            List<String> all = new ArrayList<>(ruler.lines(text, SMALLEST_TYPE, width));
            int more = Math.min(spare, all.size() - 1);
            spare -= more;
            lines.addAll(all.subList(0, more).stream()
                    .map(l -> ruler.fitted(l, SMALLEST_TYPE, width))
                    .toList());
            lines.add(ruler.fitted(String.join(" ", all.subList(more, all.size())), SMALLEST_TYPE, width));
        }
        return new Small(SMALLEST_TYPE, Collections.unmodifiableList(lines));
    }

    /** The code in so many lines, broken after a hyphen where that is as good. */
    private static List<String> broken(String code, int lines) {
        if (lines == 1) {
            return List.of(code);
        }
        int most = (code.length() + lines - 1) / lines;
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int line = 0; line < lines && from < code.length(); line++) {
            int to = Math.min(code.length(), from + most);
            int hyphen = code.lastIndexOf('-', to - 1) + 1;
            boolean restFits = code.length() - hyphen <= most * (lines - line - 1);
            int end = hyphen > from && hyphen < to && to < code.length() && restFits ? hyphen : to;
            parts.add(code.substring(from, end));
            from = end;
        }
        return parts;
    }
}
