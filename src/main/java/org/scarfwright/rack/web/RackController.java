package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.FilterForm;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceHistory;
import org.scarfwright.rack.PieceList;
import org.scarfwright.rack.PieceReadiness;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.PieceStrip;
import org.scarfwright.rack.PieceUses;
import org.scarfwright.rack.PieceWords;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.rack.ReadingHistory;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.web.Strip;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.util.UriComponentsBuilder;

/** What wood there is, and what each piece can still give. */
@Controller
class RackController {
    private static final int ON_PAGE = 25;
    private static final List<Choice> SORTS = List.of(
            new Choice("code", "Code"),
            new Choice("longest", "Longest first"),
            new Choice("widest", "Widest first"),
            new Choice("thickest", "Thickest first"),
            new Choice("newest", "Newest first"),
            new Choice("oldest", "Oldest first"));
    private static final List<Choice> CANS =
            List.of(new Choice("", "Anything"), new Choice("neck", "A neck"), new Choice("head", "A head"));
    private static final List<String> ASKED =
            List.of("q", "wood", "can", "state", "place", "minLength", "minWidth", "minThickness", "sort");

    /** Fields that stand under a heading that opens. */
    private static final List<String> MORE = List.of("state", "place", "minLength", "minWidth", "minThickness", "sort");

    private final Rack rack;
    private final Pieces pieces;
    private final PieceHistory history;
    private final PieceUses uses;
    private final PieceReadiness readiness;
    private final SpeciesCatalog woods;
    private final Shop shop;
    private final Formats formats;

    RackController(
            Rack rack,
            Pieces pieces,
            PieceHistory history,
            PieceUses uses,
            PieceReadiness readiness,
            SpeciesCatalog woods,
            Shop shop,
            Formats formats) {
        this.rack = rack;
        this.pieces = pieces;
        this.history = history;
        this.uses = uses;
        this.readiness = readiness;
        this.woods = woods;
        this.shop = shop;
        this.formats = formats;
    }

    /** A piece in the list. */
    record Row(
            String code,
            String size,
            String wood,
            String moisture,
            String place,
            String state,
            boolean free,
            boolean setAside,
            StripDrawing drawing) {}

    @GetMapping("/rack")
    ModelAndView list(@RequestParam Map<String, String> asked) {
        LengthUnit unit = shop.settings().unit();
        FilterForm form = new FilterForm(asked, unit, "");
        FilterForm.Asked read = form.read(new WoodNames(woods.all()), ON_PAGE, Pieces.LARGEST_PAGE);
        PieceList found = pieces.list(read.filter(), read.sort(), read.page(), ON_PAGE);
        WoodLabels labels = new WoodLabels(woods.all());
        boolean narrowed = !read.filter().equals(PieceFilter.ALL);
        ModelAndView page = new ModelAndView("rack/list");
        page.setStatus(read.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("form", form);
        page.addObject("unitShown", unit.symbol());
        page.addObject("woods", labels.choices("Any wood"));
        page.addObject("states", states());
        page.addObject("places", places());
        page.addObject("sorts", SORTS);
        page.addObject("cans", CANS);
        page.addObject("found", found);
        page.addObject("rows", rows(found.pieces(), labels));
        page.addObject("legend", labels.legend(found.pieces()));
        page.addObject("isMore", MORE.stream().anyMatch(name -> !form.text(name).isEmpty()));
        page.addObject("narrowed", narrowed);
        page.addObject("labels", link("/labels", form));
        page.addObject("before", found.page() > 1 ? pageLink(form, found.page() - 1) : null);
        page.addObject("after", found.page() < found.pages() ? pageLink(form, found.page() + 1) : null);
        page.addObject("errorList", read.errors());
        page.addObject("errors", FieldErrors.byField(read.errors()));
        return page;
    }

    @GetMapping("/rack/{code}")
    ModelAndView show(@PathVariable String code, @RequestParam Map<String, String> asked) {
        Piece piece = find(rack, code);
        WoodLabels labels = new WoodLabels(woods.all());
        PieceView view = PieceView.of(
                piece,
                ReadingHistory.of(pieces.warpReadings(piece.code()), pieces.moistureReadings(piece.code())),
                new PieceView.Wording(labels, shop.settings(), formats, readiness.of(piece)));
        UsableQuery query = UsableQuery.of(asked, "", shop.settings().unit(), piece);
        ModelAndView page = new ModelAndView("rack/piece");
        page.setStatus(query.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("piece", view);
        page.addObject("gives", GivesView.of(piece, query, uses.designs(piece), shop.settings()));
        Map<Boolean, List<PieceUses.Use>> coming = piece.state() == PieceState.ON_RACK
                ? uses.coming(piece).stream().collect(Collectors.partitioningBy(PieceUses.Use::serves))
                : Map.of();
        page.addObject("serves", coming.getOrDefault(true, List.of()));
        page.addObject("others", coming.getOrDefault(false, List.of()));
        page.addObject("weeks", PieceUses.WEEKS);
        page.addObject("askedThickness", asked.getOrDefault("thickness", ""));
        page.addObject("askedWidth", asked.getOrDefault("width", ""));
        page.addObject("unitShown", shop.settings().unit().symbol());
        page.addObject("errorList", query.errors());
        page.addObject("errors", FieldErrors.byField(query.errors()));
        page.addObject("legend", labels.legend(List.of(piece)));
        page.addObject("rules", shop.settings());
        page.addObject(
                "caution",
                "Plane while the piece is long and crosscut last: the planer may hold nothing shorter than "
                        + LengthFormat.mm(Locale.ROOT).print(shop.settings().shortestMachined())
                        + " by the shop’s rules, and its manual may ask for more. Shorter parts are flattened by hand or"
                        + " on a carrier.");
        page.addObject("history", history.of(piece.code()));
        return page;
    }

    static Piece find(Rack rack, String code) {
        Optional<Piece> piece = rack.find(code);
        return piece.orElseThrow(
                () -> new NotFoundException("There is no piece “" + RackApi.shown(code) + "” on the rack."));
    }

    private static List<Row> rows(List<Piece> pieces, WoodLabels labels) {
        List<Strip> strips = pieces.stream().map(PieceStrip::of).toList();
        StripDrawing.Scale scale = StripDrawing.Scale.of(strips);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece p = pieces.get(i);
            rows.add(new Row(
                    p.code(),
                    PieceWords.size(p),
                    labels.of(p.wood()),
                    p.moisture() == null ? "" : p.moisture().content().toString(),
                    p.place() == null ? "" : p.place(),
                    PieceWords.state(p.state()),
                    p.state() == PieceState.ON_RACK,
                    p.setAside(),
                    StripDrawing.row(strips.get(i), scale)));
        }
        return rows;
    }

    private static List<Choice> states() {
        List<Choice> choices = new ArrayList<>(List.of(new Choice("", "Any state")));
        for (PieceState state : PieceState.values()) {
            choices.add(new Choice(PieceJson.word(state), PieceWords.state(state)));
        }
        return choices;
    }

    private List<Choice> places() {
        List<Choice> choices = new ArrayList<>(List.of(new Choice("", "Any place")));
        pieces.places().forEach(p -> choices.add(new Choice(p, p)));
        return choices;
    }

    /** A link that can be shared: only what was asked for stands in it. */
    private static String link(String path, FilterForm form) {
        UriComponentsBuilder link = UriComponentsBuilder.fromPath(path);
        for (String name : ASKED) {
            if (!form.text(name).isEmpty()) {
                link.queryParam(name, "{" + name + "}");
            }
        }
        return link.encode().buildAndExpand(form.texts()).toUriString();
    }

    private static String pageLink(FilterForm form, int page) {
        String link = link("/rack", form);
        return link + (link.contains("?") ? "&" : "?") + "page=" + page;
    }
}
