package org.scarfwright.necks.web;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.JointInput;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthParser;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.MatchRule;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.necks.book.DesignBook;
import org.scarfwright.necks.book.DesignField;
import org.scarfwright.necks.book.DesignText;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.Notices;
import org.scarfwright.necks.book.OrderBook;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.util.UriComponentsBuilder;

/** Pages of the neck designs. */
@Controller
class DesignController {
    private static final int ON_A_PAGE = 50;
    private static final Length THICKEST_STOCK = Length.ofMm(300);
    private static final List<DesignField> FIELDS = List.of(DesignField.values());
    private static final List<Choice> FINISHES = finishes();
    private static final List<Choice> MATCHES = Forms.choices(new EnumMap<>(Map.of(
            MatchRule.ANY, "any wood that is allowed",
            MatchRule.SAME_WOOD, "neck and head of the same wood",
            MatchRule.SAME_LOT, "neck and head from the same lot",
            MatchRule.SAME_PIECE, "neck and head from one piece")));

    private final DesignBook book;
    private final Designs designs;
    private final SpeciesCatalog species;
    private final Shop shop;
    private final OrderBook orders;
    private final Formats formats;

    DesignController(
            DesignBook book, Designs designs, SpeciesCatalog species, Shop shop, OrderBook orders, Formats formats) {
        this.book = book;
        this.designs = designs;
        this.species = species;
        this.shop = shop;
        this.orders = orders;
        this.formats = formats;
    }

    /** One design in the list. */
    record Line(
            String code,
            String name,
            TypedLength neckLength,
            TypedLength headLength,
            String angles,
            String arrangements,
            String finish,
            String woods,
            boolean unusual) {}

    /** One wood that can be ticked. */
    record Wood(String id, String name, boolean neck, boolean head) {}

    @GetMapping("/designs")
    ModelAndView list(
            @RequestParam(name = "q", defaultValue = "") String q,
            @RequestParam(name = "page", defaultValue = "1") String number) {
        Map<String, String> names = woodNames();
        List<Line> lines = designs.all().stream()
                .filter(d -> holds(d, q.strip()))
                .map(d -> line(d, names))
                .toList();
        ModelAndView page = new ModelAndView("necks/designs");
        page.addObject("q", q);
        page.addObject("designs", PageOf.of(lines, number, ON_A_PAGE));
        return page;
    }

    private static boolean holds(NeckDesign design, String q) {
        String wanted = q.toLowerCase(Locale.ROOT);
        return (design.code() + " " + design.name()).toLowerCase(Locale.ROOT).contains(wanted);
    }

    private static Line line(NeckDesign d, Map<String, String> names) {
        return new Line(
                d.code(),
                d.name(),
                d.neckLength(),
                d.headLength(),
                d.angles().stream().map(Angle::toString).collect(Collectors.joining(", ")),
                d.arrangements().stream().map(Arrangement::word).collect(Collectors.joining(", ")),
                DesignText.word(d.finish()),
                woods(d.neckWoods(), names),
                !Notices.of(d).isEmpty());
    }

    private static String woods(List<String> ids, Map<String, String> names) {
        return ids.isEmpty()
                ? "any wood"
                : ids.stream().map(id -> names.getOrDefault(id, id)).collect(Collectors.joining(" or "));
    }

    private Map<String, String> woodNames() {
        return species.all().stream().collect(Collectors.toMap(Species::id, Species::commonName));
    }

    /** A name and what stands for it. */
    record Fact(String name, String value) {}

    /**
     * One angle of a design.
     *
     * @param key sets its ids apart on the page
     * @param allowance which arrangement the design does not allow, as a sentence; empty when it allows both
     * @param jointAddress of the joint page with the same figures
     */
    record AtAngle(
            String key,
            Angle angle,
            String heading,
            String allowance,
            JointSheet sheet,
            List<WoodNeeds.Row> needs,
            String jointAddress) {}

    @GetMapping("/designs/{code}")
    ModelAndView one(@PathVariable String code, HttpServletRequest request) {
        NeckDesign design = book.get(code);
        LengthUnit unit = shop.settings().unit();
        QueryText query = new QueryText(request.getParameterMap());
        Length neckStock = stock(query, "neckStock", "Neck stock at the saw", design.neckThickness(), unit);
        Length headStock = stock(query, "headStock", "Head stock at the saw", design.headThickness(), unit);
        Saw saw = shop.saws().get(0);
        Shown shown = new Shown(unit, formats);
        WoodNeeds needs = new WoodNeeds(design, new WoodNeeds.Stock(neckStock, headStock), saw, shown);
        ModelAndView page = new ModelAndView("necks/design");
        page.setStatus(query.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("design", design);
        page.addObject("looks", Notices.of(design));
        page.addObject("facts", facts(design));
        page.addObject("orders", orders.openOf(design.code()));
        page.addObject(
                "angles",
                design.angles().stream().map(a -> at(a, design, needs)).toList());
        page.addObject(
                "needsCaption",
                "As sawn, from neck stock " + shown.length(neckStock) + " and head stock " + shown.length(headStock)
                        + " thick, with this design’s allowances and " + shown.length(saw.truing())
                        + " on each part for truing (" + saw.name() + ")");
        page.addObject("unitShown", unit.symbol());
        page.addObject(
                "neckStock",
                query.has("neckStock")
                        ? query.typed("neckStock")
                        : design.neckThickness().typed());
        page.addObject(
                "headStock",
                query.has("headStock")
                        ? query.typed("headStock")
                        : design.headThickness().typed());
        page.addObject("errorList", query.errors());
        page.addObject("errors", FieldErrors.byField(query.errors()));
        return page;
    }

    private static Length stock(QueryText query, String name, String label, TypedLength part, LengthUnit unit) {
        if (!query.has(name)) {
            return part.length();
        }
        Length read = query.read(name, label, part.typed(), text -> {
            Length length = LengthParser.parse(text, unit);
            if (length.isShorterThan(part.length()) || length.isLongerThan(THICKEST_STOCK)) {
                throw new MeasureFormatException("is " + text.strip() + "; it lies between the part’s " + part.typed()
                        + " and " + THICKEST_STOCK);
            }
            return length;
        });
        return read == null ? part.length() : read;
    }

    private AtAngle at(Angle angle, NeckDesign design, WoodNeeds needs) {
        JointInput input = design.jointInput(design.arrangements().get(0), angle);
        String allowance = design.arrangements().size() > 1
                ? ""
                : "This design allows the " + design.arrangements().get(0).word()
                        + " head only; the other is drawn for comparison.";
        return new AtAngle(
                "a" + angle.millidegrees() + "-",
                angle,
                "At " + angle + ", a slope of 1 : " + formats.decimal(BigDecimal.valueOf(angle.cot()), 2),
                allowance,
                JointSheet.of(input, Length.ZERO, new Shown(shop.settings().unit(), formats)),
                needs.rows(angle),
                UriComponentsBuilder.fromPath("/joint")
                        .queryParam(
                                "angle", angle.toDegrees().stripTrailingZeros().toPlainString())
                        .queryParam("neckThickness", design.neckThickness().typed())
                        .queryParam("headThickness", design.headThickness().typed())
                        .queryParam("neckLength", design.neckLength().typed())
                        .queryParam("headLength", design.headLength().typed())
                        .queryParam("neckWidth", design.neckWidth().toString())
                        .queryParam("headWidth", design.headWidth().typed())
                        .encode()
                        .toUriString());
    }

    private List<Fact> facts(NeckDesign d) {
        Map<String, String> names = woodNames();
        return List.of(
                new Fact("Neck length", d.neckLength().typed()),
                new Fact(
                        "Nut and heel",
                        d.nutWidth().typed() + ", " + d.heelWidth().typed()),
                new Fact("Neck thickness", d.neckThickness().typed()),
                new Fact("Head", d.headLength().typed() + " × " + d.headWidth().typed()),
                new Fact("Head thickness", d.headThickness().typed()),
                new Fact("Finish", DesignText.word(d.finish())),
                new Fact("Neck wood", woods(d.neckWoods(), names)),
                new Fact("Head wood", woods(d.headWoods(), names)),
                new Fact(
                        "Neck and head",
                        matchWords(d.match()) + (d.linesMeet() ? "; lamination lines meet at the joint" : "")),
                new Fact("Wings", d.wingsAllowed() ? "allowed" : "not allowed"),
                new Fact(
                        "Allowances",
                        d.endAllowance().typed() + " in length, "
                                + d.sideAllowance().typed() + " in width"));
    }

    private static String matchWords(MatchRule match) {
        return MATCHES.stream()
                .filter(c -> c.value().equals(DesignText.word(match)))
                .map(Choice::label)
                .findFirst()
                .orElseThrow();
    }

    /** An empty form, or one filled from an address: figures by their names, or {@code from} another design. */
    @GetMapping("/designs/new")
    ModelAndView newDesign(@RequestParam MultiValueMap<String, String> sent) {
        LengthUnit unit = shop.settings().unit();
        String from = sent.getFirst("from");
        if (from != null && !from.isBlank()) {
            Draft like = DesignText.draftOf(book.get(from)).with(DesignField.CODE, "");
            return form(new Draft(like.texts(), unit), null, List.of(), HttpStatus.OK);
        }
        Draft draft = Forms.draft(sent, FIELDS, unit);
        if (!sent.containsKey(DesignField.ARRANGEMENTS.form())) {
            String one = sent.getFirst("arrangement");
            draft = draft.with(DesignField.ARRANGEMENTS, one == null ? "underlaid overlaid" : one);
        }
        String width = sent.getFirst("neckWidth");
        if (width != null && !sent.containsKey(DesignField.HEEL_WIDTH.form())) {
            draft = draft.with(DesignField.HEEL_WIDTH, width);
        }
        return form(draft, null, List.of(), HttpStatus.OK);
    }

    @PostMapping("/designs")
    ModelAndView add(@RequestParam MultiValueMap<String, String> sent, RedirectAttributes after) {
        Draft draft = Forms.draft(sent, FIELDS, shop.settings().unit());
        try {
            Checked<NeckDesign> done = book.add(List.of(Entry.ofForm(draft))).get(0);
            String code = done.value().orElseThrow().code();
            after.addFlashAttribute(
                    "notice",
                    done.fate() == Fate.NEW
                            ? code + " is entered."
                            : code + " was there already, with the same figures.");
            after.addAttribute("code", code);
            return new ModelAndView("redirect:/designs/{code}");
        } catch (InvalidInputException e) {
            return form(draft, null, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
    }

    @GetMapping("/designs/{code}/edit")
    ModelAndView edit(@PathVariable String code) {
        NeckDesign design = book.get(code);
        Draft draft = DesignText.draftOf(design);
        return form(new Draft(draft.texts(), shop.settings().unit()), design, List.of(), HttpStatus.OK);
    }

    @PostMapping("/designs/{code}")
    ModelAndView change(
            @PathVariable String code, @RequestParam MultiValueMap<String, String> sent, RedirectAttributes after) {
        NeckDesign there = book.get(code);
        Draft draft = Forms.draft(sent, FIELDS, shop.settings().unit()).with(DesignField.CODE, there.code());
        try {
            book.change(there.code(), Forms.version(sent.getFirst(Forms.VERSION)), Entry.ofForm(draft));
        } catch (InvalidInputException e) {
            return form(draft, there, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (EditConditionException e) {
            return form(draft, there, List.of(Forms.changedMeanwhile("Design " + there.code())), HttpStatus.CONFLICT);
        }
        after.addFlashAttribute("notice", there.code() + " is saved. It holds from the next match on.");
        after.addAttribute("code", there.code());
        return new ModelAndView("redirect:/designs/{code}");
    }

    /** @param there the design that is edited; null for a new one */
    private ModelAndView form(Draft draft, @Nullable NeckDesign there, List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("necks/design-form");
        page.setStatus(status);
        page.addObject("form", draft.form());
        page.addObject("edited", there == null ? "" : there.code());
        page.addObject("seen", there == null ? "" : String.valueOf(there.version()));
        page.addObject("unitShown", draft.unit().symbol());
        page.addObject("underlaid", holds(draft, DesignField.ARRANGEMENTS, "underlaid", "both"));
        page.addObject("overlaid", holds(draft, DesignField.ARRANGEMENTS, "overlaid", "both"));
        page.addObject("linesMeet", isYes(draft, DesignField.LINES_MEET));
        page.addObject("wings", isYes(draft, DesignField.WINGS));
        page.addObject("finishes", FINISHES);
        page.addObject("matches", MATCHES);
        List<Wood> woods = woods(draft);
        page.addObject("woods", woods);
        page.addObject("neckChosen", chosen(woods, Wood::neck));
        page.addObject("headChosen", chosen(woods, Wood::head));
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private List<Wood> woods(Draft draft) {
        Set<String> neck = words(draft, DesignField.NECK_WOODS);
        Set<String> head = words(draft, DesignField.HEAD_WOODS);
        return species.all().stream()
                .sorted(Comparator.comparing(Species::commonName))
                .map(s -> new Wood(s.id(), s.commonName(), neck.contains(s.id()), head.contains(s.id())))
                .toList();
    }

    private static String chosen(List<Wood> woods, Predicate<Wood> part) {
        String names = woods.stream().filter(part).map(Wood::name).collect(Collectors.joining(" or "));
        return names.isEmpty() ? "Any wood" : names;
    }

    private static Set<String> words(Draft draft, DesignField field) {
        return Stream.of(draft.text(field).toLowerCase(Locale.ROOT).split("[\\s,;|]+", -1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean holds(Draft draft, DesignField field, String... any) {
        Set<String> words = words(draft, field);
        return Stream.of(any).anyMatch(words::contains);
    }

    private static boolean isYes(Draft draft, DesignField field) {
        return holds(draft, field, "yes", "true", "1", "x");
    }

    private static List<Choice> finishes() {
        Map<FaceFinish, String> labels = new EnumMap<>(FaceFinish.class);
        labels.put(FaceFinish.CLEAR, "clear: the wood and every seam show");
        labels.put(FaceFinish.OPAQUE, "opaque: painted, no seam shows");
        labels.put(FaceFinish.VENEERED, "veneered: a facing covers the front");
        return Stream.concat(Stream.of(new Choice("", "choose…")), Forms.choices(labels).stream())
                .toList();
    }
}
