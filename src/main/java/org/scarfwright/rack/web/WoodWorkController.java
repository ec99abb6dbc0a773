package org.scarfwright.rack.web;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.shop.ShopAirBook;
import org.scarfwright.web.Choice;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.GrainSlope;
import org.scarfwright.wood.SeamStep;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;

/** Two woods at a seam over the year, and grain that does not run along a piece. What is asked stands in the address. */
@Controller
class WoodWorkController {
    private final SpeciesCatalog catalog;
    private final Shop shop;
    private final ShopAirBook air;

    WoodWorkController(SpeciesCatalog catalog, Shop shop, ShopAirBook air) {
        this.catalog = catalog;
        this.shop = shop;
        this.air = air;
    }

    @GetMapping("/wood/seam")
    ModelAndView seam(HttpServletRequest request) {
        List<Species> woods = catalog.all();
        LengthUnit unit = shop.settings().unit();
        QueryText query =
                new QueryText(withDefaults(request.getParameterMap(), air.air().air()));
        SeamForm.Seam seam = SeamForm.read(query, woods, unit);
        ModelAndView page = page("rack/seam", SeamForm.KEYS, query);
        page.addObject(
                "woods",
                woods.stream().map(w -> new Choice(w.id(), w.commonName())).toList());
        page.addObject("cuts", SeamForm.CUTS);
        page.addObject("lengthUnit", unit.symbol());
        if (seam != null) {
            page.addObject("answer", words(seam));
        }
        return page;
    }

    @GetMapping("/wood/slope")
    ModelAndView slope(HttpServletRequest request) {
        Map<String, String[]> values = new LinkedHashMap<>(request.getParameterMap());
        values.putIfAbsent(SlopeForm.FIRST, new String[] {"12"});
        QueryText query = new QueryText(values);
        SlopeForm.Slopes slopes = SlopeForm.read(query);
        ModelAndView page = page("rack/slope", SlopeForm.KEYS, query);
        page.addObject("rows", GrainSlope.PRINTED);
        if (slopes != null) {
            page.addObject("answer", words(slopes));
        }
        return page;
    }

    /** What an address does not name is taken from an example and from the shop's year. */
    private static Map<String, String[]> withDefaults(Map<String, String[]> given, ShopAir air) {
        Map<String, String[]> values = new LinkedHashMap<>(given);
        Map.of(
                        SeamForm.ONE, "maple_sugar",
                        SeamForm.ONE_CUT, "flat",
                        SeamForm.OTHER, "walnut_black",
                        SeamForm.OTHER_CUT, "quarter",
                        SeamForm.WIDTH, "60 mm",
                        SeamForm.LOWEST, comesTo(air.driest()),
                        SeamForm.HIGHEST, comesTo(air.dampest()))
                .forEach((key, text) -> values.putIfAbsent(key, new String[] {text}));
        return values;
    }

    private static String comesTo(ShopAir.Air air) {
        return SpeciesView.tenth(EquilibriumMoisture.of(air.celsius(), air.humidity()));
    }

    private static ModelAndView page(String view, List<String> keys, QueryText query) {
        Map<String, String> typed = new LinkedHashMap<>();
        keys.forEach(key -> typed.put(key, query.typed(key)));
        ModelAndView page = new ModelAndView(view);
        page.setStatus(query.errors().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("form", typed);
        page.addObject("errorList", query.errors());
        page.addObject("errors", FieldErrors.byField(query.errors()));
        return page;
    }

    private static String words(SeamForm.Seam seam) {
        SeamStep step = seam.step();
        String least = SpeciesView.millimetres(step.least());
        String most = SpeciesView.millimetres(step.most());
        return seam.one().words() + " against " + seam.other().words() + ", " + seam.width() + " wide, from "
                + seam.year().lowest() + " to " + seam.year().highest()
                + ": flush at one end of the year, a step of up to "
                + (least.equals(most) ? most : least + " to " + most) + " mm at each edge at the other.";
    }

    private static String words(SlopeForm.Slopes slopes) {
        double combined = slopes.combined();
        String one = GrainSlope.words(combined);
        return slopes.second() == null
                ? one
                : "1 in " + DecimalText.plain(slopes.first()) + " and 1 in " + DecimalText.plain(slopes.second())
                        + " together are 1 in "
                        + DecimalText.plain(BigDecimal.valueOf(combined).setScale(2, RoundingMode.HALF_UP)) + ". "
                        + one;
    }
}
