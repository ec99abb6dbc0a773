package org.scarfwright.web;

import java.util.List;
import org.scarfwright.measure.Length;

/**
 * A piece of wood drawn as itself, to scale; see {@code templates/web/strip.html}. Everything is worked out here, in
 * millimetres of wood, y downward, so that the template only prints.
 *
 * @param id unique on the page
 * @param title what is drawn
 * @param description what a person who does not see it should know
 * @param viewBox left, top, width and height
 * @param textSize height of its lettering, in millimetres of wood
 * @param caption what the drawing does not say itself, such as the factor warp is drawn with; empty when nothing
 */
public record StripDrawing(
        String id,
        String title,
        String description,
        String viewBox,
        String textSize,
        List<Stroke> strokes,
        List<Lettering> lettering,
        String caption) {
    public StripDrawing {
        strokes = List.copyOf(strokes);
        lettering = List.copyOf(lettering);
    }

    /**
     * A path.
     *
     * @param look classes of the style sheet
     * @param data path data
     */
    public record Stroke(String look, String data) {}

    /**
     * A line of text.
     *
     * @param anchor start, middle or end
     * @param baseline auto (grows upward), central, or hanging (grows downward)
     */
    public record Lettering(String x, String y, String anchor, String baseline, String look, String text) {}

    /**
     * What one page's strips are drawn to, so that a longer piece is longer on paper too.
     *
     * @param longest length the full width of the figure stands for
     * @param thickest room kept for the end grain
     */
    public record Scale(Length longest, Length thickest) {
        /** The scale that shows all of these, or any piece alone when there are none. */
        public static Scale of(List<Strip> strips) {
            Length longest = Length.ZERO;
            Length thickest = Length.ZERO;
            for (Strip strip : strips) {
                longest = longest.max(strip.length());
                thickest = thickest.max(strip.thickness());
            }
            return new Scale(longest, thickest);
        }
    }

    /** A piece in a list: end grain and face, no dimensions. */
    public static StripDrawing row(Strip strip, Scale scale) {
        return new StripDraughting(strip, scale).row();
    }

    /** A piece on its own page: end grain, face and edge with its warp and its length. */
    public static StripDrawing piece(Strip strip) {
        return new StripDraughting(strip, Scale.of(List.of(strip))).piece();
    }

    /** A piece with parts laid on it: face, and the edge of each lane, where bevels show their slant. */
    public static StripDrawing layout(Strip strip, Scale scale) {
        return new StripDraughting(strip, scale).layout();
    }
}
