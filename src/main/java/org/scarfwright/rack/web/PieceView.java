package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.rack.Defect;
import org.scarfwright.rack.MiddleWords;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.PieceWeight;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.ReadingHistory;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.web.Formats;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.wood.Readiness;

/**
 * A piece as its page shows it: every text ready to print.
 *
 * @param measured somebody measured its warp
 * @param middle what the second reading says, one sentence for each kind of warp
 */
record PieceView(
        String code,
        String size,
        String wood,
        String state,
        boolean free,
        StripDrawing drawing,
        List<Fact> facts,
        boolean measured,
        HistoryView readings,
        List<String> middle,
        List<FlawRow> defects) {
    static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    /** A name and what it is. */
    record Fact(String name, String value) {}

    /** A flaw. */
    record FlawRow(String kind, String along, String across, String matters) {}

    /** What the texts are written with. */
    record Wording(WoodLabels woods, ShopSettings rules, Formats formats, Readiness readiness) {}

    static PieceView of(Piece piece, List<ReadingHistory.Row> readings, Wording wording) {
        WoodLabels woods = wording.woods();
        return new PieceView(
                piece.code(),
                PieceWords.size(piece),
                woods.of(piece.wood()),
                PieceWords.state(piece.state()),
                piece.state() == PieceState.ON_RACK,
                StripDrawing.piece(PieceStrip.of(piece)),
                facts(piece, wording),
                piece.warp().isMeasured(),
                HistoryView.of(readings, piece.warp(), wording.formats()),
                MiddleWords.of(piece.warp()),
                piece.defects().stream().map(d -> flaw(piece, d)).toList());
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
        facts.add(new Fact("Ready to glue", wording.readiness().sentence()));
        facts.add(new Fact("Weight", weight(piece, woods)));
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

    private static String weight(Piece piece, WoodLabels woods) {
        return PieceWeight.of(piece, woods::species)
                .map(w -> "about " + kilograms(w.grams()) + " kg at " + w.moisture()
                        + (piece.moisture() == null ? ", for want of a reading" : "")
                        + ", by the average of its wood")
                .orElse("not known: the density of its wood is not on file for that moisture");
    }

    private static String kilograms(BigDecimal grams) {
        return grams.movePointLeft(3).setScale(2, RoundingMode.HALF_UP).toPlainString();
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

    static String moisture(MoistureReading reading) {
        String meter = PieceWords.meter(reading.meter());
        return reading.content()
                + switch (meter) {
                    case "" -> "";
                    case "oven" -> " by oven drying";
                    default -> " with a " + meter + " meter";
                };
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

    /** What is left is shown rounded down, and nothing as a dash. */
    static String floor(Length length) {
        return length.isPositive() ? MM.number(Length.ofUm(length.um() / 100 * 100)) : "–";
    }

    private static String known(String value) {
        return value.isEmpty() ? "not recorded" : value;
    }
}
