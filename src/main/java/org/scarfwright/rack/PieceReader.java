package org.scarfwright.rack;

import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;

/** Turns the text about one piece into facts, or into everything that is wrong with it. Holds the limits of the rack. */
final class PieceReader {
    static final Length LONGEST = Length.ofMm(6000);
    static final Length WIDEST = Length.ofMm(1200);
    static final Length THICKEST = Length.ofMm(300);
    static final Length SMALLEST = Length.ofMm(1);

    /** Strip widths may miss the piece's width by this much, because fractions were rounded on the way. */
    static final Length STRIP_SLACK = Length.ofUm(50);

    private static final Moisture WETTEST = new Moisture(100_00);
    private static final int LONGEST_NAME = 60;
    private static final int FLATTEST_SLOPE = 100;
    private static final int LONGEST_CELL = 2000;
    private static final int LONGEST_ITEM = 120;
    private static final int MOST_STRIPS = 40;
    private static final int MOST_DEFECTS = 60;
    private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
    private static final Pattern SLOPE = Pattern.compile("(?:1\\s*(?::|in)\\s*)?(\\d{1,6})");
    private static final Pattern STRIP = Pattern.compile(
            "(.*?[^\\s\\d.,/½¼¾⅛⅜⅝⅞])\\s+([\\d.,½¼¾⅛⅜⅝⅞].*?)(?:\\s+(flat|rift|quarter))?", Pattern.CASE_INSENSITIVE);
    private static final Pattern DEFECT = Pattern.compile(
            "(\\p{L}[\\p{L} _]*?)\\s+([\\d.,½¼¾⅛⅜⅝⅞].*?)(?:\\s*[x×]\\s*(.*?))?(?:\\s+(structural|looks))?",
            Pattern.CASE_INSENSITIVE);

    /** What makes a reading of warp. */
    static final List<PieceField> WARP = List.of(
            PieceField.BOW,
            PieceField.CROOK,
            PieceField.CUP,
            PieceField.TWIST,
            PieceField.MIDDLE_BOW,
            PieceField.MIDDLE_CROOK,
            PieceField.MIDDLE_TWIST,
            PieceField.STICK_GAP,
            PieceField.MIDDLE_STICK_GAP);

    private final WoodNames woods;
    private final Clock clock;

    PieceReader(WoodNames woods, Clock clock) {
        this.woods = woods;
        this.clock = clock;
    }

    /**
     * @param facts empty when there is an error
     * @param code the code a person gave, in upper case; empty when the program is to make one
     */
    record Reading(@Nullable PieceFacts facts, @Nullable String code, List<CellError> errors) {}

    /**
     * @param cells the text
     * @param usual what a bare number means when the cells name no unit
     * @param now the piece as it stands, when this is an edit: a reading repeated without a day is the old reading
     */
    Reading read(PieceCells cells, LengthUnit usual, @Nullable Piece now) {
        return new Once(cells, usual, now).read();
    }

    /** One reading of one set of cells. */
    private final class Once {
        private final PieceCells cells;
        private final LengthUnit usual;
        private final @Nullable Piece now;
        private final List<CellError> errors = new ArrayList<>();
        private LengthUnit unit;

        Once(PieceCells cells, LengthUnit usual, @Nullable Piece now) {
            this.cells = cells;
            this.usual = usual;
            this.now = now;
            this.unit = usual;
        }

        Reading read() {
            for (PieceField field : PieceField.values()) {
                int characters = cells.get(field).length();
                if (characters > LONGEST_CELL) {
                    wrong(field, "is " + characters + " characters long; it holds at most " + LONGEST_CELL);
                }
            }
            if (!errors.isEmpty()) {
                return new Reading(null, null, List.copyOf(errors));
            }
            String code = code();
            unit = unit();
            TypedLength length = size(PieceField.LENGTH, LONGEST);
            TypedLength width = size(PieceField.WIDTH, WIDEST);
            TypedLength thickness = size(PieceField.THICKNESS, THICKEST);
            PieceWood wood = wood(width);
            Warp warp = warp(length, width);
            MoistureReading moisture = moisture();
            Length left = rise(PieceField.TRIM_LEFT);
            Length right = rise(PieceField.TRIM_RIGHT);
            if (length != null && left.plus(right).compareTo(length.length()) >= 0) {
                wrong(
                        left.um() >= right.um() ? PieceField.TRIM_LEFT : PieceField.TRIM_RIGHT,
                        "leaves nothing of the piece; together the trims must be less than its length, "
                                + length.typed());
            }
            List<Defect> defects = defects(length, width);
            GrainCut grain = oneOf(PieceField.GRAIN, GrainCut.values(), GrainCut.UNKNOWN, "flat, rift or quarter");
            Integer slope = grainSlope();
            boolean setAside = yes(PieceField.SET_ASIDE);
            boolean neckAllowed = yes(PieceField.NECK_ALLOWED);
            String lot = name(PieceField.LOT);
            LocalDate ready = day(PieceField.LOT_READY_ON, false);
            if (ready != null && lot == null) {
                wrong(PieceField.LOT, "is empty, but a day its lot is ready was given; write the lot too");
            }
            String place = name(PieceField.PLACE);
            Money cost = parsed(PieceField.COST, Money::parse);
            String note = text(PieceField.NOTE, LONGEST_CELL, true);
            if (!errors.isEmpty() || length == null || width == null || thickness == null || wood == null) {
                return new Reading(null, code, List.copyOf(errors));
            }
            PieceFacts facts = new PieceFacts(
                    wood,
                    length,
                    width,
                    thickness,
                    grain,
                    slope,
                    moisture,
                    warp,
                    left,
                    right,
                    defects,
                    setAside,
                    neckAllowed,
                    lot,
                    ready,
                    place,
                    cost,
                    note);
            return new Reading(facts, code, List.of());
        }

        private void wrong(PieceField field, String message) {
            wrong(field, -1, cells.get(field), message);
        }

        private void wrong(PieceField field, int item, String value, String message) {
            errors.add(new CellError(field, item, value, message));
        }

        private @Nullable String code() {
            String text = cells.get(PieceField.CODE);
            if (text.isEmpty()) {
                return null;
            }
            Optional<String> refusal = PieceCodes.refusal(text);
            refusal.ifPresent(message -> wrong(PieceField.CODE, message));
            return refusal.isPresent() ? null : PieceCodes.written(text);
        }

        private LengthUnit unit() {
            String text = cells.get(PieceField.UNIT);
            return switch (text.toLowerCase(Locale.ROOT)) {
                case "" -> usual;
                case "mm" -> LengthUnit.MM;
                case "cm" -> LengthUnit.CM;
                case "m" -> LengthUnit.M;
                case "in", "in.", "inch", "inches", "\"", "″" -> LengthUnit.INCH;
                default -> {
                    wrong(PieceField.UNIT, quote(text) + " is no unit; write mm, cm, m or in");
                    yield usual;
                }
            };
        }

        private @Nullable TypedLength size(PieceField field, Length most) {
            String text = cells.get(field);
            if (text.isEmpty()) {
                wrong(field, "is missing; write for example 640, 64 cm or 25 3/8 in");
                return null;
            }
            try {
                TypedLength size = TypedLength.parse(text, unit);
                if (size.length().isLongerThan(most)) {
                    wrong(field, quote(text) + " is more than " + most + ", the most the rack takes");
                    return null;
                }
                if (size.length().isShorterThan(SMALLEST)) {
                    wrong(field, quote(text) + " is less than " + SMALLEST + ", the least the rack takes");
                    return null;
                }
                return size;
            } catch (MeasureFormatException e) {
                wrong(field, e.getMessage() + " (at most " + most + ")");
                return null;
            }
        }

        /** A length that is 0 when nothing is written. */
        private Length rise(PieceField field) {
            String text = cells.get(field);
            if (text.isEmpty()) {
                return Length.ZERO;
            }
            try {
                return LengthParser.parse(text, unit);
            } catch (MeasureFormatException e) {
                wrong(field, String.valueOf(e.getMessage()));
                return Length.ZERO;
            }
        }

        private Length rise(PieceField field, @Nullable TypedLength over, int part) {
            Length rise = rise(field);
            if (over != null && rise.times(part).isLongerThan(over.length())) {
                String share = part == 10 ? "a tenth" : "a quarter";
                String side = field == PieceField.BOW || field == PieceField.CROOK ? "length" : "width";
                wrong(
                        field,
                        quote(cells.get(field)) + " is more than " + share + " of the " + side + ", " + over.typed()
                                + "; write the rise over the whole piece, and cut a piece that bent in two");
            }
            return rise;
        }

        private @Nullable Warp warp(@Nullable TypedLength length, @Nullable TypedLength width) {
            Length bow = rise(PieceField.BOW, length, 10);
            Length crook = rise(PieceField.CROOK, length, 10);
            Length cup = rise(PieceField.CUP, width, 10);
            Length twist = twist(length, width);
            MiddleReading middle = new MiddleReading(
                    middle(PieceField.MIDDLE_BOW, PieceField.BOW, bow),
                    middle(PieceField.MIDDLE_CROOK, PieceField.CROOK, crook),
                    middleTwist(length, width));
            LocalDate on = readOn(PieceField.WARP_ON);
            if (WARP.stream().noneMatch(cells::has)) {
                if (cells.has(PieceField.WARP_ON)) {
                    wrong(PieceField.WARP_ON, "is given, but no warp is; write 0 for a piece that is straight");
                }
                return null;
            }
            if (on == null && now != null && now.warp().isMeasured()) {
                Warp old = now.warp();
                if (new Warp(bow, crook, cup, twist, middle, old.readOn()).equals(old)) {
                    return old;
                }
            }
            return new Warp(bow, crook, cup, twist, middle, on == null ? today() : on);
        }

        private Length twist(@Nullable TypedLength length, @Nullable TypedLength width) {
            if (!cells.has(PieceField.STICK_GAP)) {
                if (cells.has(PieceField.STICK_DISTANCE)) {
                    wrong(PieceField.STICK_GAP, "is missing, but the distance between the sticks is given");
                } else if (cells.has(PieceField.STICK_LENGTH) && !cells.has(PieceField.MIDDLE_STICK_GAP)) {
                    wrong(PieceField.STICK_GAP, "is missing, but the length of the sticks is given");
                }
                return rise(PieceField.TWIST, width, 4);
            }
            if (cells.has(PieceField.TWIST)) {
                wrong(
                        PieceField.STICK_GAP,
                        "is given beside the lift of the fourth corner, " + quote(cells.get(PieceField.TWIST))
                                + "; write one of the two");
            }
            Length distance = length == null ? Length.ZERO : length.length();
            if (cells.has(PieceField.STICK_DISTANCE)) {
                distance = rise(PieceField.STICK_DISTANCE);
                if (length != null && distance.isLongerThan(length.length())) {
                    wrong(
                            PieceField.STICK_DISTANCE,
                            quote(cells.get(PieceField.STICK_DISTANCE)) + " is more than the length of the piece, "
                                    + length.typed());
                    return Length.ZERO;
                }
            }
            if (cells.has(PieceField.STICK_DISTANCE)
                    && !distance.isPositive()
                    && errors.stream().noneMatch(e -> e.field() == PieceField.STICK_DISTANCE)) {
                wrong(PieceField.STICK_DISTANCE, "must be more than 0; leave it empty for sticks at the very ends");
                return Length.ZERO;
            }
            return sticks(PieceField.STICK_GAP, length, width, distance);
        }

        private Length sticks(
                PieceField field, @Nullable TypedLength length, @Nullable TypedLength width, Length distance) {
            Length gap = rise(field);
            Length stick = rise(PieceField.STICK_LENGTH);
            if (!stick.isPositive()) {
                if (errors.stream().noneMatch(e -> e.field() == PieceField.STICK_LENGTH)) {
                    wrong(
                            PieceField.STICK_LENGTH,
                            "is missing; the gap is read over it, so write how long each stick is, for example 300");
                }
                return Length.ZERO;
            }
            if (gap.times(4).isLongerThan(stick)) {
                wrong(field, quote(cells.get(field)) + " is more than a quarter of the sticks' length, " + stick);
                return Length.ZERO;
            }
            if (length == null || width == null || !distance.isPositive()) {
                return Length.ZERO; // the size itself is wrong and said so
            }
            Length twist = new WindingSticks(gap, stick, distance).twist(length.length(), width.length());
            if (twist.times(4).isLongerThan(width.length())) {
                wrong(
                        field,
                        quote(cells.get(field)) + " comes to a twist of " + twist
                                + ", more than a quarter of the width, " + width.typed()
                                + "; cut a piece that twisted in two");
                return Length.ZERO;
            }
            return twist;
        }

        /** Empty when nothing is written. */
        private @Nullable Length middle(PieceField field, PieceField ofWhole, Length whole) {
            if (!cells.has(field)) {
                return null;
            }
            Length rise = rise(field);
            if (rise.isLongerThan(whole)) {
                wrong(
                        field,
                        quote(cells.get(field)) + " is more than the "
                                + ofWhole.label().toLowerCase(Locale.ROOT) + " over the whole piece, " + whole
                                + "; a straightedge half as long shows no more than the long one, so measure both again");
            }
            return rise;
        }

        private @Nullable Length middleTwist(@Nullable TypedLength length, @Nullable TypedLength width) {
            if (!cells.has(PieceField.MIDDLE_STICK_GAP)) {
                return cells.has(PieceField.MIDDLE_TWIST) ? rise(PieceField.MIDDLE_TWIST, width, 4) : null;
            }
            if (cells.has(PieceField.MIDDLE_TWIST)) {
                wrong(
                        PieceField.MIDDLE_STICK_GAP,
                        "is given beside the twist over the middle half, " + quote(cells.get(PieceField.MIDDLE_TWIST))
                                + "; write one of the two");
            }
            // From quarter point to quarter point the sticks show the twist of the middle half: nothing to scale along
            // it.
            return sticks(PieceField.MIDDLE_STICK_GAP, length, width, length == null ? Length.ZERO : length.length());
        }

        private @Nullable MoistureReading moisture() {
            MoistureReading.Meter meter = oneOf(
                    PieceField.METER,
                    MoistureReading.Meter.values(),
                    MoistureReading.Meter.UNKNOWN,
                    "pin, pinless or oven");
            LocalDate on = readOn(PieceField.MOISTURE_ON);
            Moisture content = parsed(PieceField.MOISTURE, Moisture::parse);
            if (content == null) {
                if (!cells.has(PieceField.MOISTURE)) {
                    for (PieceField field : List.of(PieceField.MOISTURE_ON, PieceField.METER)) {
                        if (cells.has(field)) {
                            wrong(PieceField.MOISTURE, "is missing, but " + field.label() + " is given");
                            break;
                        }
                    }
                }
                return null;
            }
            if (content.compareTo(WETTEST) > 0) {
                wrong(
                        PieceField.MOISTURE,
                        quote(cells.get(PieceField.MOISTURE))
                                + " is more than 100 %; write the moisture content in percent, for example 8.5");
                return null;
            }
            MoistureReading old = now == null ? null : now.moisture();
            if (on == null
                    && old != null
                    && old.content().equals(content)
                    && (old.meter() == meter || !cells.has(PieceField.METER))) {
                return old;
            }
            return new MoistureReading(content, on == null ? today() : on, meter);
        }

        private @Nullable LocalDate readOn(PieceField own) {
            return cells.has(own) ? day(own, true) : day(PieceField.MEASURED_ON, true);
        }

        private @Nullable LocalDate day(PieceField field, boolean past) {
            String text = cells.get(field);
            if (text.isEmpty()) {
                return null;
            }
            LocalDate day;
            try {
                day = LocalDate.parse(text);
            } catch (DateTimeParseException e) {
                // said below in our own words
                day = null;
            }
            String message = null;
            if (day == null) {
                message = quote(text) + " is not a day; write year-month-day, for example 2026-03-02";
            } else if (past && day.isAfter(today().plusDays(1))) {
                message = quote(text) + " is still to come; write the day it was measured";
            } else if (day.isBefore(EARLIEST) || day.getYear() > 9999) {
                message = quote(text) + " is too far away; write year-month-day, for example 2026-03-02";
            }
            if (message != null) {
                CellError error = new CellError(field, -1, text, message);
                if (!errors.contains(error)) {
                    errors.add(error);
                }
                return null;
            }
            return day;
        }

        private LocalDate today() {
            return LocalDate.now(clock);
        }

        private @Nullable Integer grainSlope() {
            String text = cells.get(PieceField.GRAIN_SLOPE);
            if (text.isEmpty()) {
                return null;
            }
            Matcher m = SLOPE.matcher(text.toLowerCase(Locale.ROOT));
            int slope = m.matches() ? Integer.parseInt(m.group(1)) : 0;
            if (slope < 1 || slope > FLATTEST_SLOPE) {
                wrong(
                        PieceField.GRAIN_SLOPE,
                        quote(text) + " is no slope of grain; write 1 in how much, from 1 to 100, for example 1 in 15");
                return null;
            }
            return slope;
        }

        private boolean yes(PieceField field) {
            String text = cells.get(field);
            return switch (text.toLowerCase(Locale.ROOT)) {
                case "", "no", "n", "false", "0", "off" -> false;
                case "yes", "y", "true", "1", "x", "on" -> true;
                default -> {
                    wrong(field, quote(text) + " is neither yes nor no");
                    yield false;
                }
            };
        }

        private <E extends Enum<E>> E oneOf(PieceField field, E[] values, E none, String allowed) {
            String text = cells.get(field);
            if (text.isEmpty()) {
                return none;
            }
            for (E value : values) {
                if (value.name().equalsIgnoreCase(text)) {
                    return value;
                }
            }
            wrong(field, quote(text) + " is not one of " + allowed);
            return none;
        }

        private <T> @Nullable T parsed(PieceField field, Function<String, T> parser) {
            if (!cells.has(field)) {
                return null;
            }
            try {
                return parser.apply(cells.get(field));
            } catch (MeasureFormatException e) {
                wrong(field, String.valueOf(e.getMessage()));
                return null;
            }
        }

        private @Nullable String name(PieceField field) {
            String text = text(field, LONGEST_NAME, false);
            return text.isEmpty() ? null : text;
        }

        private String text(PieceField field, int most, boolean lines) {
            String text = cells.get(field);
            if (text.length() > most) {
                wrong(field, "is " + text.length() + " characters long; it holds at most " + most);
                return "";
            }
            boolean readable =
                    text.codePoints().allMatch(c -> isText(c) || (lines && (c == '\n' || c == '\r' || c == '\t')));
            if (!readable) {
                wrong(field, "holds a character that cannot be printed; write it again as plain text");
                return "";
            }
            return text;
        }

        private @Nullable PieceWood wood(@Nullable TypedLength width) {
            String text = cells.get(PieceField.WOOD);
            Optional<String> id = woods.find(text);
            if (!text.isEmpty() && id.isEmpty()) {
                wrong(PieceField.WOOD, woods.unknown(text));
            }
            if (!cells.has(PieceField.LAMINATION)) {
                if (text.isEmpty()) {
                    wrong(PieceField.WOOD, "is missing; write for example maple_sugar or Black walnut");
                }
                return id.map(PieceWood.Solid::new).orElse(null);
            }
            PieceWood.Lamination lamination = lamination(width);
            if (lamination != null && id.isPresent() && !lamination.speciesIds().contains(id.get())) {
                wrong(
                        PieceField.WOOD,
                        quote(text) + " is in none of the strips of the lamination; leave it empty or add a strip");
            }
            return lamination;
        }

        private PieceWood.@Nullable Lamination lamination(@Nullable TypedLength width) {
            String[] parts = cells.get(PieceField.LAMINATION).split("\\|", -1);
            if (parts.length < 2 || parts.length > MOST_STRIPS) {
                wrong(
                        PieceField.LAMINATION,
                        "has " + (parts.length == 1 ? "one strip" : parts.length + " strips") + "; it has 2 to "
                                + MOST_STRIPS
                                + " strips with | between them, for example maple_sugar 20 | walnut_black 5 |"
                                + " maple_sugar 20");
                return null;
            }
            int before = errors.size();
            List<PieceWood.LaminationStrip> strips = new ArrayList<>();
            for (int i = 0; i < parts.length; i++) {
                PieceWood.LaminationStrip strip = strip(i, parts[i].strip());
                if (strip != null) {
                    strips.add(strip);
                }
            }
            if (errors.size() > before || width == null) {
                return null;
            }
            Length sum = strips.stream().map(PieceWood.LaminationStrip::width).reduce(Length.ZERO, Length::plus);
            Length missing = width.length().minus(sum);
            if (Math.abs(missing.um()) > STRIP_SLACK.um()) {
                wrong(
                        PieceField.LAMINATION,
                        "has strips of " + sum + " together; they must add up to the width, " + width.typed());
                return null;
            }
            PieceWood.LaminationStrip last = strips.get(strips.size() - 1);
            strips.set(
                    strips.size() - 1,
                    new PieceWood.LaminationStrip(last.speciesId(), last.width().plus(missing), last.grain()));
            return new PieceWood.Lamination(strips);
        }

        private PieceWood.@Nullable LaminationStrip strip(int item, String text) {
            String which = "has as strip " + (item + 1) + " " + quote(text);
            Matcher m = STRIP.matcher(text);
            if (text.length() > LONGEST_ITEM || !m.matches()) {
                wrong(
                        PieceField.LAMINATION,
                        item,
                        text,
                        which + "; write a wood and a width, for example walnut_black 5");
                return null;
            }
            Optional<String> id = woods.find(m.group(1));
            if (id.isEmpty()) {
                wrong(PieceField.LAMINATION, item, text, which + ": " + woods.unknown(m.group(1)));
                return null;
            }
            GrainCut grain = m.group(3) == null
                    ? GrainCut.UNKNOWN
                    : GrainCut.valueOf(m.group(3).toUpperCase(Locale.ROOT));
            try {
                Length width = LengthParser.parse(m.group(2), unit);
                if (!width.isPositive() || width.isLongerThan(WIDEST)) {
                    wrong(
                            PieceField.LAMINATION,
                            item,
                            text,
                            which + "; a strip is more than 0 and at most " + WIDEST + " wide");
                    return null;
                }
                return new PieceWood.LaminationStrip(id.get(), width, grain);
            } catch (MeasureFormatException e) {
                wrong(PieceField.LAMINATION, item, text, which + ": " + e.getMessage());
                return null;
            }
        }

        private List<Defect> defects(@Nullable TypedLength length, @Nullable TypedLength width) {
            if (!cells.has(PieceField.DEFECTS)) {
                return List.of();
            }
            String[] parts = cells.get(PieceField.DEFECTS).split("[;\\n]", -1);
            if (parts.length > MOST_DEFECTS) {
                wrong(PieceField.DEFECTS, "has " + parts.length + " defects; a piece holds at most " + MOST_DEFECTS);
                return List.of();
            }
            List<Defect> defects = new ArrayList<>();
            for (int i = 0; i < parts.length; i++) {
                String text = parts[i].strip();
                if (!text.isEmpty()) {
                    Defect defect = defect(i, text, length, width);
                    if (defect != null) {
                        defects.add(defect);
                    }
                }
            }
            return defects;
        }

        private @Nullable Defect defect(
                int item, String text, @Nullable TypedLength length, @Nullable TypedLength width) {
            String which = "has " + quote(text);
            Matcher m = DEFECT.matcher(text);
            if (text.length() > LONGEST_ITEM || !m.matches()) {
                wrong(
                        PieceField.DEFECTS,
                        item,
                        text,
                        which + "; write what it is and its stretch, for example knot 120-160 x 10-30 structural");
                return null;
            }
            Defect.Kind kind = kind(m.group(1));
            if (kind == null) {
                wrong(
                        PieceField.DEFECTS,
                        item,
                        text,
                        which + "; a defect is a knot, check, pith, stain, screw hole or other");
                return null;
            }
            if (length == null || width == null) {
                return null; // the size itself is wrong and said so
            }
            try {
                Stretch along = stretch(m.group(2), length, "length");
                Stretch across = m.group(3) == null
                        ? new Stretch(Length.ZERO, width.length())
                        : stretch(m.group(3), width, "width");
                boolean structural = m.group(4) == null
                        ? kind != Defect.Kind.STAIN
                        : m.group(4).equalsIgnoreCase("structural");
                return new Defect(kind, along.from(), along.to(), across.from(), across.to(), structural);
            } catch (MeasureFormatException e) {
                wrong(PieceField.DEFECTS, item, text, which + ": " + e.getMessage());
                return null;
            }
        }

        private static Defect.@Nullable Kind kind(String text) {
            String name = text.strip().toUpperCase(Locale.ROOT).replaceAll("[\\s_]+", "_");
            for (Defect.Kind kind : Defect.Kind.values()) {
                if (kind.name().equals(name)) {
                    return kind;
                }
            }
            return null;
        }

        private Stretch stretch(String text, TypedLength whole, String side) {
            String[] ends = text.split("\\s+to\\s+|\\s*–\\s*|\\s*\\.\\.\\s*", -1);
            if (ends.length == 1) {
                if (text.indexOf('/') >= 0) {
                    throw new MeasureFormatException(
                            quote(text) + " can be read in more than one way; write for example 4 3/8 in to 6 in");
                }
                ends = text.split("\\s*-\\s*", -1);
            }
            if (ends.length != 2) {
                throw new MeasureFormatException(quote(text) + " is not a stretch; write for example 120-160");
            }
            Length from = LengthParser.parse(ends[0], unit);
            Length to = LengthParser.parse(ends[1], unit);
            if (from.compareTo(to) >= 0) {
                throw new MeasureFormatException(
                        quote(text) + " does not run from the smaller to the larger; write for example 120-160");
            }
            if (to.isLongerThan(whole.length())) {
                throw new MeasureFormatException(
                        quote(text) + " lies outside the piece, whose " + side + " is " + whole.typed());
            }
            return new Stretch(from, to);
        }
    }

    private static boolean isText(int codePoint) {
        return !Character.isISOControl(codePoint) && Character.getType(codePoint) != Character.SURROGATE;
    }

    private record Stretch(Length from, Length to) {}

    private static String quote(String text) {
        String s = Objects.requireNonNull(text).strip();
        return s.length() <= 40 ? "“" + s + "”" : "“" + s.substring(0, 40) + "…”";
    }
}
