package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.NeckCosts;
import org.scarfwright.ledger.NeckCosts.Cost;
import org.scarfwright.ledger.NeckCosts.First;
import org.scarfwright.ledger.NeckCosts.Neck;
import org.scarfwright.ledger.NeckCosts.Necks;
import org.scarfwright.ledger.NeckCosts.Wanted;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.CsvSheet;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.util.UriComponentsBuilder;

/** The necks behind the cost of wood in a neck. */
@Controller
@Tag(name = "Yield", description = "What became of the wood, added up from the ledger")
class NeckCostController {
    private static final int ON_PAGE = 50;

    private final NeckCosts costs;
    private final Shop shop;

    NeckCostController(NeckCosts costs, Shop shop) {
        this.costs = costs;
        this.shop = shop;
    }

    /** What an address asks, with everything that is wrong with it. */
    private record Asked(Wanted wanted, List<FieldError> errors) {
        static Asked of(Map<String, String> typed) {
            YieldQuery days = new YieldQuery(typed);
            List<FieldError> errors = new ArrayList<>(days.errors());
            Optional<Cost> cost = days.text("cost").isEmpty() ? Optional.of(Cost.ALL) : Cost.ofWord(days.text("cost"));
            if (cost.isEmpty()) {
                errors.add(new FieldError("/cost", "Cost", days.text("cost"), "is none of all, known, unknown"));
            }
            Optional<First> first =
                    days.text("first").isEmpty() ? Optional.of(First.NEWEST) : First.ofWord(days.text("first"));
            if (first.isEmpty()) {
                errors.add(new FieldError("/first", "First", days.text("first"), "is none of newest, least, most"));
            }
            return new Asked(
                    new Wanted(
                            days.text("design").isEmpty() ? null : days.text("design"),
                            days.question().from(),
                            days.question().to(),
                            cost.orElse(Cost.ALL),
                            first.orElse(First.NEWEST)),
                    errors);
        }

        Wanted checked() {
            if (!errors.isEmpty()) {
                throw new InvalidInputException(errors);
            }
            return wanted;
        }

        /** design=D-1&cost=known&first=newest. */
        String address() {
            UriComponentsBuilder address = UriComponentsBuilder.newInstance();
            if (wanted.design() != null) {
                address.queryParam("design", "{design}");
            }
            address.queryParam("cost", wanted.cost().word())
                    .queryParam("first", wanted.first().word());
            if (wanted.from() != null) {
                address.queryParam("from", wanted.from());
            }
            if (wanted.to() != null) {
                address.queryParam("to", wanted.to());
            }
            return address.encode()
                    .buildAndExpand(wanted.design() == null ? Map.of() : Map.of("design", wanted.design()))
                    .toUriString()
                    .substring(1);
        }
    }

    /** A neck. */
    @Schema(name = "NeckCost")
    record NeckJson(
            long plan,
            String order,
            int number,
            String design,

            @Schema(description = "The day its last part was cut on")
            LocalDate cutOn,

            @Schema(
                    description =
                            "Of its wood, spoilt parts with it; null where nobody knows what some of the wood cost")
            @Nullable
            BigDecimal cost) {
        static NeckJson of(Neck n) {
            return new NeckJson(
                    n.name().plan(),
                    n.name().order(),
                    n.name().number(),
                    n.design(),
                    n.cutOn(),
                    n.cost() == null ? null : n.cost().toDecimal());
        }
    }

    /** One page of necks. */
    @Schema(name = "NeckCosts")
    record NecksJson(
            List<NeckJson> necks,

            @Schema(description = "Of the known costs, over all pages")
            BigDecimal sum,

            int page,
            int pages,
            long total) {}

    @GetMapping("/yield/necks")
    ModelAndView show(@RequestParam Map<String, String> typed) {
        Asked asked = Asked.of(typed);
        ModelAndView page = new ModelAndView("ledger/yield-necks");
        page.setStatus(asked.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("errorList", asked.errors());
        page.addObject("wanted", asked.wanted());
        page.addObject("address", asked.address());
        page.addObject("currency", shop.settings().currency());
        String number = typed.getOrDefault("page", "");
        Necks found = asked.errors().isEmpty()
                ? costs.necks(asked.wanted(), number.matches("[1-9]\\d{0,6}") ? Integer.parseInt(number) : 1, ON_PAGE)
                : null;
        page.addObject("found", found);
        page.addObject("mean", found == null || asked.wanted().cost() != Cost.KNOWN ? null : mean(found));
        return page;
    }

    /** Rounded to the nearest hundredth, as in the report; empty for no neck. */
    private static @Nullable BigDecimal mean(Necks found) {
        return found.total() == 0
                ? null
                : found.sum().toDecimal().divide(BigDecimal.valueOf(found.total()), 2, RoundingMode.HALF_UP);
    }

    @GetMapping("/yield/necks.csv")
    void csv(@RequestParam Map<String, String> typed, HttpServletResponse response) throws IOException {
        Wanted wanted = Asked.of(typed).checked();
        CsvSheet sheet =
                CsvSheet.sent(response, "neck-costs.csv", "plan", "order", "number", "design", "cut_on", "cost");
        costs.each(
                wanted,
                n -> sheet.row(
                        n.name().plan(),
                        n.name().order(),
                        n.name().number(),
                        n.design(),
                        n.cutOn(),
                        n.cost() == null ? null : n.cost().toDecimal()));
        sheet.end();
    }

    @GetMapping("/api/yield/necks")
    @ResponseBody
    @Operation(
            summary = "The necks behind the cost of wood in a neck",
            description =
                    "design: of one design. from, to: first and last day their last part was cut on. cost: all (usual), known or"
                            + " unknown. first: newest (usual), least or most. page from 1; size 1 to 500, usually 50.")
    NecksJson necks(
            @RequestParam Map<String, String> typed,
            @RequestParam(name = "page", defaultValue = "1") int page,
            @RequestParam(name = "size", defaultValue = "" + ON_PAGE) int size) {
        Wanted wanted = Asked.of(typed).checked();
        YieldApi.checkPage(page, size);
        Necks found = costs.necks(wanted, page, size);
        return new NecksJson(
                found.necks().stream().map(NeckJson::of).toList(),
                found.sum().toDecimal(),
                found.page(),
                found.pages(),
                found.total());
    }
}
