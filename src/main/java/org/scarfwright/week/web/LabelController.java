package org.scarfwright.week.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.rack.FilterForm;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopAddress;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.week.paper.Labels;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.springframework.web.util.UriComponentsBuilder;

/** Labels: which, on what, a look at them, and the page the browser prints. */
@Controller
class LabelController {
    private static final List<String> LENGTHS = List.of("minLength", "minWidth", "minThickness");
    private static final List<String> FILTER =
            List.of("q", "wood", "can", "state", "place", "minLength", "minWidth", "minThickness", "sort");
    private static final List<String> ASKED = Stream.of(
                    List.of("codes", "sheet", "first", "measured"),
                    FILTER,
                    List.of("minLengthMm", "minWidthMm", "minThicknessMm"))
            .flatMap(List::stream)
            .toList();

    private final LabelDesk desk;
    private final Shop shop;
    private final ShopAddress address;
    private final SpeciesCatalog woods;

    LabelController(LabelDesk desk, Shop shop, ShopAddress address, SpeciesCatalog woods) {
        this.desk = desk;
        this.shop = shop;
        this.address = address;
        this.woods = woods;
    }

    @GetMapping("/labels")
    ModelAndView ask(@RequestParam Map<String, String> asked) {
        LabelDesk.Wish wish = wish(asked);
        LabelDesk.Ready ready = desk.read(wish);
        ModelAndView page = page("week/labels", wish, ready);
        Labels labels = ready.labels();
        page.addObject("count", labels == null ? 0 : labels.labels().size());
        page.addObject("pages", labels == null ? 0 : labels.pages());
        page.addObject("drawn", labels == null ? List.of() : labels.drawn(1));
        return page;
    }

    @GetMapping("/labels/print")
    ModelAndView print(@RequestParam Map<String, String> asked) {
        LabelDesk.Wish wish = wish(asked);
        LabelDesk.Ready ready = desk.read(wish);
        Labels labels = ready.labels();
        if (labels == null) {
            return ask(asked);
        }
        ModelAndView page = page("week/labels-print", wish, ready);
        page.addObject("drawn", labels.drawn(Integer.MAX_VALUE));
        return page;
    }

    /** The size of the paper, which a style sheet alone can tell a printer; nothing else on the page may hold a style. */
    @GetMapping("/labels/page.css")
    ResponseEntity<String> paper(@RequestParam(name = "sheet", defaultValue = "") String code) {
        return desk.sheets().stream()
                .filter(s -> s.code().equals(code))
                .findFirst()
                .map(s -> ResponseEntity.ok()
                        .contentType(new MediaType("text", "css"))
                        .body("@page { size: " + mm(s.paperWidth()) + " " + mm(s.paperHeight()) + "; margin: 0; }\n"))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }

    private ModelAndView page(String template, LabelDesk.Wish wish, LabelDesk.Ready ready) {
        FilterForm form = wish.form();
        ModelAndView page = new ModelAndView(template);
        page.setStatus(ready.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("form", form);
        page.addObject("sheet", ready.sheet());
        page.addObject(
                "sheets",
                desk.sheets().stream().map(s -> new Choice(s.code(), s.name())).toList());
        page.addObject(
                "filter", FILTER.stream().filter(n -> !form.text(n).isEmpty()).toList());
        page.addObject("base", wish.base());
        page.addObject("thisMachineOnly", ShopAddress.isThisMachineOnly(wish.base()));
        page.addObject("pdf", link("/api/labels", forApi(form)));
        page.addObject("print", link("/labels/print", form.texts()));
        page.addObject("back", link("/labels", form.texts()));
        List<FieldError> errors = new ArrayList<>();
        for (FieldError e : ready.errors()) {
            // What the list was narrowed by has no field on this page that a link could lead to.
            errors.add(FILTER.contains(e.field()) ? new FieldError("", e.label(), e.value(), e.message()) : e);
        }
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    private LabelDesk.Wish wish(Map<String, String> asked) {
        return new LabelDesk.Wish(
                new FilterForm(asked, shop.settings().unit(), ""),
                address.orElse(ServletUriComponentsBuilder.fromCurrentContextPath()
                        .build()
                        .toUriString()));
    }

    /** The same question as the API asks it: lengths in millimetres. */
    private Map<String, String> forApi(FilterForm form) {
        Map<String, String> texts = new LinkedHashMap<>(form.texts());
        LENGTHS.forEach(texts::remove);
        PieceFilter filter = form.read(new WoodNames(woods.all()), 1, 1).filter();
        put(texts, "minLengthMm", filter.length());
        put(texts, "minWidthMm", filter.width());
        put(texts, "minThicknessMm", filter.thickness());
        return texts;
    }

    private static void put(Map<String, String> texts, String name, @Nullable Length length) {
        if (length != null) {
            texts.put(name, length.toMm().toPlainString());
        }
    }

    /** What was asked for and nothing else, so that a link shows what it leads to. */
    private static String link(String path, Map<String, String> texts) {
        UriComponentsBuilder link = UriComponentsBuilder.fromPath(path);
        ASKED.stream()
                .filter(name -> !texts.getOrDefault(name, "").isBlank())
                .forEach(name -> link.queryParam(name, "{" + name + "}"));
        return link.encode().buildAndExpand(texts).toUriString();
    }

    private static String mm(Length length) {
        return length.toMm().stripTrailingZeros().toPlainString() + "mm";
    }
}
