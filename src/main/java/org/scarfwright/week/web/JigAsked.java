package org.scarfwright.week.web;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.DesignRules;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.paper.Correction;
import org.scarfwright.week.paper.JigTemplates;
import org.scarfwright.week.paper.PaperSize;
import org.springframework.http.ResponseEntity;

/**
 * One jig wedge at 1 : 1, as it is asked for without a plan.
 *
 * @param angle 3° to 30°
 * @param thickness of the thicker piece at the saw, 1 to 100 mm
 */
record JigAsked(Angle angle, Length thickness, PaperSize paper, Correction correction) {
    private static final Length THINNEST = Length.ofMm(1);
    private static final Length THICKEST = Length.ofMm(100);

    /**
     * The thickness as it was typed.
     *
     * @param key what it is called where it was asked
     * @param unit what a bare number means
     */
    record Thick(String key, String typed, LengthUnit unit) {}

    /** The paper, and what the bar of 100 mm measures on it, as they were typed. */
    record Printer(String paper, String measured) {}

    /** @throws InvalidInputException with every error */
    static JigAsked read(String typed, Thick thick, Printer printer) {
        List<FieldError> errors = new ArrayList<>();
        Angle angle = read(errors, "/angle", "Angle", typed, () -> Angle.parse(typed));
        if (angle != null
                && (angle.compareTo(DesignRules.SHALLOWEST) < 0 || angle.compareTo(DesignRules.STEEPEST) > 0)) {
            errors.add(new FieldError(
                    "/angle",
                    "Angle",
                    typed,
                    "“" + typed.strip() + "” is not between " + DesignRules.SHALLOWEST + " and "
                            + DesignRules.STEEPEST));
        }
        Length thickness = read(
                errors,
                "/" + thick.key(),
                "Thickness at the saw",
                thick.typed(),
                () -> LengthParser.parse(thick.typed(), thick.unit()));
        if (thickness != null && (thickness.compareTo(THINNEST) < 0 || thickness.compareTo(THICKEST) > 0)) {
            errors.add(new FieldError(
                    "/" + thick.key(),
                    "Thickness at the saw",
                    thick.typed(),
                    "“" + thick.typed().strip() + "” is not between " + THINNEST + " and " + THICKEST));
        }
        PaperSize paper = read(errors, () -> PaperSize.of(printer.paper()));
        Correction correction = read(errors, () -> Correction.of(printer.measured()));
        if (angle == null || thickness == null || paper == null || correction == null || !errors.isEmpty()) {
            throw new InvalidInputException(errors);
        }
        return new JigAsked(angle, thickness, paper, correction);
    }

    private static <T> @Nullable T read(
            List<FieldError> errors, String pointer, String label, String typed, Supplier<T> reading) {
        try {
            return reading.get();
        } catch (MeasureFormatException e) {
            errors.add(new FieldError(pointer, label, typed, String.valueOf(e.getMessage())));
            return null;
        }
    }

    private static <T> @Nullable T read(List<FieldError> errors, Supplier<T> reading) {
        try {
            return reading.get();
        } catch (InvalidInputException e) {
            errors.addAll(e.errors());
            return null;
        }
    }

    ResponseEntity<byte[]> pdf(LengthUnit unit) {
        return PaperApi.pdf("jig-template.pdf", JigTemplates.pdf(angle, thickness, unit, paper, correction));
    }
}
