package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.LongestPart;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceUses.DesignPart;
import org.scarfwright.rack.UsableSize;
import org.scarfwright.rack.Zone;
import org.scarfwright.shop.ShopSettings;

/**
 * What a piece can still give, every text ready to print.
 *
 * @param offers the longest neck and head of the usual thicknesses
 * @param asked the longest part of the thickness and width somebody asked for; empty when nobody did
 * @param designs what each design on file asks, and what there is
 * @param parts what parts of some lengths keep; empty when no clear stretch is left
 */
record GivesView(
        List<String> offers,
        @Nullable String asked,
        List<DesignRow> designs,
        List<PartRow> parts,
        @Nullable ThicknessCurve curve) {
    /** Common practice: a neck blank is about 20 mm thick and a head about 15 mm. */
    private static final Length NECK = Length.ofMm(20);

    private static final Length HEAD = Length.ofMm(15);
    private static final int[] SHOWN_MM = {100, 150, 200, 300, 400, 500, 600, 700, 800, 1000, 1500, 2000, 3000, 4500};

    /** One part of a design: what it asks, the longest there is of its thickness, and what the rules say. */
    record DesignRow(
            String design, String part, String thickness, String needs, String longest, boolean fits, String verdict) {}

    /** How many parts of the designs it could be. */
    public String designsSummary() {
        return "For the designs on file: it could be " + fitting("neck") + " and " + fitting("head");
    }

    private String fitting(String part) {
        long all = designs.stream().filter(d -> d.part().equals(part)).count();
        long fit =
                designs.stream().filter(d -> d.part().equals(part) && d.fits()).count();
        return (fit == 0 ? "none" : fit) + " of " + all + (all == 1 ? " " + part : " " + part + "s");
    }

    /** What a part of one length can still be. */
    record PartRow(String length, String thickness, String width, String out) {}

    static GivesView of(Piece piece, UsableQuery query, List<DesignPart> designs, ShopSettings rules) {
        Length clear = clear(piece);
        return new GivesView(
                offers(piece, clear, rules),
                asked(piece, query, rules),
                designs.stream().map(d -> row(piece, d, rules)).toList(),
                parts(piece, query, rules),
                clear.isPositive()
                        ? ThicknessCurve.of(
                                piece,
                                new ThicknessCurve.Wanted(
                                        clear,
                                        rules.planingPerFace(),
                                        rules.neckStraightness(),
                                        ripped(piece, query, designs)))
                        : null);
    }

    /** The widths that were asked for or that designs on file ask for, as far as the piece is wider; the wider first. */
    private static List<ThicknessCurve.Ripped> ripped(Piece piece, UsableQuery query, List<DesignPart> designs) {
        List<ThicknessCurve.Ripped> widths = new ArrayList<>();
        Length whole = piece.width().length();
        Length wanted = query.width();
        if (wanted != null) {
            widths.add(new ThicknessCurve.Ripped(wanted, "as you asked"));
        } else {
            for (boolean neck : new boolean[] {false, true}) {
                designs.stream()
                        .filter(d -> d.neck() == neck)
                        .map(DesignPart::width)
                        .filter(w -> w.isPositive() && w.isShorterThan(whole))
                        .max(Comparator.naturalOrder())
                        .ifPresent(w -> widths.add(
                                new ThicknessCurve.Ripped(w, "the widest " + (neck ? "neck" : "head") + " on file")));
            }
        }
        return widths.stream()
                .sorted(Comparator.comparing(ThicknessCurve.Ripped::width).reversed())
                .toList();
    }

    private static @Nullable String asked(Piece piece, UsableQuery query, ShopSettings rules) {
        Length thickness = query.thickness();
        if (thickness == null) {
            return null;
        }
        Length width = query.width();
        String of = "Of a part " + PieceView.MM.print(thickness) + " thick"
                + (width == null ? "" : ", when the piece is ripped to " + PieceView.MM.print(width) + " first");
        LongestPart neck = LongestPart.of(piece, neck(thickness, query, rules));
        LongestPart head = LongestPart.of(piece, head(thickness, query, rules));
        return of + ": as a neck " + sentence(piece, neck, rules) + " As a head " + sentence(piece, head, rules);
    }

    static LongestPart.Wanted neck(Length thickness, UsableQuery query, ShopSettings rules) {
        return new LongestPart.Wanted(thickness, rules.planingPerFace(), rules.neckStraightness(), query.width());
    }

    static LongestPart.Wanted head(Length thickness, UsableQuery query, ShopSettings rules) {
        return LongestPart.Wanted.head(thickness, rules.planingPerFace()).rippedTo(query.width());
    }

    /** The longest there is of a design's part, over the piece's whole width. */
    static LongestPart longest(Piece piece, DesignPart part, ShopSettings rules) {
        UsableQuery whole = new UsableQuery(null, null, List.of());
        return LongestPart.of(
                piece, part.neck() ? neck(part.thickness(), whole, rules) : head(part.thickness(), whole, rules));
    }

    private static DesignRow row(Piece piece, DesignPart part, ShopSettings rules) {
        return new DesignRow(
                part.design(),
                part.neck() ? "neck" : "head",
                PieceView.MM.number(part.thickness()),
                part.needs().stream()
                        .map(n -> n.arrangement() + " " + PieceView.MM.number(n.length()))
                        .collect(Collectors.joining(", ")),
                PieceView.floor(longest(piece, part, rules).length()),
                part.answer().fits(),
                part.answer().words());
    }

    private static List<String> offers(Piece piece, Length clear, ShopSettings rules) {
        if (!clear.isPositive()) {
            return List.of("No clear stretch is left between its trims and structural defects.");
        }
        LongestPart neck =
                LongestPart.of(piece, new LongestPart.Wanted(NECK, rules.planingPerFace(), rules.neckStraightness()));
        LongestPart head = LongestPart.of(piece, LongestPart.Wanted.head(HEAD, rules.planingPerFace()));
        List<String> offers = new ArrayList<>();
        if (piece.setAside() && !piece.neckAllowed()) {
            offers.add("As a neck: it is set aside as warped and offered for heads only, until you allow necks.");
        } else {
            offers.add("As a neck " + PieceView.MM.print(NECK) + " thick: " + sentence(piece, neck, rules));
        }
        offers.add("As a head " + PieceView.MM.print(HEAD) + " thick: " + sentence(piece, head, rules));
        return offers;
    }

    private static String sentence(Piece piece, LongestPart part, ShopSettings rules) {
        if (!part.length().isPositive()) {
            return part.limit() == LongestPart.Limit.CLEAR_STRETCH
                    ? "none; no clear stretch is left."
                    : "none; it is too thin for that once it is flat and planed.";
        }
        Length width = UsableSize.width(piece, part.length(), rules.edgeAllowance());
        String reason = switch (part.limit()) {
            case CLEAR_STRETCH -> "that is its longest clear stretch.";
            case THICKNESS -> "a longer part is thinner than that once it is flat and planed.";
            case STRAIGHTNESS ->
                "a longer part is more than " + PieceView.MM.print(rules.neckStraightness())
                        + " out of straight before planing.";
        };
        return "up to " + PieceView.floor(part.length()) + " mm long and " + PieceView.floor(width) + " mm wide; "
                + reason;
    }

    /** Lengths whose parts are shown: some round ones, and the longest clear stretch; none where there is none. */
    static List<Length> lengths(Piece piece) {
        Length clear = clear(piece);
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
        return List.copyOf(lengths);
    }

    private static Length clear(Piece piece) {
        return UsableSize.zones(piece).stream().map(Zone::length).reduce(Length.ZERO, Length::max);
    }

    private static List<PartRow> parts(Piece piece, UsableQuery query, ShopSettings rules) {
        Length width = query.width() == null ? piece.width().length() : query.width();
        return lengths(piece).stream()
                .map(l -> new PartRow(
                        PieceView.MM.number(l),
                        PieceView.floor(UsableSize.thickness(piece, l, width, rules.planingPerFace())),
                        PieceView.floor(UsableSize.width(piece, l, rules.edgeAllowance())),
                        PieceView.MM.number(UsableSize.straightness(piece, l))))
                .toList();
    }
}
