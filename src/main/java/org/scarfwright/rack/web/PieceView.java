package org.scarfwright.rack.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.LongestPart;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Warp;
import org.scarfwright.rack.Zone;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.web.Formats;
import org.scarfwright.web.StripDrawing;

/**
 * A piece as its page shows it: every text ready to print.
 *
 * @param warp what was measured last; empty when nobody measured it
 * @param gives what parts of some lengths can still be; empty when no clear stretch is left
 */
record PieceView(
        String code,
        String size,
        String wood,
        String state,
        boolean free,
        StripDrawing drawing,
        List<Fact> facts,
        @Nullable WarpRow warp,
        List<WarpRow> earlierWarps,
        List<Fact> earlierMoistures,
        List<FlawRow> defects,
        List<String> offers,
        List<PartRow> gives,
        @Nullable ThicknessCurve curve) {
    /** Common practice: a neck blank is about 20 mm thick and a head about 15 mm. */
    private static final Length NECK = Length.ofMm(20);

    private static final Length HEAD = Length.ofMm(15);
    private static final Length ANY = Length.ofMm(6000);
    private static final int[] SHOWN_MM = {100, 150, 200, 300, 400, 500, 600, 700, 800, 1000, 1500, 2000, 3000, 4500};
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    /** A name and what it is. */
    record Fact(String name, String value) {}

    /** A reading of warp. */
    record WarpRow(String day, String bow, String crook, String cup, String twist) {}

    /** A flaw. */
    record FlawRow(String kind, String along, String across, String matters) {}

    /** What a part of one length can still be. */
    record PartRow(String length, String thickness, String width, String out) {}

    /** Every reading a piece ever had, the newest first. */
    record Readings(List<Warp> warps, List<MoistureReading> moistures) {}

    /** What the texts are written with. */
    record Wording(WoodLabels woods, ShopSettings rules, Formats formats) {}

    static PieceView of(Piece piece, Readings readings, Wording wording) {
        WoodLabels woods = wording.woods();
        ShopSettings rules = wording.rules();
        Formats formats = wording.formats();
        Length clear = UsableSize.zones(piece).stream().map(Zone::length).reduce(Length.ZERO, Length::max);
        return new PieceView(
                piece.code(),
                PieceWords.size(piece),
                woods.of(piece.wood()),
                PieceWords.state(piece.state()),
                piece.state() == PieceState.ON_RACK,
                StripDrawing.piece(PieceStrip.of(piece)),
                facts(piece, wording),
                piece.warp().isMeasured() ? warp(piece.warp(), formats) : null,
                readings.warps().stream()
                        .filter(w -> !w.equals(piece.warp()))
                        .map(w -> warp(w, formats))
                        .toList(),
                readings.moistures().stream()
                        .filter(m -> !m.equals(piece.moisture()))
                        .map(m -> new Fact(formats.day(m.readOn()), moisture(m)))
                        .toList(),
                piece.defects().stream().map(d -> flaw(piece, d)).toList(),
                offers(piece, clear, rules),
                parts(piece, clear, rules),
                clear.isPositive() ? ThicknessCurve.of(piece, clear, rules.planingPerFace()) : null);
    }

    private static List<Fact> facts(Piece piece, Wording wording) {
        WoodLabels woods = wording.woods();
        Formats formats = wording.formats();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Wood", woods.of(piece.wood())));
        if (!PieceWords.lamination(piece.wood()).isEmpty()) {
            facts.add(new Fact("Strips", PieceWords.lamination(piece.wood())));
        }
        facts.add(new Fact("Size", PieceWords.size(piece)));
        if (mixed(piece)) {
            facts.add(new Fact(
                    "In millimetres",
                    MM.number(piece.length().length()) + " × "
                            + MM.number(piece.width().length()) + " × "
                            + MM.number(piece.thickness().length())));
        }
        String grain = PieceWords.grain(piece.grain());
        String slope = piece.grainSlope() == null ? "" : "slope 1 in " + piece.grainSlope();
        facts.add(new Fact("Grain", known((grain + (grain.isEmpty() || slope.isEmpty() ? "" : ", ") + slope))));
        MoistureReading moisture = piece.moisture();
        facts.add(new Fact(
                "Moisture",
                moisture == null ? "not measured" : moisture(moisture) + ", read " + formats.day(moisture.readOn())));
        facts.add(new Fact("Trims", trims(piece)));
        facts.add(new Fact("Place", known(piece.place() == null ? "" : piece.place())));
        facts.add(new Fact("Lot", known(lot(piece, formats))));
        facts.add(new Fact(
                "Cost",
                known(
                        piece.cost() == null
                                ? ""
                                : piece.cost() + " " + wording.rules().currency())));
        facts.add(new Fact("On the rack since", formats.day(piece.since())));
        if (piece.setAside()) {
            facts.add(new Fact(
                    "Set aside",
                    piece.neckAllowed() ? "as warped, but allowed for necks" : "as warped: offered for heads only"));
        }
        if (!piece.note().isEmpty()) {
            facts.add(new Fact("Note", piece.note()));
        }
        return facts;
    }

    private static boolean mixed(Piece piece) {
        return !(piece.length().typed().endsWith(" mm")
                && piece.width().typed().endsWith(" mm")
                && piece.thickness().typed().endsWith(" mm"));
    }

    private static String trims(Piece piece) {
        return piece.trimLeft().um() + piece.trimRight().um() == 0
                ? "none"
                : MM.print(piece.trimLeft()) + " at the left end, " + MM.print(piece.trimRight()) + " at the right";
    }

    private static String lot(Piece piece, Formats formats) {
        LocalDate ready = piece.lotReadyOn();
        return piece.lot() == null
                ? ""
                : piece.lot() + (ready == null ? "" : ", ready to use on " + formats.day(ready));
    }

    private static String moisture(MoistureReading reading) {
        String meter = PieceWords.meter(reading.meter());
        return reading.content()
                + switch (meter) {
                    case "" -> "";
                    case "oven" -> " by oven drying";
                    default -> " with a " + meter + " meter";
                };
    }

    private static WarpRow warp(Warp warp, Formats formats) {
        return new WarpRow(
                formats.day(warp.readOn()),
                MM.number(warp.bow()),
                MM.number(warp.crook()),
                MM.number(warp.cup()),
                MM.number(warp.twist()));
    }

    private static FlawRow flaw(Piece piece, Defect d) {
        boolean whole =
                d.fromWidth().um() == 0 && d.toWidth().equals(piece.width().length());
        return new FlawRow(
                PieceWords.kind(d.kind()),
                MM.number(d.fromLength()) + " to " + MM.number(d.toLength()),
                whole ? "the whole width" : MM.number(d.fromWidth()) + " to " + MM.number(d.toWidth()),
                d.structural() ? "structural" : "only for looks");
    }

    private static List<String> offers(Piece piece, Length clear, ShopSettings rules) {
        if (!clear.isPositive()) {
            return List.of("No clear stretch is left between its trims and structural defects.");
        }
        LongestPart neck =
                LongestPart.of(piece, new LongestPart.Wanted(NECK, rules.planingPerFace(), rules.neckStraightness()));
        LongestPart head = LongestPart.of(piece, new LongestPart.Wanted(HEAD, rules.planingPerFace(), ANY));
        List<String> offers = new ArrayList<>();
        if (piece.setAside() && !piece.neckAllowed()) {
            offers.add("As a neck: it is set aside as warped and offered for heads only, until you allow necks.");
        } else {
            offers.add("As a neck " + MM.print(NECK) + " thick: " + sentence(piece, neck, rules));
        }
        offers.add("As a head " + MM.print(HEAD) + " thick: " + sentence(piece, head, rules));
        return offers;
    }

    private static String sentence(Piece piece, LongestPart part, ShopSettings rules) {
        if (!part.length().isPositive()) {
            return "none; it is too thin for that once it is flat and planed.";
        }
        Length width = UsableSize.width(piece, part.length(), rules.edgeAllowance());
        String reason = switch (part.limit()) {
            case CLEAR_STRETCH -> "that is its longest clear stretch.";
            case THICKNESS -> "a longer part is thinner than that once it is flat and planed.";
            case STRAIGHTNESS ->
                "a longer part is more than " + MM.print(rules.neckStraightness()) + " out of straight before planing.";
        };
        // Shown lengths never promise more than there is.
        Length shown = Length.ofUm(part.length().um() / 100 * 100);
        return "up to " + MM.print(shown) + " long and " + MM.print(Length.ofUm(width.um() / 100 * 100)) + " wide; "
                + reason;
    }

    private static List<PartRow> parts(Piece piece, Length clear, ShopSettings rules) {
        TreeSet<Length> lengths = new TreeSet<>();
        for (int mm : SHOWN_MM) {
            Length part = Length.ofMm(mm);
            if (part.isShorterThan(clear)) {
                lengths.add(part);
            }
        }
        if (clear.isPositive()) {
            lengths.add(clear);
        }
        return lengths.stream()
                .map(l -> new PartRow(
                        MM.number(l),
                        floor(UsableSize.thickness(piece, l, piece.width().length(), rules.planingPerFace())),
                        floor(UsableSize.width(piece, l, rules.edgeAllowance())),
                        MM.number(UsableSize.straightness(piece, l))))
                .toList();
    }

    /** What is left is shown rounded down, and nothing as a dash. */
    private static String floor(Length length) {
        return length.isPositive()
                ? new LengthFormat(LengthUnit.MM, Locale.ROOT).number(Length.ofUm(length.um() / 100 * 100))
                : "–";
    }

    private static String known(String value) {
        return value.isEmpty() ? "not recorded" : value;
    }
}
