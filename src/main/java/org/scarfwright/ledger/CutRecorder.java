package org.scarfwright.ledger;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Bevel;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedCut;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceChangedSinceException;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class CutRecorder implements CutRecording {
    private static final Length SHORTEST = Length.ofMm(1);

    /** A rest may be a little more than its piece was said to be: two people measure. Choice of this program. */
    private static final Length TWO_PEOPLE = Length.ofMm(2);

    private static final int LONGEST_NOTE = 2000;
    private static final int LONGEST_PLACE = 60;

    private static final List<Outcome.Cause> CAUSES = List.of(
            Outcome.Cause.KERF,
            Outcome.Cause.BEVEL,
            Outcome.Cause.EDGE,
            Outcome.Cause.TRIM,
            Outcome.Cause.PLANING,
            Outcome.Cause.REST);

    private final Rack rack;
    private final Cutting cutting;
    private final Plans plans;
    private final Shop shop;
    private final EntryTable entries;

    CutRecorder(Rack rack, Cutting cutting, Plans plans, Shop shop, EntryTable entries) {
        this.rack = rack;
        this.cutting = cutting;
        this.plans = plans;
        this.shop = shop;
        this.entries = entries;
    }

    @Override
    @Transactional(readOnly = true)
    public Proposal propose(String code, List<Integer> sections) {
        return new Sheet(find(code), sections).proposal();
    }

    @Override
    @Transactional
    public Recorded record(String code, long seen, List<Integer> sections, Map<String, String> typed) {
        Piece piece = find(code);
        if (piece.version() != seen) {
            throw new ConflictException("Piece " + piece.code()
                    + " was changed since you opened it. What you wrote is kept; look at it and record it again.");
        }
        if (!piece.state().isThere()) {
            throw new ConflictException("Piece " + piece.code() + " is " + PieceWords.state(piece.state())
                    + "; nothing can be cut from it.");
        }
        Sheet sheet = new Sheet(piece, sections);
        Cutting.Cut cut = new Reading(sheet, typed).cut();
        try {
            Cutting.Made made = cutting.cut(cut);
            // The end of the chain is still locked by this transaction, so it is the entry of this cut.
            return new Recorded(
                    entries.entry(entries.head().entry()).orElseThrow(),
                    made.rests().stream().map(Piece::code).toList());
        } catch (PieceChangedSinceException e) {
            throw new ConflictException(
                    "Piece " + piece.code()
                            + " was changed at the same moment. What you wrote is kept; look at it again.",
                    e);
        }
    }

    private Piece find(String code) {
        return rack.find(code)
                .orElseThrow(() -> new NotFoundException(
                        "There is no piece “" + (code.length() > 40 ? code.substring(0, 40) + "…" : code) + "”."));
    }

    /** What the plan says of a piece, for some of its sections. */
    private final class Sheet {
        private final Piece piece;
        private final LengthUnit unit = shop.settings().unit();
        private final @Nullable Plan plan;
        private final @Nullable PlannedCut planned;
        private final List<Integer> taken = new ArrayList<>();
        private final List<Integer> now = new ArrayList<>();
        private final PlannedCut.@Nullable Share share;
        private final Map<String, String> fields = new LinkedHashMap<>();
        private final List<Part> parts = new ArrayList<>();
        private final Map<String, PlannedCut.SectionPart> laid = new LinkedHashMap<>();
        private final List<Rest> rests = new ArrayList<>();
        private final Map<String, Plan.Stretch> stretches = new LinkedHashMap<>();
        private final List<Waste> wastes = new ArrayList<>();
        private final Length leftLength;

        Sheet(Piece piece, List<Integer> wanted) {
            this.piece = piece;
            OptionalLong held = rack.holder(piece.code());
            this.plan = held.isEmpty() ? null : plans.find(held.getAsLong()).orElse(null);
            this.planned =
                    plan == null ? null : PlannedCut.of(plan, piece.code()).orElse(null);
            if (plan != null && planned != null) {
                Set<String> done = entries.cutParts(piece.code(), plan.id());
                Set<PlannedNeck> givenUp = plans.givenUp(plan.id()).stream()
                        .map(Plans.GivenUp::neck)
                        .collect(Collectors.toSet());
                for (int i = 0; i < planned.sections().size(); i++) {
                    List<PlannedCut.SectionPart> here =
                            planned.sections().get(i).parts();
                    boolean cut = here.stream().anyMatch(p -> done.contains(key(p)));
                    boolean needed = here.stream()
                            .anyMatch(p -> !givenUp.contains(p.neck().of(plan.id())));
                    if (cut) {
                        taken.add(i);
                    } else if (wanted.isEmpty() ? needed : wanted.contains(i + 1)) {
                        now.add(i);
                    }
                }
            }
            this.share = planned == null || now.isEmpty() ? null : planned.share(taken, now);
            Length gone = share == null ? Length.ZERO : share.length();
            boolean all = share != null
                    && planned != null
                    && taken.size() + now.size() == planned.sections().size();
            this.leftLength = share == null || all
                    ? Length.ZERO
                    : piece.length().length().minus(gone).max(Length.ZERO);
            fillParts();
            fillRests();
            fillWastes();
            boolean left = leftLength.isPositive();
            fields.put("left-length", left ? number(leftLength) : "");
            fields.put("left-width", left ? number(piece.width().length()) : "");
            fields.put("left-thickness", left ? number(piece.thickness().length()) : "");
        }

        /** Where a point of the plan's layout lies on what an earlier cut left of the piece; that cut lay at its left. */
        private Length shifted(Length from) {
            Length gone = this.planned == null
                    ? Length.ZERO
                    : this.planned.layout().length().minus(piece.length().length());
            return from.minus(gone).max(Length.ZERO);
        }

        private static String key(PlannedCut.SectionPart part) {
            return part.neck().order() + " " + part.neck().number() + " " + (part.head() ? "HEAD" : "NECK");
        }

        private void fillParts() {
            if (planned == null || plan == null) {
                return;
            }
            for (int i : now) {
                int n = 0;
                for (PlannedCut.SectionPart p : planned.sections().get(i).parts()) {
                    String name = "part-" + (i + 1) + "-" + ++n;
                    parts.add(new Part(name, neck(plan.id(), p), p.volume()));
                    laid.put(name, p);
                    fields.put(name + "-length", number(p.part().longSide()));
                    fields.put(name + "-width", number(p.part().width()));
                    fields.put(name + "-thickness", number(p.part().thickness()));
                }
            }
        }

        private void fillRests() {
            int n = 0;
            if (share != null) {
                for (Plan.Stretch rest : share.rests()) {
                    if (rest.usable()) {
                        String name = "rest-" + ++n;
                        Length length = rest.to().minus(rest.from());
                        rests.add(new Rest(
                                name,
                                n,
                                Optional.of(Volume.of(
                                        length, rest.width(), piece.thickness().length()))));
                        stretches.put(name, rest);
                        fields.put(name + "-length", number(length));
                        fields.put(name + "-width", number(rest.width()));
                        fields.put(name + "-thickness", number(piece.thickness().length()));
                    }
                }
            }
            for (int more = 0; more < MORE_RESTS; more++) {
                rests.add(new Rest("rest-" + ++n, n, Optional.empty()));
            }
        }

        private void fillWastes() {
            Plan.Books books = share == null ? Plan.Books.NOTHING : share.books();
            for (Outcome.Cause cause : CAUSES) {
                Volume volume = switch (cause) {
                    case KERF -> books.kerf();
                    case BEVEL -> books.bevel();
                    case EDGE -> books.edge();
                    case TRIM -> books.trim();
                    case PLANING -> books.planing();
                    case REST -> books.unusableRest();
                    case SCRAPPED, SPOILT -> Volume.ZERO;
                };
                String name = "waste-" + cause.name().toLowerCase(Locale.ROOT);
                wastes.add(new Waste(name, cause, volume));
                fields.put(name, volume.isZero() ? "" : cm3(volume));
            }
        }

        private static Outcome.NeckPart neck(long plan, PlannedCut.SectionPart p) {
            return new Outcome.NeckPart(
                    plan, p.neck().order(), p.neck().number(), p.neck().design(), p.head());
        }

        private String number(Length length) {
            return new LengthFormat(unit, Locale.ROOT).number(length);
        }

        Proposal proposal() {
            List<Section> sections = new ArrayList<>();
            if (planned != null && plan != null) {
                for (int i = 0; i < planned.sections().size(); i++) {
                    sections.add(new Section(
                            i + 1,
                            String.join(
                                    " and ",
                                    planned.sections().get(i).parts().stream()
                                            .map(p -> neck(plan.id(), p).title())
                                            .toList()),
                            taken.contains(i),
                            now.contains(i)));
                }
            }
            return new Proposal(
                    piece,
                    plan == null ? null : plan.id(),
                    sections,
                    parts,
                    rests,
                    wastes,
                    leftLength.isPositive(),
                    fields);
        }
    }

    /** 12.4, as the form shows a volume. */
    static String cm3(Volume volume) {
        return volume.toMm3().movePointLeft(3).setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    /** What a person typed over a sheet. */
    private static final class Reading {
        private final Sheet sheet;
        private final Map<String, String> typed;
        private final List<FieldError> errors = new ArrayList<>();

        Reading(Sheet sheet, Map<String, String> typed) {
            this.sheet = sheet;
            this.typed = typed;
        }

        private String text(String name) {
            String text = typed.get(name);
            return text == null ? sheet.fields.getOrDefault(name, "") : text.strip();
        }

        private boolean asFilledIn(String name) {
            return text(name).equals(sheet.fields.getOrDefault(name, ""));
        }

        private boolean ticked(String name) {
            return text(name).equals("true");
        }

        private void wrong(String name, String label, String message) {
            errors.add(new FieldError("/" + name, label, text(name), message));
        }

        Cutting.Cut cut() {
            List<Outcome> outcomes = new ArrayList<>();
            sheet.parts.forEach(p -> part(p).ifPresent(outcomes::add));
            List<Cutting.Rest> rests = new ArrayList<>();
            Volume small = Volume.ZERO;
            for (Rest row : sheet.rests) {
                Optional<Cutting.Rest> rest = rest(row);
                if (rest.isPresent() && ticked(row.name() + "-waste")) {
                    small = small.plus(rest.get().size().volume());
                } else {
                    rest.ifPresent(rests::add);
                }
            }
            for (Waste waste : sheet.wastes) {
                Volume volume = volume(waste);
                if (waste.cause() == Outcome.Cause.REST) {
                    volume = volume.plus(small);
                }
                if (!volume.isZero() || !waste.planned().isZero()) {
                    outcomes.add(Outcome.waste(
                            sheet.piece.code(), waste.cause(), volume, sheet.plan == null ? null : waste.planned()));
                }
            }
            Optional<Cutting.Left> left = left();
            Doing doing = doing();
            if (errors.isEmpty()
                    && sheet.plan != null
                    && sheet.planned != null
                    && sheet.now.isEmpty()
                    && sheet.taken.size() < sheet.planned.sections().size()) {
                errors.add(new FieldError(
                        "/section-1", "Sections", "", "are all left out; tick at least one that was cut"));
            }
            if (errors.isEmpty() && outcomes.isEmpty() && rests.isEmpty() && left.isEmpty()) {
                errors.add(new FieldError(
                        "/rest-1-length",
                        "Length",
                        "",
                        "is empty, and so is everything else; write what the cut gave, or scrap the piece instead"));
            }
            if (!errors.isEmpty()) {
                throw new InvalidInputException(errors);
            }
            return new Cutting.Cut(sheet.piece, left, rests, outcomes, doing);
        }

        private Optional<Outcome> part(Part part) {
            PlannedCut.SectionPart laid = sheet.laid.get(part.name());
            if (laid == null) {
                return Optional.empty();
            }
            String title = part.neck().title();
            Length length = exact(
                    part.name() + "-length",
                    "Long side of " + title,
                    laid.part().longSide());
            Length width = exact(
                    part.name() + "-width", "Width of " + title, laid.part().width());
            Length thickness = exact(
                    part.name() + "-thickness",
                    "Thickness of " + title,
                    laid.part().thickness());
            if (length == null || width == null || thickness == null) {
                return Optional.empty();
            }
            Angle angle = laid.neck().angle();
            Length run = thickness.equals(laid.part().thickness())
                    ? laid.part().longSide().minus(laid.part().shortSide())
                    : Bevel.run(thickness, angle);
            Length shortSide = length.minus(run);
            if (!shortSide.isPositive()) {
                wrong(
                        part.name() + "-length",
                        "Long side of " + title,
                        "is no longer than its bevel, " + run + "; write the long side");
                return Optional.empty();
            }
            Volume volume = Volume.of(shortSide.plus(length), thickness, width).halfDown();
            Outcome.Size size = new Outcome.Size(length, width, thickness);
            return Optional.of(
                    ticked(part.name() + "-spoilt")
                            ? Outcome.spoilt(sheet.piece.code(), part.neck(), size, volume, part.planned())
                            : Outcome.part(sheet.piece.code(), part.neck(), size, volume, part.planned()));
        }

        /** The exact figure where the field is as it was filled in. */
        private @Nullable Length exact(String name, String label, Length planned) {
            if (asFilledIn(name)) {
                return planned;
            }
            TypedLength read = length(name, label);
            return read == null ? null : read.length();
        }

        private @Nullable TypedLength length(String name, String label) {
            try {
                TypedLength read = TypedLength.parse(text(name), sheet.unit);
                if (read.length().isShorterThan(SHORTEST)) {
                    wrong(name, label, "is shorter than " + SHORTEST + "; write for example 120");
                    return null;
                }
                Length whole = sheet.piece.length().length().plus(TWO_PEOPLE);
                if (read.length().isLongerThan(whole)) {
                    wrong(
                            name,
                            label,
                            "is longer than the piece it is cut from, "
                                    + sheet.piece.length().length()
                                    + "; correct it, or measure the piece again first");
                    return null;
                }
                return read;
            } catch (MeasureFormatException e) {
                wrong(name, label, String.valueOf(e.getMessage()));
                return null;
            }
        }

        private Optional<Cutting.Rest> rest(Rest row) {
            String name = row.name();
            if (text(name + "-length").isEmpty()
                    && text(name + "-width").isEmpty()
                    && text(name + "-thickness").isEmpty()) {
                return Optional.empty();
            }
            String title = " of rest " + row.number();
            Plan.Stretch stretch = sheet.stretches.get(name);
            Cutting.Size size = size(
                    name,
                    title,
                    stretch == null ? null : stretch.to().minus(stretch.from()),
                    stretch == null ? null : stretch.width());
            String place = text(name + "-place");
            if (place.length() > LONGEST_PLACE) {
                wrong(name + "-place", "Place" + title, "has more than " + LONGEST_PLACE + " characters");
            }
            String note = text(name + "-note");
            if (note.length() > LONGEST_NOTE) {
                wrong(name + "-note", "Note" + title, "has more than " + LONGEST_NOTE + " characters");
            }
            String code = text(name + "-code");
            if (!code.isEmpty()) {
                Piece.codeRefusal(code).ifPresent(why -> wrong(name + "-code", "Code" + title, why));
            }
            return size == null
                    ? Optional.empty()
                    : Optional.of(new Cutting.Rest(
                            size,
                            code.isEmpty() ? null : code,
                            stretch == null ? null : sheet.shifted(stretch.from()),
                            place.isEmpty() ? null : place,
                            note,
                            row.planned().orElse(null)));
        }

        private Cutting.@Nullable Size size(
                String name, String title, @Nullable Length length, @Nullable Length width) {
            Piece piece = sheet.piece;
            TypedLength along = kept(name + "-length", "Length" + title, length, null);
            TypedLength across = kept(
                    name + "-width",
                    "Width" + title,
                    width == null ? piece.width().length() : width,
                    piece.width());
            TypedLength through = kept(
                    name + "-thickness", "Thickness" + title, piece.thickness().length(), piece.thickness());
            return along == null || across == null || through == null ? null : new Cutting.Size(along, across, through);
        }

        /** Empty width and thickness are those of the piece, as they were typed. */
        private @Nullable TypedLength kept(
                String name, String label, @Nullable Length planned, @Nullable TypedLength ofPiece) {
            if (ofPiece != null
                    && (text(name).isEmpty()
                            || (asFilledIn(name) && ofPiece.length().equals(planned)))) {
                return ofPiece;
            }
            if (planned != null && asFilledIn(name) && !text(name).isEmpty()) {
                return TypedLength.of(planned);
            }
            return length(name, label);
        }

        private Optional<Cutting.Left> left() {
            if (text("left-length").isEmpty()
                    && text("left-width").isEmpty()
                    && text("left-thickness").isEmpty()) {
                return Optional.empty();
            }
            Cutting.Size size =
                    size("left", " of what is left", sheet.leftLength.isPositive() ? sheet.leftLength : null, null);
            if (size == null) {
                return Optional.empty();
            }
            Length whole = sheet.piece.length().length();
            boolean more = sheet.planned != null
                    && sheet.taken.size() + sheet.now.size()
                            < sheet.planned.sections().size();
            return Optional.of(
                    new Cutting.Left(size, whole.minus(size.length().length()).max(Length.ZERO), more));
        }

        private Volume volume(Waste waste) {
            if (asFilledIn(waste.name())) {
                return waste.planned();
            }
            if (text(waste.name()).isEmpty()) {
                return Volume.ZERO;
            }
            try {
                return Volume.parseCm3(text(waste.name()));
            } catch (MeasureFormatException e) {
                String label = ActWords.cause(waste.cause());
                wrong(
                        waste.name(),
                        Character.toUpperCase(label.charAt(0)) + label.substring(1),
                        String.valueOf(e.getMessage()));
                return Volume.ZERO;
            }
        }

        private Doing doing() {
            String who = text("who");
            String why = text("why");
            if (who.length() > Doing.LONGEST_WHO) {
                wrong("who", "Who", "must have at most " + Doing.LONGEST_WHO + " characters");
            }
            if (why.length() > Doing.LONGEST_WHY) {
                wrong("why", "Why", "has more than " + Doing.LONGEST_WHY + " characters");
            }
            return Doing.of(PieceChanged.Kind.CUT, who, why);
        }
    }
}
