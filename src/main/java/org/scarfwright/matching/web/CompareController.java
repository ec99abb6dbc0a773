package org.scarfwright.matching.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Volume;
import org.scarfwright.shop.Shop;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.servlet.ModelAndView;

/** Two plans side by side; the address carries both, so that it can be shared. */
@Controller
class CompareController {
    private static final String NONE = "–";

    private final Plans plans;
    private final Shop shop;
    private final Formats formats;

    CompareController(Plans plans, Shop shop, Formats formats) {
        this.plans = plans;
        this.shop = shop;
        this.formats = formats;
    }

    /** One figure of both plans. */
    record Figure(String name, String first, String second, String unit) {
        public boolean differs() {
            return !first.equals(second);
        }
    }

    @GetMapping("/match/compare")
    ModelAndView compare(@ModelAttribute CompareForm form) {
        ModelAndView page = new ModelAndView("matching/compare");
        page.addObject("form", form);
        page.addObject("errorList", List.of());
        page.addObject("errors", FieldErrors.byField(List.of()));
        if (form.isEmpty()) {
            return page;
        }
        try {
            CompareForm.Ids ids = form.read();
            PlanComparison c = plans.compare(ids.first(), ids.second());
            page.addObject("comparison", c);
            page.addObject(
                    "costs", NearController.costs(c.extraCost(), shop.settings().currency()));
            page.addObject("levels", levels(c));
            page.addObject("yields", yields(c));
            page.addObject("wood", wood(c));
        } catch (InvalidInputException e) {
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            page.addObject("errorList", e.errors());
            page.addObject("errors", FieldErrors.byField(e.errors()));
        }
        return page;
    }

    private List<Figure> levels(PlanComparison c) {
        List<Figure> figures = new ArrayList<>();
        figures.add(new Figure(
                "necks",
                c.first().filled() + " of " + c.first().ordered(),
                c.second().filled() + " of " + c.second().ordered(),
                ""));
        List<Plan.Level> first = c.first().levels();
        List<Plan.Level> second = c.second().levels();
        for (int i = 0; i < Math.max(first.size(), second.size()); i++) {
            Plan.Level a = i < first.size() ? first.get(i) : null;
            Plan.Level b = i < second.size() ? second.get(i) : null;
            Plan.Level named = a == null ? b : a;
            if (named != null) {
                String unit = named.unit().equals("money") ? shop.settings().currency() : named.unit();
                figures.add(new Figure(named.name(), value(a), value(b), unit.equals("count") ? "" : unit));
            }
        }
        return figures;
    }

    private static String value(Plan.@Nullable Level level) {
        return level == null ? NONE : PlanViews.plain(level.value());
    }

    private List<Figure> yields(PlanComparison c) {
        Plan.Books a = c.first().books();
        Plan.Books b = c.second().books();
        return List.of(
                new Figure("net yield", formats.percent(a.netYield()), formats.percent(b.netYield()), ""),
                new Figure("recovery", formats.percent(a.recovery()), formats.percent(b.recovery()), ""),
                new Figure("rescue", formats.percent(a.rescue()), formats.percent(b.rescue()), ""));
    }

    private List<Figure> wood(PlanComparison c) {
        List<PlanView.BookRow> first = PlanViews.bookRows(c.first().books());
        List<PlanView.BookRow> second = PlanViews.bookRows(c.second().books());
        List<Figure> figures = new ArrayList<>();
        for (int i = 0; i < first.size(); i++) {
            figures.add(figure(
                    first.get(i).name(), first.get(i).volume(), second.get(i).volume()));
        }
        figures.add(figure(
                "Pieces cut into", c.first().books().input(), c.second().books().input()));
        return figures;
    }

    private Figure figure(String name, Volume first, Volume second) {
        return new Figure(name, formats.cm3(first), formats.cm3(second), "cm³");
    }
}
