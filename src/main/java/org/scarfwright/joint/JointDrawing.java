package org.scarfwright.joint;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;

/**
 * A drawing of a joint as SVG needs it, in millimetres of wood: every number is a string, so that a template only puts it in its
 * place.
 *
 * @param title names the drawing
 * @param description the same for those who cannot see it, with its numbers
 * @param viewBox of the svg element
 * @param fontSize of the svg element; text grows from it where the figure is narrow
 * @param areas filled outlines, from back to front
 * @param paths lines
 * @param labels texts
 */
public record JointDrawing(
        String title,
        String description,
        String viewBox,
        String fontSize,
        List<Area> areas,
        List<Path> paths,
        List<Label> labels) {
    public JointDrawing {
        areas = List.copyOf(areas);
        paths = List.copyOf(paths);
        labels = List.copyOf(labels);
    }

    /**
     * A filled outline.
     *
     * @param style class of the design system
     * @param points for an svg polygon
     */
    public record Area(String style, String points) {}

    /**
     * Lines.
     *
     * @param style class of the design system
     * @param d for an svg path
     */
    public record Path(String style, String d) {}

    /**
     * A text.
     *
     * @param letter the row of the table it belongs to; null when it has none
     * @param word what it measures; left away where the figure is narrow
     * @param value what is always shown
     * @param anchor start, middle or end
     * @param turn svg transform; null when it is level
     * @param measures the path, one of the drawing's, that is as long as the value says; null when it is broken off or there is
     *     none
     */
    public record Label(
            @Nullable String letter,
            @Nullable String word,
            String value,
            String x,
            String y,
            String anchor,
            @Nullable String turn,
            @Nullable String measures) {}

    /**
     * The joint from the side.
     *
     * @param unit of the dimensions
     */
    public static JointDrawing side(ScarfJoint joint, LengthUnit unit) {
        return new SideDrawing(joint, unit).drawing();
    }

    /** The joint from the side, in millimetres. */
    public static JointDrawing side(ScarfJoint joint) {
        return side(joint, LengthUnit.MM);
    }

    /** The head's front face from above: seam, wings, widths. */
    public static JointDrawing face(ScarfJoint joint, LengthUnit unit) {
        return new FaceDrawing(joint, unit).drawing();
    }

    /** Neck and head from behind: where the joint ends, widths. */
    public static JointDrawing back(ScarfJoint joint, LengthUnit unit) {
        return new BackDrawing(joint, unit).drawing();
    }
}
