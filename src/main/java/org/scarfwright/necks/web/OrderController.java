package org.scarfwright.necks.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.Notices;
import org.scarfwright.necks.book.OrderBook;
import org.scarfwright.necks.book.OrderEntry;
import org.scarfwright.necks.book.OrderField;
import org.scarfwright.necks.book.OrderText;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.Choice;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Pages of the orders, week by week. */
@Controller
class OrderController {
    private static final int ON_A_PAGE = 200;
    private static final List<OrderField> FIELDS = List.of(OrderField.values());
    private static final int LAST_DAY = 6;

    private final OrderBook book;
    private final Designs designs;
    private final Shop shop;
    private final Formats formats;
    private final Clock clock;

    OrderController(OrderBook book, Designs designs, Shop shop, Formats formats, Clock clock) {
        this.book = book;
        this.designs = designs;
        this.shop = shop;
        this.formats = formats;
        this.clock = clock;
    }

    /** One order in the list. */
    record Line(
            String code,
            String design,
            String designName,
            int quantity,
            LocalDate due,
            int priority,
            String note,
            List<String> notices) {}

    /** How many necks of one design a week asks for. */
    record Total(String design, String designName, int orders, int necks) {}

    /** A week by its ISO name and its days. */
    record WeekName(String week, String days, String before, String after) {}

    @GetMapping("/orders")
    ModelAndView list(
            @RequestParam(name = "week", required = false) @Nullable String wanted,
            @RequestParam(name = "page", defaultValue = "1") String number) {
        List<FieldError> errors = new ArrayList<>();
        List<IsoWeek> onFile = book.weeksOnFile();
        IsoWeek week = week(wanted, onFile, errors);
        Map<String, String> names = designNames();
        List<OrderEntry> entries = book.entries(Optional.of(week));
        List<NeckOrder> open = entries.stream()
                .filter(e -> !e.cancelled())
                .map(OrderEntry::order)
                .toList();
        ModelAndView page = new ModelAndView("necks/orders");
        page.setStatus(errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("week", name(week));
        page.addObject("weeks", weekChoices(onFile, week));
        page.addObject(
                "orders", PageOf.of(open.stream().map(o -> line(o, names)).toList(), number, ON_A_PAGE));
        page.addObject("necks", open.stream().mapToInt(NeckOrder::quantity).sum());
        page.addObject("totals", totals(open, names));
        page.addObject(
                "cancelled",
                entries.stream()
                        .filter(OrderEntry::cancelled)
                        .map(e -> line(e.order(), names))
                        .toList());
        page.addObject("anyOnFile", !onFile.isEmpty());
        page.addObject("anyDesign", !names.isEmpty());
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    /** The week asked for; else this week or the next one that has orders, else the last that has, else this one. */
    private IsoWeek week(@Nullable String wanted, List<IsoWeek> onFile, List<FieldError> errors) {
        if (wanted != null && !wanted.isBlank()) {
            try {
                return IsoWeek.parse(wanted);
            } catch (MeasureFormatException e) {
                errors.add(new FieldError("/week", OrderField.WEEK.label(), wanted, String.valueOf(e.getMessage())));
            }
        }
        IsoWeek now = IsoWeek.of(LocalDate.now(clock));
        return onFile.stream()
                .filter(w -> w.compareTo(now) >= 0)
                .findFirst()
                .or(() -> onFile.stream().max(Comparator.naturalOrder()))
                .orElse(now);
    }

    private WeekName name(IsoWeek week) {
        LocalDate monday = week.monday();
        return new WeekName(
                week.toString(),
                formats.shortDay(monday) + " to " + formats.day(monday.plusDays(LAST_DAY)),
                IsoWeek.of(monday.minusDays(1)).toString(),
                IsoWeek.of(monday.plusDays(LAST_DAY + 1L)).toString());
    }

    private List<Choice> weekChoices(List<IsoWeek> onFile, IsoWeek shown) {
        TreeSet<IsoWeek> weeks = new TreeSet<>(onFile);
        weeks.add(shown);
        weeks.add(IsoWeek.of(LocalDate.now(clock)));
        return weeks.stream()
                .map(w -> new Choice(w.toString(), w + ", from " + formats.day(w.monday())))
                .toList();
    }

    private Map<String, String> designNames() {
        return designs.all().stream().collect(Collectors.toMap(NeckDesign::code, NeckDesign::name));
    }

    private static Line line(NeckOrder o, Map<String, String> names) {
        return new Line(
                o.code(),
                o.designCode(),
                names.getOrDefault(o.designCode(), o.designCode()),
                o.quantity(),
                o.due(),
                o.priority(),
                o.customerNote(),
                Notices.of(o));
    }

    private static List<Total> totals(List<NeckOrder> open, Map<String, String> names) {
        Map<String, List<NeckOrder>> byDesign =
                open.stream().collect(Collectors.groupingBy(NeckOrder::designCode, TreeMap::new, Collectors.toList()));
        return byDesign.entrySet().stream()
                .map(e -> new Total(
                        e.getKey(),
                        names.getOrDefault(e.getKey(), e.getKey()),
                        e.getValue().size(),
                        e.getValue().stream().mapToInt(NeckOrder::quantity).sum()))
                .toList();
    }

    /** An empty form, or one filled from an address, such as {@code ?design=WITHY-6&week=2026-W49}. */
    @GetMapping("/orders/new")
    ModelAndView newOrder(@RequestParam MultiValueMap<String, String> sent) {
        Draft draft = Forms.draft(sent, FIELDS, shop.settings().unit());
        if (draft.text(OrderField.QUANTITY).isEmpty()) {
            draft = draft.with(OrderField.QUANTITY, "1");
        }
        return form(draft, null, List.of(), HttpStatus.OK);
    }

    @PostMapping("/orders")
    ModelAndView add(@RequestParam MultiValueMap<String, String> sent, RedirectAttributes after) {
        Draft draft = Forms.draft(sent, FIELDS, shop.settings().unit());
        try {
            Checked<NeckOrder> done = book.add(List.of(Entry.ofForm(draft))).get(0);
            NeckOrder order = done.value().orElseThrow();
            return toWeek(
                    order,
                    done.fate() == Fate.NEW
                            ? "Order " + order.code() + " is entered."
                            : "Order " + order.code() + " was there already, with the same figures.",
                    after);
        } catch (InvalidInputException e) {
            return form(draft, null, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
    }

    @GetMapping("/orders/{code}")
    ModelAndView edit(@PathVariable String code) {
        OrderEntry entry = book.get(code);
        return form(OrderText.draftOf(entry.order()), entry, List.of(), HttpStatus.OK);
    }

    @PostMapping("/orders/{code}")
    ModelAndView change(
            @PathVariable String code, @RequestParam MultiValueMap<String, String> sent, RedirectAttributes after) {
        OrderEntry there = book.get(code);
        Draft draft = Forms.draft(sent, FIELDS, shop.settings().unit())
                .with(OrderField.CODE, there.order().code());
        try {
            OrderEntry changed =
                    book.change(there.order().code(), Forms.version(sent.getFirst(Forms.VERSION)), Entry.ofForm(draft));
            return toWeek(changed.order(), "Order " + changed.order().code() + " is saved.", after);
        } catch (InvalidInputException e) {
            return form(draft, there, e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (EditConditionException e) {
            return form(
                    draft,
                    there,
                    List.of(Forms.changedMeanwhile("Order " + there.order().code())),
                    HttpStatus.CONFLICT);
        }
    }

    @PostMapping("/orders/{code}/cancel")
    ModelAndView cancel(@PathVariable String code, RedirectAttributes after) {
        NeckOrder order = book.cancel(code).order();
        after.addFlashAttribute("undo", order.code());
        return toWeek(order, "Order " + order.code() + " is cancelled and in no plan any more.", after);
    }

    @PostMapping("/orders/{code}/restore")
    ModelAndView restore(@PathVariable String code, RedirectAttributes after) {
        NeckOrder order = book.restore(code).order();
        return toWeek(order, "Order " + order.code() + " is taken up again.", after);
    }

    private static ModelAndView toWeek(NeckOrder order, String notice, RedirectAttributes after) {
        after.addFlashAttribute("notice", notice);
        after.addAttribute("week", order.week().toString());
        return new ModelAndView("redirect:/orders");
    }

    /** @param there the order that is edited; null for a new one */
    private ModelAndView form(Draft draft, @Nullable OrderEntry there, List<FieldError> errors, HttpStatus status) {
        List<Choice> choices = new ArrayList<>();
        choices.add(new Choice("", "choose…"));
        designs.all().forEach(d -> choices.add(new Choice(d.code(), d.code() + ", " + d.name())));
        String written = draft.text(OrderField.DESIGN).strip();
        if (choices.stream().noneMatch(c -> c.value().equals(written))) {
            choices.add(new Choice(written, written));
        }
        ModelAndView page = new ModelAndView("necks/order-form");
        page.setStatus(status);
        page.addObject("form", draft.form());
        page.addObject("edited", there == null ? "" : there.order().code());
        page.addObject("seen", there == null ? "" : String.valueOf(there.order().version()));
        page.addObject("isCancelled", there != null && there.cancelled());
        page.addObject("designs", choices);
        page.addObject("anyDesign", choices.size() > 1);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
