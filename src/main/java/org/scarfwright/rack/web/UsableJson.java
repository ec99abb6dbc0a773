package org.scarfwright.rack.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.LongestPart;
import org.scarfwright.rack.MiddleWords;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceUses.DesignPart;
import org.scarfwright.rack.PieceWeight;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.wood.Readiness;

/** What a piece can still give. Lengths it gives are rounded down to the micrometre, what it is out is rounded up. */
@Schema(name = "Usable")
record UsableJson(
        @Schema(description = "Taken off each face after flattening, by the shop's rules")
        BigDecimal planingPerFaceMm,

        @Schema(description = "How far a neck may be out before planing, by the shop's rules")
        BigDecimal neckStraightnessMm,

        @Schema(description = "The longest part that is no farther out")
        BigDecimal straightEnoughMm,

        @Schema(description = "Parts of some lengths; empty when no clear stretch is left")
        List<Part> parts,

        @Schema(description = "The longest neck of the thickness asked for; null when none was") @Nullable
        Longest neck,

        @Schema(description = "The longest head of it") @Nullable
        Longest head,

        @Schema(description = "What each design on file asks, by the wood alone")
        List<Design> designs,

        @Schema(description = "What the second reading says of the warp, in sentences")
        List<String> middle,

        @Schema(allowableValues = {"ready", "too_wet", "too_dry", "not_at_rest", "not_measured"})
        String readiness,

        String readinessSentence,

        @Schema(description = "By the average density of its wood, at its last moisture or 12 %; null when not known")
        @Nullable
        BigDecimal grams) {

    /** What a part of one length keeps. */
    @Schema(name = "UsablePart")
    record Part(
            BigDecimal lengthMm,

            @Schema(description = "Below 0 when nothing is left")
            BigDecimal thicknessMm,

            BigDecimal widthMm,
            BigDecimal outOfStraightMm) {}

    /** The longest part, and what keeps it from being longer. */
    @Schema(name = "LongestPart")
    record Longest(
            @Schema(description = "0 when it gives none") BigDecimal lengthMm,

            @Schema(allowableValues = {"clear_stretch", "thickness", "straightness"})
            String limit) {
        static Longest of(LongestPart part) {
            return new Longest(part.length().toMm(), PieceJson.word(part.limit()));
        }
    }

    /** One part of a design on this piece. */
    @Schema(name = "DesignOnPiece")
    record Design(
            String design,

            @Schema(allowableValues = {"neck", "head"}) String part,

            BigDecimal thicknessMm,
            Longest longest,
            List<Needs> needs,
            UseJson.Answer answer) {}

    /** What a part takes in one arrangement. */
    @Schema(name = "PartNeeds")
    record Needs(
            @Schema(allowableValues = {"underlaid", "overlaid"})
            String arrangement,

            BigDecimal lengthMm) {}

    /** What is needed beside the piece. */
    record Facts(ShopSettings rules, WoodLabels woods, Readiness readiness) {}

    static UsableJson of(Piece piece, UsableQuery query, List<DesignPart> designs, Facts facts) {
        ShopSettings rules = facts.rules();
        Length width = query.width() == null ? piece.width().length() : query.width();
        Length thickness = query.thickness();
        return new UsableJson(
                rules.planingPerFace().toMm(),
                rules.neckStraightness().toMm(),
                LongestPart.straight(piece, rules.neckStraightness()).length().toMm(),
                GivesView.lengths(piece).stream()
                        .map(l -> new Part(
                                l.toMm(),
                                UsableSize.thickness(piece, l, width, rules.planingPerFace())
                                        .toMm(),
                                UsableSize.width(piece, l, rules.edgeAllowance())
                                        .toMm(),
                                UsableSize.straightness(piece, l).toMm()))
                        .toList(),
                thickness == null ? null : Longest.of(LongestPart.of(piece, GivesView.neck(thickness, query, rules))),
                thickness == null ? null : Longest.of(LongestPart.of(piece, GivesView.head(thickness, query, rules))),
                designs.stream().map(d -> design(piece, d, rules)).toList(),
                MiddleWords.of(piece.warp()),
                PieceJson.word(facts.readiness().verdict()),
                facts.readiness().sentence(),
                PieceWeight.of(piece, facts.woods()::species)
                        .map(PieceWeight::grams)
                        .orElse(null));
    }

    private static Design design(Piece piece, DesignPart part, ShopSettings rules) {
        return new Design(
                part.design(),
                part.neck() ? "neck" : "head",
                part.thickness().toMm(),
                Longest.of(GivesView.longest(piece, part, rules)),
                part.needs().stream()
                        .map(n -> new Needs(n.arrangement(), n.length().toMm()))
                        .toList(),
                UseJson.Answer.of(part.answer()));
    }
}
