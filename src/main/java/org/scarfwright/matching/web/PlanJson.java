package org.scarfwright.matching.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Length;

/**
 * A plan as the API gives it. Lengths are decimal millimetres, volumes decimal cubic millimetres to the last digit, angles decimal
 * degrees.
 *
 * @param state proposed, accepted or undone
 * @param status PROVED, GAP or INFEASIBLE
 * @param orders codes of the orders that were to be matched; empty for every order of the week
 * @param origin the plan it comes from
 */
record PlanJson(
        long id,
        String week,
        String state,
        String status,
        Instant madeAt,
        String engine,
        double seconds,
        int filled,
        int ordered,
        List<LevelJson> levels,
        List<PairingJson> pairings,
        List<UnfilledJson> unfilled,
        List<LayoutJson> layouts,
        BooksJson books,
        double netYield,
        double recovery,
        double rescue,
        List<String> hands,
        List<String> orders,
        int seed,
        @Nullable OriginJson origin) {

    /** @param kind near-equal, locked or remainder */
    record OriginJson(String kind, long plan) {}

    record LevelJson(String name, BigDecimal value, BigDecimal bound, String unit) {}

    /** @param number which neck of the order, from 1 */
    record PairingJson(
            String order,
            int number,
            String design,
            String arrangement,
            BigDecimal angle,
            LockJson neck,
            LockJson head,
            @Nullable BigDecimal wingWidthMm,
            @Nullable BigDecimal seamFromNutMm,
            List<String> reasons) {}

    record LockJson(
            String piece,
            int lane,
            BigDecimal fromMm,
            BigDecimal toMm,
            boolean bevelAtLeft,
            BigDecimal shortMm,
            BigDecimal longMm,
            BigDecimal widthMm,
            BigDecimal thicknessMm) {}

    record UnfilledJson(
            String order,
            String design,
            int missing,
            List<MissJson> misses,
            @Nullable String relaxation,
            @Nullable String buy) {}

    record MissJson(String piece, String rule, @Nullable BigDecimal shortByMm, String text) {}

    record LayoutJson(
            String piece,
            BigDecimal lengthMm,
            BigDecimal widthMm,
            BigDecimal thicknessMm,
            BigDecimal sawnThicknessMm,
            String saw,
            List<CutJson> cuts,
            List<StretchJson> rests,
            List<StretchJson> trims,
            BooksJson books) {}

    /** @param angle null for a square cut */
    record CutJson(
            int lane,
            BigDecimal fromMm,
            BigDecimal toMm,
            @Nullable BigDecimal angle,
            boolean shared) {}

    record StretchJson(int lane, BigDecimal fromMm, BigDecimal toMm, BigDecimal widthMm, boolean usable) {}

    record BooksJson(
            BigDecimal inputMm3,
            BigDecimal partsMm3,
            BigDecimal kerfMm3,
            BigDecimal bevelMm3,
            BigDecimal edgeMm3,
            BigDecimal trimMm3,
            BigDecimal planingMm3,
            BigDecimal usableRestMm3,
            BigDecimal unusableRestMm3,
            BigDecimal rescuedMm3) {}

    static PlanJson of(Plan plan) {
        return new PlanJson(
                plan.id(),
                plan.week(),
                plan.state().name().toLowerCase(Locale.ROOT),
                plan.status().name(),
                plan.madeAt(),
                plan.engine(),
                plan.seconds(),
                plan.filled(),
                plan.ordered(),
                levels(plan),
                plan.pairings().stream().map(PlanJson::pairing).toList(),
                plan.unfilled().stream().map(PlanJson::unfilled).toList(),
                plan.layouts().stream().map(PlanJson::layout).toList(),
                books(plan.books()),
                plan.books().netYield(),
                plan.books().recovery(),
                plan.books().rescue(),
                plan.hands(),
                plan.asked().orders(),
                plan.asked().seed(),
                origin(plan.asked().origin()));
    }

    static List<LevelJson> levels(Plan plan) {
        return plan.levels().stream()
                .map(l -> new LevelJson(l.name(), l.value(), l.bound(), l.unit()))
                .toList();
    }

    private static @Nullable OriginJson origin(Plan.@Nullable Origin origin) {
        return origin == null
                ? null
                : new OriginJson(origin.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'), origin.plan());
    }

    private static PairingJson pairing(Plan.Pairing p) {
        return new PairingJson(
                p.order(),
                p.number(),
                p.design(),
                p.arrangement().word(),
                p.angle().toDegrees(),
                part(p.neck()),
                part(p.head()),
                mm(p.wingWidth()),
                mm(p.seamFromNut()),
                p.reasons());
    }

    private static LockJson part(Plan.Part p) {
        return new LockJson(
                p.piece(),
                p.lane(),
                p.from().toMm(),
                p.to().toMm(),
                p.bevelAtLeft(),
                p.shortSide().toMm(),
                p.longSide().toMm(),
                p.width().toMm(),
                p.thickness().toMm());
    }

    private static UnfilledJson unfilled(Plan.Unfilled u) {
        return new UnfilledJson(
                u.order(),
                u.design(),
                u.missing(),
                u.misses().stream()
                        .map(m -> new MissJson(m.piece(), m.rule(), mm(m.shortBy()), m.text()))
                        .toList(),
                u.relaxation(),
                u.buy());
    }

    private static LayoutJson layout(Plan.PieceLayout l) {
        return new LayoutJson(
                l.piece(),
                l.length().toMm(),
                l.width().toMm(),
                l.thickness().toMm(),
                l.sawnThickness().toMm(),
                l.saw(),
                l.cuts().stream()
                        .map(c -> new CutJson(
                                c.lane(),
                                c.from().toMm(),
                                c.to().toMm(),
                                c.angle() == null ? null : c.angle().toDegrees(),
                                c.shared()))
                        .toList(),
                l.rests().stream().map(PlanJson::stretch).toList(),
                l.trims().stream().map(PlanJson::stretch).toList(),
                books(l.books()));
    }

    private static StretchJson stretch(Plan.Stretch s) {
        return new StretchJson(
                s.lane(), s.from().toMm(), s.to().toMm(), s.width().toMm(), s.usable());
    }

    static BooksJson books(Plan.Books b) {
        return new BooksJson(
                b.input().toMm3(),
                b.parts().toMm3(),
                b.kerf().toMm3(),
                b.bevel().toMm3(),
                b.edge().toMm3(),
                b.trim().toMm3(),
                b.planing().toMm3(),
                b.usableRest().toMm3(),
                b.unusableRest().toMm3(),
                b.rescued().toMm3());
    }

    private static @Nullable BigDecimal mm(@Nullable Length length) {
        return length == null ? null : length.toMm();
    }
}
