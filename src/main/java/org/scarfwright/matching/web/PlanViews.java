package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.matching.LaidOut;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.web.PlanView.BookRow;
import org.scarfwright.matching.web.PlanView.CutRow;
import org.scarfwright.matching.web.PlanView.Cutting;
import org.scarfwright.matching.web.PlanView.LevelRow;
import org.scarfwright.matching.web.PlanView.Missing;
import org.scarfwright.matching.web.PlanView.Neck;
import org.scarfwright.matching.web.PlanView.PartRow;
import org.scarfwright.matching.web.PlanView.RestRow;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.ShareStrip;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.web.WoodLook;
import org.scarfwright.web.WoodSwatch;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;

/** Puts a plan into the words and drawings of its page. */
@Component
class PlanViews {
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private final Designs designs;
    private final Orders orders;
    private final Rack rack;
    private final Shop shop;
    private final SpeciesCatalog woods;

    PlanViews(Designs designs, Orders orders, Rack rack, Shop shop, SpeciesCatalog woods) {
        this.designs = designs;
        this.orders = orders;
        this.rack = rack;
        this.shop = shop;
        this.woods = woods;
    }

    /** All of it, as on paper. */
    PlanView view(Plan plan) {
        return view(plan, PlanShow.ALL);
    }

    PlanView view(Plan plan, PlanShow show) {
        return new Writing(plan, show).view();
    }

    /** One plan being written; the lookups it needs are read once. */
    private final class Writing {
        private final Plan plan;
        private final PlanShow show;
        private final PlanShow.Part shown;
        private final PlanShow.Part shownUnfilled;
        /** Necks on this page. */
        private final List<Numbered> necks;

        /** A neck and its number on the plan. */
        private record Numbered(int place, Plan.Pairing pairing) {}

        private final Map<String, NeckDesign> designOf = new HashMap<>();
        private final Map<String, NeckOrder> orderOf = new HashMap<>();
        private final Map<String, Piece> pieceOf;
        private final Map<String, Saw> sawOf;

        Writing(Plan plan, PlanShow show) {
            this.plan = plan;
            this.show = show;
            List<Numbered> found = new ArrayList<>();
            for (int i = 0; i < plan.pairings().size(); i++) {
                if (show.finds(plan.pairings().get(i))) {
                    found.add(new Numbered(i + 1, plan.pairings().get(i)));
                }
            }
            shown = show.part(found.size(), plan.pairings().size());
            necks = found.subList(Math.max(0, shown.from() - 1), shown.to());
            long unfilled = plan.unfilled().stream().filter(show::finds).count();
            shownUnfilled = show.part((int) unfilled, plan.unfilled().size());
            designs.all().forEach(d -> designOf.put(d.code(), d));
            orders.inWeek(IsoWeek.parse(plan.week())).forEach(o -> orderOf.put(o.code(), o));
            pieceOf = rack
                    .findAll(
                            plan.layouts().stream().map(Plan.PieceLayout::piece).toList())
                    .stream()
                    .collect(Collectors.toMap(Piece::code, Function.identity()));
            sawOf = shop.saws().stream().collect(Collectors.toMap(Saw::code, Function.identity()));
        }

        PlanView view() {
            Plan.Books books = plan.books();
            return new PlanView(
                    plan.id(),
                    plan.week(),
                    plan.state(),
                    proof(),
                    meaning(),
                    plan.madeAt(),
                    plan.engine(),
                    BigDecimal.valueOf(plan.seconds())
                            .setScale(1, RoundingMode.HALF_UP)
                            .toPlainString(),
                    plan.filled(),
                    plan.ordered(),
                    plan.levels().stream().map(this::level).toList(),
                    necks(),
                    cuttings(),
                    plan.unfilled().stream()
                            .filter(show::finds)
                            .skip(Math.max(0, shownUnfilled.from() - 1))
                            .limit(shownUnfilled.to() - Math.max(0, shownUnfilled.from() - 1))
                            .map(this::missing)
                            .toList(),
                    bookRows(books),
                    books.input().isZero() ? null : flow(books),
                    books.input(),
                    books.difference(),
                    books.netYield(),
                    books.recovery(),
                    books.rescue(),
                    swatches(),
                    plan.hands(),
                    asked(),
                    shown,
                    shownUnfilled,
                    totals());
        }

        private PlanView.Totals totals() {
            long rests = plan.layouts().stream()
                    .flatMap(l -> l.rests().stream())
                    .filter(Plan.Stretch::usable)
                    .count();
            long setUps = plan.layouts().stream()
                    .flatMap(l -> l.cuts().stream()
                            .filter(c -> c.angle() != null)
                            .map(c -> List.of(Objects.requireNonNull(c.angle()), l.sawnThickness(), l.saw())))
                    .distinct()
                    .count();
            return new PlanView.Totals(plan.layouts().size(), (int) rests, (int) setUps);
        }

        private List<String> asked() {
            List<String> sentences = new ArrayList<>();
            List<String> only = plan.asked().orders();
            if (only.size() == 1) {
                sentences.add("Only order " + only.get(0) + " of the week was to be matched.");
            } else if (!only.isEmpty()) {
                sentences.add("Only " + only.size() + " orders of the week were to be matched: "
                        + String.join(", ", only) + ".");
            }
            if (plan.asked().seed() != 0) {
                sentences.add("Among equally good plans it was taken with seed "
                        + plan.asked().seed() + ".");
            }
            return sentences;
        }

        private Plan.@Nullable OriginKind kind() {
            Plan.Origin origin = plan.asked().origin();
            return origin == null ? null : origin.kind();
        }

        private String proof() {
            if (kind() == Plan.OriginKind.LOCKED) {
                return "locked orders";
            }
            if (kind() == Plan.OriginKind.NEAR_EQUAL && plan.status() == Plan.Status.GAP) {
                return "near-equal";
            }
            return switch (plan.status()) {
                case PROVED -> "proved best";
                case GAP -> "good, not proved best";
                case INFEASIBLE -> "nothing can be filled";
            };
        }

        private String meaning() {
            Plan.Origin origin = plan.asked().origin();
            if (origin != null && origin.kind() == Plan.OriginKind.LOCKED) {
                return "These are orders of plan " + origin.plan()
                        + ", accepted as they are. They were not searched for by themselves; what is proved stands there.";
            }
            if (origin != null && origin.kind() == Plan.OriginKind.NEAR_EQUAL && plan.status() == Plan.Status.GAP) {
                return "This plan was looked for because it differs from plan " + origin.plan()
                        + ", fills as much and costs little more; it need not be the best on any other level. The "
                        + "bounds are those of that plan where they still hold.";
            }
            return switch (plan.status()) {
                case PROVED ->
                    "No other way to cut this rack fills more of these orders, and none that fills as many is better "
                            + "on the levels below it. Each level stands at its proved bound.";
                case GAP ->
                    "The search stopped before it could prove that nothing better exists. The bound beside each level "
                            + "says how much better a plan could be at the most.";
                case INFEASIBLE ->
                    "There are orders, and no piece on the rack fills any of them. The nearest misses say why.";
            };
        }

        private LevelRow level(Plan.Level level) {
            return new LevelRow(
                    level.name(),
                    plain(level.value()),
                    plain(level.bound()),
                    level.unit(),
                    level.value().compareTo(level.bound()) == 0);
        }

        private List<Neck> necks() {
            List<Neck> drawn = new ArrayList<>();
            for (Numbered n : necks) {
                Plan.Pairing p = n.pairing();
                NeckOrder order = orderOf.get(p.order());
                NeckDesign design = designOf.get(p.design());
                drawn.add(new Neck(
                        n.place(),
                        p.order(),
                        p.number(),
                        order == null ? p.number() : Math.max(order.quantity(), p.number()),
                        p.design(),
                        design == null ? p.design() : design.name(),
                        p.arrangement().word(),
                        p.angle().toString(),
                        p.neck().piece(),
                        p.head().piece(),
                        p.wingWidth(),
                        p.seamFromNut(),
                        drawing(p, design),
                        p.reasons()));
            }
            return drawn;
        }

        private @Nullable JointDrawing drawing(Plan.Pairing p, @Nullable NeckDesign design) {
            if (design == null) {
                return null;
            }
            JointInput input = new JointInput(
                    p.arrangement(),
                    p.angle(),
                    design.neckThickness().length(),
                    design.headThickness().length(),
                    design.neckLength().length(),
                    design.headLength().length(),
                    design.neckWidth(),
                    design.headWidth().length());
            // A design that was edited since may no longer have this joint.
            return ScarfJoint.refusals(input).isEmpty() ? JointDrawing.side(ScarfJoint.of(input)) : null;
        }

        private List<Cutting> cuttings() {
            Set<String> pieces = new LinkedHashSet<>();
            for (Numbered n : necks) {
                pieces.add(n.pairing().neck().piece());
                pieces.add(n.pairing().head().piece());
            }
            List<Plan.PieceLayout> layouts = plan.layouts().stream()
                    .filter(l -> pieces.contains(l.piece()))
                    .toList();
            StripDrawing.Scale scale = StripDrawing.Scale.of(layouts.stream()
                    .map(l -> pieceOf.get(l.piece()))
                    .filter(Objects::nonNull)
                    .map(PieceStrip::of)
                    .toList());
            return layouts.stream().map(l -> cutting(l, scale)).toList();
        }

        private Cutting cutting(Plan.PieceLayout layout, StripDrawing.Scale scale) {
            Piece piece = pieceOf.get(layout.piece());
            Saw saw = sawOf.get(layout.saw());
            LaidOut laid = LaidOut.of(plan, layout, saw == null ? Length.ZERO : saw.kerf());
            boolean asPlanned = piece != null && piece.length().length().equals(layout.length());
            return new Cutting(
                    layout.piece(),
                    piece == null ? "" : woodName(piece),
                    MM.number(layout.length()) + " × " + MM.number(layout.width()) + " × "
                            + MM.print(layout.thickness()),
                    piece == null ? null : piece.place(),
                    saw == null ? layout.saw() : saw.name(),
                    layout.sawnThickness(),
                    asPlanned && piece != null ? StripDrawing.layout(laid.strip(piece), scale) : null,
                    laid.parts().stream().map(Writing::partRow).toList(),
                    laid.cuts().stream().map(c -> cutRow(laid, c)).toList(),
                    layout.rests().stream()
                            .map(r -> new RestRow(
                                    r.lane(), r.from(), r.to(), r.to().minus(r.from()), r.width(), r.usable()))
                            .toList());
        }

        private static PartRow partRow(LaidOut.Placed x) {
            Plan.Part part = x.part();
            return new PartRow(
                    x.place(),
                    x.head() ? "head" : "neck",
                    x.pairing().order(),
                    x.pairing().angle().toString(),
                    part.from(),
                    part.to(),
                    part.shortSide(),
                    part.longSide(),
                    part.width(),
                    part.thickness());
        }

        private static CutRow cutRow(LaidOut laid, Plan.Cut c) {
            Length run = laid.run(c.angle());
            String kind = c.angle() == null ? "square" : "bevel " + c.angle() + (c.shared() ? ", shared" : "");
            return new CutRow(
                    c.lane(),
                    kind,
                    c.from().plus(run),
                    c.from(),
                    c.to().minus(c.from()).minus(run));
        }

        private Missing missing(Plan.Unfilled u) {
            NeckDesign design = designOf.get(u.design());
            return new Missing(
                    u.order(),
                    u.design(),
                    design == null ? u.design() : design.name(),
                    u.missing(),
                    u.misses(),
                    u.relaxation(),
                    u.buy());
        }

        private List<WoodSwatch> swatches() {
            Set<String> ids = new LinkedHashSet<>();
            plan.layouts().forEach(l -> {
                Piece piece = pieceOf.get(l.piece());
                if (piece != null) {
                    ids.addAll(piece.wood().speciesIds());
                }
            });
            return ids.stream()
                    .map(id -> new WoodSwatch(speciesName(id), WoodLook.of(id)))
                    .toList();
        }

        private String woodName(Piece piece) {
            return piece.wood().speciesIds().stream().map(this::speciesName).collect(Collectors.joining(" / "));
        }

        private String speciesName(String id) {
            return woods.find(id).map(Species::commonName).orElse(id);
        }
    }

    /** The value of a level; what the program counts is exact, so no more than three places are there to show. */
    static String plain(BigDecimal number) {
        BigDecimal shown = number.setScale(Math.min(number.scale(), 3), RoundingMode.HALF_UP);
        return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    }

    private static StripDrawing flow(Plan.Books books) {
        return ShareStrip.of(
                "flow",
                "Where the wood goes",
                bookRows(books).stream()
                        .map(r -> new ShareStrip.Share(
                                r.letter(), r.name(), r.volume().shareOf(books.input()), r.kind()))
                        .toList());
    }

    static List<BookRow> bookRows(Plan.Books b) {
        return List.of(
                new BookRow(
                        "a",
                        "Parts as sawn",
                        "necks and heads, with their allowances",
                        b.parts(),
                        ShareStrip.Kind.USED),
                new BookRow(
                        "b",
                        "Rests back to the rack",
                        "long and wide enough to keep",
                        b.usableRest(),
                        ShareStrip.Kind.REST),
                new BookRow(
                        "c",
                        "Rests too small",
                        "shorter or narrower than the shop keeps",
                        b.unusableRest(),
                        ShareStrip.Kind.WASTE),
                new BookRow("d", "Saw kerf", "turned to dust by the cuts", b.kerf(), ShareStrip.Kind.WASTE),
                new BookRow(
                        "e", "Bevel wedges", "beside bevels no second part shares", b.bevel(), ShareStrip.Kind.WASTE),
                new BookRow("f", "Edges", "wood beside the parts, and jointed edges", b.edge(), ShareStrip.Kind.WASTE),
                new BookRow("g", "Ends and flaws", "end checks and flaws cut out", b.trim(), ShareStrip.Kind.WASTE),
                new BookRow("h", "Planing", "flattening and planing both faces", b.planing(), ShareStrip.Kind.WASTE));
    }
}
