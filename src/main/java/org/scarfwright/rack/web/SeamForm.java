package org.scarfwright.rack.web;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.web.Choice;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.DimensionalChange;
import org.scarfwright.wood.DimensionalChange.Coefficient;
import org.scarfwright.wood.GrainDirection;
import org.scarfwright.wood.SeamStep;
import org.scarfwright.wood.Species;

/** Two woods that meet at a seam, its width and the moisture of the year, as they stand in an address. */
final class SeamForm {
    static final String ONE = "one";
    static final String ONE_CUT = "oneCut";
    static final String OTHER = "other";
    static final String OTHER_CUT = "otherCut";
    static final String WIDTH = "width";
    static final String LOWEST = "lowest";
    static final String HIGHEST = "highest";
    static final List<String> KEYS = List.of(ONE, ONE_CUT, OTHER, OTHER_CUT, WIDTH, LOWEST, HIGHEST);

    static final List<Choice> CUTS = List.of(new Choice("flat", "flat-sawn"), new Choice("quarter", "quarter-sawn"));

    private static final Length WIDEST = Length.ofMm(1200);

    /** One side of the seam. */
    record Side(Species wood, GrainDirection direction, Coefficient coefficient) {
        String words() {
            return wood.commonName() + ", " + (direction == GrainDirection.RADIAL ? "quarter-sawn" : "flat-sawn");
        }
    }

    /** What was asked. */
    record Seam(Side one, Side other, Length width, SeamStep.Year year) {
        SeamStep step() {
            return SeamStep.of(one.coefficient(), other.coefficient(), width, year);
        }
    }

    private SeamForm() {}

    /**
     * @param unit of a bare width
     * @return null when anything was refused; the reasons are then the query's errors
     */
    static @Nullable Seam read(QueryText query, List<Species> woods, LengthUnit unit) {
        Side one = side(query, woods, new Keys(ONE, ONE_CUT, "One wood", "One cut"));
        Side other = side(query, woods, new Keys(OTHER, OTHER_CUT, "Other wood", "Other cut"));
        Length width = query.read(WIDTH, "Width of the seam", "60 mm", text -> width(text, unit));
        Moisture lowest = query.read(LOWEST, "Lowest moisture", "7", SeamForm::moisture);
        Moisture highest = query.read(HIGHEST, "Highest moisture", "10", SeamForm::moisture);
        if (lowest != null && highest != null && highest.compareTo(lowest) < 0) {
            query.refuse(HIGHEST, "Highest moisture", "is " + highest + ", below the lowest, " + lowest);
            return null;
        }
        return one == null || other == null || width == null || lowest == null || highest == null
                ? null
                : new Seam(one, other, width, new SeamStep.Year(lowest, highest));
    }

    private record Keys(String wood, String cut, String woodLabel, String cutLabel) {}

    private static @Nullable Side side(QueryText query, List<Species> woods, Keys keys) {
        Species wood = query.read(keys.wood(), keys.woodLabel(), "maple_sugar", text -> wood(text, woods));
        GrainDirection direction = query.read(keys.cut(), keys.cutLabel(), "flat", SeamForm::cut);
        if (wood == null || direction == null) {
            return null;
        }
        Optional<Coefficient> coefficient = DimensionalChange.of(wood, direction);
        if (coefficient.isEmpty()) {
            query.refuse(
                    keys.wood(),
                    keys.woodLabel(),
                    "is " + wood.commonName() + ", whose shrinkage that way is not known; none is invented");
            return null;
        }
        return new Side(wood, direction, coefficient.get());
    }

    static Species wood(String text, List<Species> woods) {
        WoodNames names = new WoodNames(woods);
        String id = names.find(text).orElseThrow(() -> new MeasureFormatException(names.unknown(text)));
        return woods.stream().filter(w -> w.id().equals(id)).findFirst().orElseThrow();
    }

    private static GrainDirection cut(String text) {
        return switch (text.strip()) {
            case "flat" -> GrainDirection.TANGENTIAL;
            case "quarter" -> GrainDirection.RADIAL;
            default -> {
                String shown = text.length() <= 40 ? text : text.substring(0, 40) + "…";
                throw new MeasureFormatException("“" + shown + "” is no cut; write flat or quarter");
            }
        };
    }

    static Length width(String text, LengthUnit unit) {
        Length width = LengthParser.parse(text, unit);
        if (!width.isPositive() || width.isLongerThan(WIDEST)) {
            throw new MeasureFormatException(
                    "is " + text.strip() + "; it lies above 0 and up to 1200 mm, for example 60 mm");
        }
        return width;
    }

    private static Moisture moisture(String text) {
        Moisture moisture = Moisture.parse(text);
        DimensionalChange.moistureRefusal(moisture).ifPresent(reason -> {
            throw new MeasureFormatException(reason);
        });
        return moisture;
    }
}
