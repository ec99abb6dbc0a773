package org.scarfwright.rack.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.QueryText;

/** A block of wood whose weight is asked, as it stands in an address. */
final class BlockForm {
    static final String LENGTH = "length";
    static final String WIDTH = "width";
    static final String THICKNESS = "thickness";
    static final String MOISTURE = "moisture";
    static final List<String> KEYS = List.of(LENGTH, WIDTH, THICKNESS, MOISTURE);

    private static final Moisture WETTEST = new Moisture(3000);

    /** What was asked. */
    record Block(Length length, Length width, Length thickness, Moisture moisture) {
        Volume volume() {
            return Volume.of(length, width, thickness);
        }
    }

    private BlockForm() {}

    /** @return null when anything was refused; the reasons are then the query's errors */
    static @Nullable Block read(QueryText query, LengthUnit unit) {
        Length length = query.read(LENGTH, "Length", "640 mm", text -> size(text, unit, 6000));
        Length width = query.read(WIDTH, "Width", "70 mm", text -> size(text, unit, 1200));
        Length thickness = query.read(THICKNESS, "Thickness", "22 mm", text -> size(text, unit, 300));
        Moisture moisture = query.read(MOISTURE, "Moisture", "8", BlockForm::moisture);
        return length == null || width == null || thickness == null || moisture == null
                ? null
                : new Block(length, width, thickness, moisture);
    }

    private static Length size(String text, LengthUnit unit, long mostMm) {
        Length size = LengthParser.parse(text, unit);
        if (!size.isPositive() || size.isLongerThan(Length.ofMm(mostMm))) {
            throw new MeasureFormatException(
                    "is " + text.strip() + "; it lies above 0 and up to " + mostMm + " mm, for example 22 mm");
        }
        return size;
    }

    private static Moisture moisture(String text) {
        Moisture moisture = Moisture.parse(text);
        if (moisture.compareTo(WETTEST) > 0) {
            throw new MeasureFormatException(
                    "is " + moisture + "; weights are worked out up to " + WETTEST + ", for example 8");
        }
        return moisture;
    }
}
