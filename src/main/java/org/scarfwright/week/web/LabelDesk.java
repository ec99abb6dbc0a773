package org.scarfwright.week.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.FilterForm;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceList;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.shop.LabelSheets;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.week.paper.Correction;
import org.scarfwright.week.paper.Label;
import org.scarfwright.week.paper.Labels;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;

/** Reads which labels are wanted, on what and from where, and makes them ready to print. */
@Component
class LabelDesk {
    private static final String PATH = "/p/";

    /** A space no line is broken at. */
    private static final String FIRM = "\u00A0";

    private final Rack rack;
    private final Pieces pieces;
    private final SpeciesCatalog woods;
    private final Shop shop;
    private final LabelSheets sheets;

    LabelDesk(Rack rack, Pieces pieces, SpeciesCatalog woods, Shop shop, LabelSheets sheets) {
        this.rack = rack;
        this.pieces = pieces;
        this.woods = woods;
        this.shop = shop;
        this.sheets = sheets;
    }

    /**
     * What was asked.
     *
     * @param form what the list of the rack was narrowed by; counts when no code is named
     * @param base the address the short addresses begin with
     */
    record Wish(FilterForm form, String base) {
        String text(String name) {
            return form.text(name);
        }
    }

    /**
     * What came of it.
     *
     * @param labels null when anything is wrong
     * @param sheet code of the label sheet that was meant; empty when there is none
     */
    record Ready(@Nullable Labels labels, String sheet, List<FieldError> errors) {}

    /** In the order they are offered. */
    List<LabelSheet> sheets() {
        return sheets.all().stream().map(LabelSheets.Versioned::sheet).toList();
    }

    Ready read(Wish wish) {
        List<FieldError> errors = new ArrayList<>();
        List<Piece> wanted = wanted(wish, errors);
        LabelSheet sheet = sheet(wish.text("sheet"), errors);
        int first = first(wish.text("first"), errors);
        Correction correction = Correction.NONE;
        try {
            correction = Correction.of(wish.text("measured"));
        } catch (InvalidInputException e) {
            errors.addAll(e.errors());
        }
        if (sheet == null || !errors.isEmpty()) {
            return new Ready(null, sheet == null ? "" : sheet.code(), errors);
        }
        Map<String, String> names =
                woods.all().stream().collect(Collectors.toMap(Species::id, Species::commonName, (a, b) -> a));
        LengthUnit unit = shop.settings().unit();
        Labels labels = new Labels(
                wanted.stream().map(p -> label(p, names, unit, wish.base())).toList(), sheet, first, correction);
        errors.addAll(labels.faults(sheets()));
        return new Ready(errors.isEmpty() ? labels : null, sheet.code(), errors);
    }

    private List<Piece> wanted(Wish wish, List<FieldError> errors) {
        if (wish.text("codes").isEmpty()) {
            return listed(wish.form(), errors);
        }
        List<String> codes = List.of(wish.text("codes").split("[\\s,;]+"));
        if (codes.size() > Labels.MOST) {
            errors.add(new FieldError(
                    "/codes",
                    "Codes",
                    "",
                    "name " + codes.size() + " pieces; print at most " + Labels.MOST + " labels at a time"));
            return List.of();
        }
        Map<String, Piece> found = new LinkedHashMap<>();
        rack.findAll(codes).forEach(p -> found.put(p.code(), p));
        List<String> unknown = codes.stream()
                .filter(c -> !found.containsKey(c.toUpperCase(Locale.ROOT)))
                .toList();
        if (!unknown.isEmpty()) {
            errors.add(new FieldError(
                    "/codes",
                    "Codes",
                    wish.text("codes"),
                    unknown.stream()
                                    .limit(5)
                                    .map(c -> "“" + (c.length() > 40 ? c.substring(0, 40) + "…" : c) + "”")
                                    .collect(Collectors.joining(", "))
                            + (unknown.size() > 5 ? " and " + (unknown.size() - 5) + " more" : "")
                            + (unknown.size() == 1 ? " is no piece" : " are no pieces")
                            + " on the rack; write codes with spaces or commas between them, for example M-14, K7M"));
        }
        return codes.stream()
                .map(c -> c.toUpperCase(Locale.ROOT))
                .distinct()
                .filter(found::containsKey)
                .map(found::get)
                .toList();
    }

    /** Pieces that are still there, unless another state is asked for; one more than can be printed when there are too many. */
    private List<Piece> listed(FilterForm form, List<FieldError> errors) {
        FilterForm.Asked asked = form.read(new WoodNames(woods.all()), Pieces.LARGEST_PAGE, Pieces.LARGEST_PAGE);
        errors.addAll(asked.errors());
        PieceFilter filter = asked.filter();
        List<Piece> listed = new ArrayList<>();
        PieceList page;
        int number = 1;
        do {
            page = pieces.list(filter, asked.sort(), number, Pieces.LARGEST_PAGE);
            page.pieces().stream()
                    .filter(p -> filter.state() != null || p.state().isThere())
                    .forEach(listed::add);
            number++;
        } while (number <= page.pages() && listed.size() <= Labels.MOST);
        return listed.subList(0, Math.min(listed.size(), Labels.MOST + 1));
    }

    /** The one named, else the first on the paper that is usual where the shop's unit is used. */
    private @Nullable LabelSheet sheet(String code, List<FieldError> errors) {
        List<LabelSheet> all = sheets();
        if (!code.isEmpty()) {
            for (LabelSheet sheet : all) {
                if (sheet.code().equals(code)) {
                    return sheet;
                }
            }
        }
        if (all.isEmpty() || !code.isEmpty()) {
            errors.add(new FieldError(
                    "/sheet",
                    "Label sheet",
                    code,
                    all.isEmpty()
                            ? "is missing: the shop has none; add the one you print on to the shop"
                            : "“" + (code.length() > 40 ? code.substring(0, 40) + "…" : code)
                                    + "” is none of the shop’s; take one of "
                                    + all.stream().map(LabelSheet::code).collect(Collectors.joining(", "))));
            return null;
        }
        LabelPaper usual = shop.settings().unit() == LengthUnit.INCH ? LabelPaper.LETTER : LabelPaper.A4;
        return all.stream().filter(s -> s.paper() == usual).findFirst().orElse(all.get(0));
    }

    private static int first(String text, List<FieldError> errors) {
        if (text.isEmpty()) {
            return 1;
        }
        if (text.matches("0*[1-9]\\d{0,3}")) {
            return Integer.parseInt(text);
        }
        errors.add(new FieldError(
                "/first",
                "First label",
                text,
                "“" + (text.length() > 40 ? text.substring(0, 40) + "…" : text)
                        + "” is not the number of a label on its sheet; write 1 for the first"));
        return 1;
    }

    private static Label label(Piece piece, Map<String, String> woods, LengthUnit unit, String base) {
        List<String> names = piece.wood().speciesIds().stream()
                .map(id -> woods.getOrDefault(id, id))
                .toList();
        String wood =
                piece.wood() instanceof PieceWood.Solid ? names.get(0) : "Lamination: " + String.join(" / ", names);
        String size = number(piece.length().length(), unit) + " × "
                + number(piece.width().length(), unit) + " × "
                + number(piece.thickness().length(), unit) + FIRM + unit.symbol();
        String place = piece.place() == null ? "" : piece.place();
        return new Label(piece.code(), wood, size, place, base + PATH + piece.code());
    }

    private static String number(Length length, LengthUnit unit) {
        return new LengthFormat(unit, Locale.ROOT).number(length).replaceFirst("\\.0$", "");
    }
}
