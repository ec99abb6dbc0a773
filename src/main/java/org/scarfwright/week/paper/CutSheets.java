package org.scarfwright.week.paper;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.LaidOut;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.rack.Piece;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.week.paper.Drawings.Box;
import org.scarfwright.week.paper.Sheet.Placement;
import org.scarfwright.wood.Caution;
import org.scarfwright.wood.Species;

/** A plan's cut sheets: one for each piece that is cut, then one for each neck's joint. */
public final class CutSheets {
    private static final double FIGURE = 2.8;
    private static final double ROW = 6;

    private final PlanOnPaper plan;
    private final LengthFormat format;
    private final Sheets sheets;
    private final String foot;

    private CutSheets(PlanOnPaper plan, Sheets sheets) {
        this.plan = plan;
        this.sheets = sheets;
        format = plan.format();
        foot = "Plan " + plan.plan().id() + " · week " + plan.plan().week();
    }

    /** As a PDF. */
    public static byte[] pdf(PlanOnPaper plan, PaperSize size, Correction correction) {
        try (Sheets sheets = written(plan, size, correction)) {
            return sheets.bytes();
        }
    }

    /** The same sheets for a page that a browser prints. */
    public static List<SheetPicture> pictures(PlanOnPaper plan, PaperSize size, Correction correction) {
        try (Sheets sheets = written(plan, size, correction)) {
            return sheets.pictures();
        }
    }

    private static Sheets written(PlanOnPaper plan, PaperSize size, Correction correction) {
        Sheets sheets =
                new Sheets(size, correction, "Cut sheets of plan " + plan.plan().id());
        CutSheets writing = new CutSheets(plan, sheets);
        plan.cutPieces().forEach(writing::piece);
        for (int i = 0; i < plan.plan().pairings().size(); i++) {
            Plan.Pairing neck = plan.plan().pairings().get(i);
            if (!plan.isGivenUp(neck)) {
                writing.neck(i + 1, neck);
            }
        }
        if (sheets.count() == 0) {
            new Flow(sheets, "Plan " + plan.plan().id(), writing.foot)
                    .words("This plan cuts no piece, so there is nothing to print.");
        }
        return sheets;
    }

    // One piece

    private void piece(LaidOut laid) {
        Plan.PieceLayout layout = laid.layout();
        Optional<Piece> piece = plan.asPlanned(layout);
        Flow flow = new Flow(sheets, layout.piece(), foot);
        String place = piece.map(Piece::place).orElse(null);
        flow.words(plan.woodName(plan.pieces().get(layout.piece())) + (place == null ? "" : " · " + place) + " · "
                + format.number(layout.length()) + " × " + format.number(layout.width()) + " × "
                + format.print(layout.thickness()));
        if (plan.plan().state() != Plan.State.ACCEPTED) {
            flow.caution(
                    "This plan is not accepted: the piece is not reserved and may go to another neck. Accept it before you cut.");
        }
        laid.parts().stream()
                .filter(p -> plan.isGivenUp(p.pairing()))
                .forEach(p -> flow.caution("Part “" + p.label() + "” is not needed: "
                        + p.pairing().order() + " no. " + p.pairing().number() + " is given up."));
        if (piece.isPresent()) {
            drawn(flow, laid, piece.get());
        } else {
            flow.words(
                    "The piece was measured anew or left the rack since this plan was made, so it is not drawn. Match again "
                            + "before you cut it.");
        }
        flow.heading("Order of work");
        int number = 1;
        for (String step : steps(laid)) {
            flow.step(number++, step);
        }
        settings(flow, laid);
        parts(flow, laid);
        flow.caution(Caution.AT_THE_SAW.title() + ". " + Caution.AT_THE_SAW.text());
        for (Caution caution : cautions(plan.pieces().get(layout.piece()), laid)) {
            flow.caution(caution.title() + ". " + caution.text());
        }
    }

    private void drawn(Flow flow, LaidOut laid, Piece piece) {
        StripDrawing strip = StripDrawing.layout(
                laid.strip(piece),
                new StripDrawing.Scale(laid.layout().length(), laid.layout().sawnThickness()));
        Box box = Box.of(strip.viewBox());
        Scale scale = Scale.fitting(box.width(), flow.width() - 2);
        double times = scale.paperPerWood();
        double face = laid.layout().width().mm();
        double bottom = bottomOf(strip);
        int rows = 2 + laid.lanes().size();
        flow.need((bottom - box.top()) * times + rows * ROW + 20);
        Sheet sheet = flow.sheet();
        flow.note(scale.words()
                + ". Face above, below it the edge of each lane, end grain at the left; waste is hatched, rests are "
                + "dashed. Figures: " + (laid.lanes().size() > 1 ? "long sides, lane by lane, " : "long sides, ")
                + "then the whole length, in " + plan.unit().symbol() + ".");
        double left = -box.left() * times + 1;
        double top = flow.y() + 2 - box.top() * times;
        Placement at = new Placement(new Spot(left, top), times);
        Drawings.strip(sheet, strip, at);
        double y = top + bottom * times + ROW;
        for (LaidOut.Lane lane : laid.lanes()) {
            for (LaidOut.Placed part : laid.parts()) {
                if (part.part().lane() == lane.number()) {
                    along(sheet, at, y, part.part().from(), part.part().to());
                }
            }
            y += ROW;
        }
        along(sheet, at, y, Length.ZERO, laid.layout().length());
        double right = at.of(laid.layout().length().mm(), 0).x() + 3;
        if (right + 4 < sheet.width()) {
            sheet.measure(
                    new Spot(right, at.of(0, face).y()),
                    new Spot(right, at.of(0, 0).y()),
                    FIGURE,
                    format.number(laid.layout().width()));
        }
        flow.down(y - flow.y() + 4);
    }

    /** The strip ends below its lowest lane edge; what is under it is the dimension line of the page. */
    private static double bottomOf(StripDrawing strip) {
        double lowest = 0;
        for (StripDrawing.Stroke stroke : strip.strokes()) {
            if (!stroke.look().equals("d-dim")) {
                String[] numbers =
                        stroke.data().replaceAll("[MLQZ]", " ").strip().split("[ ,]+", -1);
                for (int i = 1; i < numbers.length; i += 2) {
                    lowest = Math.max(lowest, Double.parseDouble(numbers[i]));
                }
            }
        }
        return lowest;
    }

    private void along(Sheet sheet, Placement at, double y, Length from, Length to) {
        sheet.measure(
                new Spot(at.of(from.mm(), 0).x(), y),
                new Spot(at.of(to.mm(), 0).x(), y),
                FIGURE,
                format.number(to.minus(from)));
    }

    private List<String> steps(LaidOut laid) {
        Plan.PieceLayout layout = laid.layout();
        List<String> steps = new ArrayList<>();
        steps.add("Flatten and thickness to " + format.print(layout.sawnThickness()) + " (now "
                + format.print(layout.thickness()) + ") while the piece is whole.");
        if (laid.lanes().size() > 1) {
            StringBuilder rips = new StringBuilder("Joint the near edge, then rip lanes from it: ");
            for (LaidOut.Lane lane : laid.lanes()) {
                rips.append(lane.number() > 1 ? ", then " : "").append(format.print(lane.width()));
            }
            steps.add(rips.append("; kerf ")
                    .append(format.print(laid.kerf()))
                    .append(" between.")
                    .toString());
        }
        for (Plan.Cut cut : laid.cuts()) {
            steps.add(cut(laid, cut));
        }
        steps.add(
                "Write its number on every part, and the code of its label on every rest that goes back to the rack.");
        return steps;
    }

    private String cut(LaidOut laid, Plan.Cut cut) {
        String lane = laid.lanes().size() > 1 ? "Lane " + cut.lane() + ": " : "";
        Length run = laid.run(cut.angle());
        Length kerf = cut.to().minus(cut.from()).minus(run);
        Angle angle = cut.angle();
        if (angle == null) {
            return lane + (lane.isEmpty() ? "Square" : "square") + " cut at " + format.print(cut.from())
                    + " from the left end; kerf " + format.print(kerf) + " to the right.";
        }
        return lane + (lane.isEmpty() ? "Bevel" : "bevel") + " at " + angle + " from " + format.number(cut.from())
                + " on the lower face to "
                + format.print(cut.from().plus(run)) + " on the upper, from the left end; kerf " + format.print(kerf)
                + " along the piece, to the right."
                + (cut.shared() ? " Both sides are parts." : " The other side is a wedge.");
    }

    private void settings(Flow flow, LaidOut laid) {
        Set<Angle> angles = new LinkedHashSet<>();
        laid.cuts().stream().map(Plan.Cut::angle).forEach(a -> {
            if (a != null) {
                angles.add(a);
            }
        });
        if (angles.isEmpty()) {
            return;
        }
        Plan.PieceLayout layout = laid.layout();
        flow.heading("Saw");
        Length widest = laid.lanes().stream().map(LaidOut.Lane::width).reduce(Length.ZERO, Length::max);
        for (Angle angle : angles) {
            flow.words(plan.sawSetting(layout, angle, widest));
        }
    }

    private void parts(Flow flow, LaidOut laid) {
        flow.heading("Parts and rests");
        List<List<String>> rows = new ArrayList<>();
        String unit = " " + plan.unit().symbol();
        rows.add(List.of("Part", "From" + unit, "To" + unit, "Short side", "Long side", "Width", "Bevel"));
        for (LaidOut.Placed x : laid.parts()) {
            Plan.Part p = x.part();
            rows.add(List.of(
                    x.label() + " · " + x.pairing().order() + "/" + x.pairing().number(),
                    format.number(p.from()),
                    format.number(p.to()),
                    format.number(p.shortSide()),
                    format.number(p.longSide()),
                    format.number(p.width()),
                    x.pairing().angle() + (p.bevelAtLeft() ? " left" : " right")));
        }
        for (Plan.Stretch r : laid.layout().rests()) {
            rows.add(List.of(
                    r.usable() ? "rest, to the rack" : "waste",
                    format.number(r.from()),
                    format.number(r.to()),
                    "",
                    format.number(r.to().minus(r.from())),
                    format.number(r.width()),
                    ""));
        }
        flow.table(List.of(0.31, 0.11, 0.11, 0.12, 0.12, 0.1, 0.13), rows);
    }

    private List<Caution> cautions(@Nullable Piece piece, LaidOut laid) {
        List<Caution> found = new ArrayList<>();
        Length shortest = laid.parts().stream()
                .map(x -> x.part().longSide())
                .reduce((a, b) -> a.isShorterThan(b) ? a : b)
                .orElse(plan.shortestMachined());
        if (shortest.isShorterThan(plan.shortestMachined())) {
            found.add(new Caution(
                    "Short parts",
                    "A part of this piece is " + format.print(shortest) + " long, shorter than the "
                            + format.print(plan.shortestMachined())
                            + " the shop’s planer may hold. Never feed it through: thin it on a carrier or by hand.",
                    "the shop’s own shortest machined piece",
                    true));
        }
        found.add(Caution.ALWAYS.get(0));
        if (piece != null) {
            for (String id : piece.wood().speciesIds()) {
                Species wood = plan.woods().get(id);
                if (wood != null) {
                    Caution.sensitiser(wood).filter(c -> !found.contains(c)).ifPresent(found::add);
                }
            }
        }
        return found;
    }

    // One neck

    private void neck(int place, Plan.Pairing pairing) {
        Flow flow = new Flow(sheets, place + " · " + pairing.order() + "/" + pairing.number(), foot);
        flow.words(pairing.design() + " · " + pairing.arrangement().word().toLowerCase(Locale.ROOT) + " at "
                + pairing.angle() + " · neck from " + pairing.neck().piece() + ", head from "
                + pairing.head().piece());
        Optional<ScarfJoint> joint = plan.joint(pairing);
        if (joint.isEmpty()) {
            flow.words(
                    "The design was changed or left since this plan was made, so its joint is not drawn. Match again before you cut.");
            return;
        }
        view(flow, JointDrawing.side(joint.get(), plan.unit()));
        view(flow, JointDrawing.face(joint.get(), plan.unit()));
        figures(flow, pairing, joint.get());
        screws(flow, pairing, joint.get());
        flow.caution(
                "Gluing. Dry-fit first and align on the centre line. Keep to the glue maker’s sheet for open time, clamping, "
                        + "temperature and protection of skin and eyes. Take the screws out before anything is cut or planed near them.");
    }

    private void view(Flow flow, JointDrawing drawing) {
        Box box = Box.of(drawing.viewBox());
        Scale scale = Scale.fitting(box.width(), flow.width());
        double times = scale.paperPerWood();
        flow.need(box.height() * times + 14);
        flow.note(scale.words() + ". " + drawing.title() + ". Figures in "
                + plan.unit().symbol() + ".");
        Drawings.joint(
                flow.sheet(),
                drawing,
                new Placement(new Spot(-box.left() * times, flow.y() - box.top() * times), times));
        flow.down(box.height() * times + 6);
    }

    private void figures(Flow flow, Plan.Pairing pairing, ScarfJoint joint) {
        double half = Bevel.gap(joint.glueFace(), new Angle(500)).mm();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("Joint", plan.unit().symbol()));
        rows.add(List.of("Glue face, long", format.number(joint.glueFace())));
        rows.add(List.of("Glue area, cm²", String.format(Locale.ROOT, "%.1f", joint.glueAreaMm2() / 100)));
        Length seam = pairing.seamFromNut();
        rows.add(List.of(
                seam == null ? "No seam on the head’s front face" : "Seam on the head’s front face, from the nut",
                seam == null ? "" : format.number(seam)));
        Length wing = pairing.wingWidth();
        if (wing != null && wing.isPositive()) {
            rows.add(List.of("Two wings beside the head, each wide", format.number(wing)));
        }
        rows.add(List.of("Gap when the bevels differ by half a degree", format.number(Length.nearestMm(half))));
        flow.table(List.of(0.7, 0.3), rows);
    }

    /** Room beside the finished outline for a screw of up to 4 mm, with wood on both sides of it: common practice. */
    private static final Length SCREW_ROOM = Length.ofMm(8);

    private void screws(Flow flow, Plan.Pairing pairing, ScarfJoint joint) {
        Length narrower = pairing.neck().width().min(pairing.head().width());
        Length finished = joint.input().neckWidth().max(joint.input().headWidth());
        Length beside = finished.isShorterThan(narrower)
                ? Length.ofUm(narrower.minus(finished).um() / 2)
                : Length.ZERO;
        flow.heading("Locating screws");
        if (beside.isShorterThan(SCREW_ROOM)) {
            flow.words(
                    "Beside the finished outline " + format.print(beside)
                            + " of wood goes away on each side of the glue face: too "
                            + "little for a screw. Keep the parts from sliding with stops or blocks clamped against their ends.");
            return;
        }
        Length face = joint.glueFace();
        Scale scale = Scale.fitting(face.mm(), flow.width() * 0.7);
        double times = scale.paperPerWood();
        double w = face.mm() * times;
        double h = narrower.mm() * times;
        double zone = beside.mm() * times;
        flow.words("Only in the hatched wood, which goes away: " + format.print(beside)
                + " wide on each side of the glue face.");
        flow.need(h + 20);
        flow.note(scale.words() + ". The glue face from above.");
        Sheet sheet = flow.sheet();
        Spot corner = new Spot(0, flow.y());
        sheet.rectangle(Line.THICK, corner, w, h);
        sheet.hatch(corner, w, zone, 2);
        sheet.hatch(corner.plus(0, h - zone), w, zone, 2);
        sheet.line(Line.DASHED, corner.plus(0, zone), corner.plus(w, zone));
        sheet.line(Line.DASHED, corner.plus(0, h - zone), corner.plus(w, h - zone));
        sheet.line(Line.HAIR, corner.plus(0, h / 2), corner.plus(w, h / 2));
        sheet.measure(corner.plus(0, h + 5), corner.plus(w, h + 5), FIGURE, format.number(face));
        sheet.measure(corner.plus(w + 4, h), corner.plus(w + 4, 0), FIGURE, format.number(narrower));
        flow.down(h + 12);
    }
}
