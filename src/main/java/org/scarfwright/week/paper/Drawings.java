package org.scarfwright.week.paper;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.week.paper.Sheet.Align;
import org.scarfwright.week.paper.Sheet.Ink;
import org.scarfwright.week.paper.Sheet.Placement;

/** Puts the drawings of the pages on paper: the same lines, in ink. */
final class Drawings {
    private static final Ink THICK = new Ink(Line.THICK, 1, true);
    private static final Ink THIN = new Ink(Line.THIN, 1, true);
    private static final Ink HAIR = new Ink(Line.HAIR, 1, true);
    private static final Ink DASHED = new Ink(Line.DASHED, 1, true);
    private static final Ink PAPER = new Ink(Line.HAIR, 1, false);

    /** Lettering on paper, whatever the scale. */
    private static final double LETTERS = 2.8;

    private Drawings() {}

    /** What an SVG viewBox says. */
    record Box(double left, double top, double width, double height) {
        static Box of(String viewBox) {
            String[] n = viewBox.split(" ", -1);
            return new Box(
                    Double.parseDouble(n[0]),
                    Double.parseDouble(n[1]),
                    Double.parseDouble(n[2]),
                    Double.parseDouble(n[3]));
        }
    }

    /** The strip without its own dimension line, whose figure would be too small; the sheet writes its own. */
    static void strip(Sheet sheet, StripDrawing drawing, Placement place) {
        for (StripDrawing.Stroke stroke : drawing.strokes()) {
            if (!stroke.look().equals("d-dim")) {
                sheet.svg(stroke.data(), place, inkOf(stroke.look()));
            }
        }
        for (StripDrawing.Lettering l : drawing.lettering()) {
            // Of the two letterings of a part, the short one for narrow figures is left away.
            if (l.look().contains("d-soft") || l.look().contains("d-narrow")) {
                continue;
            }
            Spot at = place.of(Double.parseDouble(l.x()), Double.parseDouble(l.y()));
            double half = sheet.widthOf(l.text(), LETTERS) / 2;
            double drop = LETTERS * Sheet.CAPITALS / 2;
            sheet.fill(
                    1,
                    List.of(
                            at.plus(-half - 0.6, -drop - 0.7), at.plus(half + 0.6, -drop - 0.7),
                            at.plus(half + 0.6, drop + 0.7), at.plus(-half - 0.6, drop + 0.7)));
            sheet.text(at.plus(0, drop), LETTERS, Align.MIDDLE, l.text());
        }
    }

    static void joint(Sheet sheet, JointDrawing drawing, Placement place) {
        for (JointDrawing.Area area : drawing.areas()) {
            String data = "M" + area.points().replace(" ", " L") + " Z";
            sheet.svg(data, place, inkOf(area.style()));
        }
        Set<String> measures = drawing.labels().stream()
                .map(JointDrawing.Label::measures)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        for (JointDrawing.Path path : drawing.paths()) {
            if (measures.contains(path.d())) {
                continue; // drawn with its figure below
            }
            sheet.svg(path.d(), place, inkOf(path.style()));
        }
        for (JointDrawing.Label label : drawing.labels()) {
            String line = label.measures();
            if (line == null) {
                label(sheet, label, place);
            } else {
                sheet.measure(() -> {
                    sheet.svg(line, place, THIN);
                    label(sheet, label, place);
                });
            }
        }
    }

    private static void label(Sheet sheet, JointDrawing.Label label, Placement place) {
        String words = label.letter() == null ? label.value() : label.letter() + " " + label.value();
        double degrees = label.turn() == null
                ? 0
                : -Double.parseDouble(firstWord(label.turn().substring("rotate(".length())));
        sheet.turned(
                place.of(Double.parseDouble(label.x()), Double.parseDouble(label.y())),
                LETTERS,
                switch (label.anchor()) {
                    case "middle" -> Align.MIDDLE;
                    case "end" -> Align.RIGHT;
                    default -> Align.LEFT;
                },
                degrees,
                words);
    }

    private static String firstWord(String words) {
        int space = words.indexOf(' ');
        return space < 0 ? words : words.substring(0, space);
    }

    private static Ink inkOf(String look) {
        String kind = firstWord(look);
        return switch (kind) {
            case "wood", "d-paper" -> PAPER;
            case "d-neck", "d-head" -> THICK;
            case "d-wing" -> DASHED;
            case "d-ink" -> new Ink(Line.THIN, 0, true);
            case "d-thick", "d-glue" -> THICK;
            case "d-rest", "d-hidden" -> DASHED;
            case "grain", "d-grain", "d-waste" -> HAIR;
            default -> THIN;
        };
    }
}
