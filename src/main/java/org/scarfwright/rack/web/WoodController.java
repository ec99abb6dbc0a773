package org.scarfwright.rack.web;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.OwnWoods;
import org.scarfwright.shop.Shop;
import org.scarfwright.shop.ShopAirBook;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.BoardFeet;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.DimensionalChange;
import org.scarfwright.wood.GrainDirection;
import org.scarfwright.wood.ProtectedWood;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** The woods with their figures and sources, and a page for each. */
@Controller
class WoodController {
    private static final String UNKNOWN = "–";
    private static final Moisture TWELVE = new Moisture(1200);

    private final SpeciesCatalog catalog;
    private final OwnWoods woods;
    private final Shop shop;
    private final ShopAirBook air;

    WoodController(SpeciesCatalog catalog, OwnWoods woods, Shop shop, ShopAirBook air) {
        this.catalog = catalog;
        this.woods = woods;
        this.shop = shop;
        this.air = air;
    }

    /**
     * One wood as its row shows it; a figure nobody published is a dash.
     *
     * @param density at 12 % moisture content, as far as it follows from what is known
     * @param linearNotChecked the radial and tangential figures could not be checked
     * @param volumetricNotChecked the volumetric figure could not be checked
     * @param movementNotChecked the same for what follows from the first two, or for the second of two published figures
     */
    record Row(
            String id,
            String name,
            String botanical,
            boolean own,
            String gravity,
            String density,
            String radial,
            String tangential,
            String volumetric,
            String radialMovement,
            String tangentialMovement,
            String bonding,
            boolean linearNotChecked,
            boolean volumetricNotChecked,
            boolean movementNotChecked,
            boolean lookUpAppendix) {

        static Row of(Species wood) {
            Double gravity = wood.specificGravity();
            boolean green = Species.GREEN.equals(wood.specificGravityBasis());
            return new Row(
                    wood.id(),
                    wood.commonName(),
                    wood.botanicalName(),
                    wood.own(),
                    gravity == null
                            ? UNKNOWN
                            : BigDecimal.valueOf(gravity).setScale(2).toPlainString() + (green ? " (green)" : ""),
                    Density.of(wood, TWELVE)
                            .map(d -> BigDecimal.valueOf(d)
                                    .setScale(0, RoundingMode.HALF_UP)
                                    .toPlainString())
                            .orElse(UNKNOWN),
                    plain(wood.shrinkRadialPct()),
                    plain(wood.shrinkTangentialPct()),
                    plain(wood.shrinkVolumetricPct()),
                    movement(wood, GrainDirection.RADIAL),
                    movement(wood, GrainDirection.TANGENTIAL),
                    wood.bonding().orElse(UNKNOWN),
                    wood.linearShrinkageNotChecked(),
                    wood.shrinkageNotChecked(),
                    SpeciesView.movementNotChecked(wood),
                    ProtectedWood.lookUpAppendix(wood));
        }

        private static String movement(Species wood, GrainDirection direction) {
            return DimensionalChange.of(wood, direction).map(SpeciesView::words).orElse(UNKNOWN);
        }

        private static String plain(@Nullable Double figure) {
            return figure == null ? UNKNOWN : BigDecimal.valueOf(figure).toPlainString();
        }
    }

    @GetMapping("/wood")
    ModelAndView wood() {
        return new ModelAndView(
                "rack/wood", Map.of("woods", catalog.all().stream().map(Row::of).toList()));
    }

    @GetMapping("/wood/{id}")
    ModelAndView species(@PathVariable String id, HttpServletRequest request) {
        OwnWoods.VersionedWood found = find(woods, id);
        Species wood = found.wood();
        LengthUnit unit = shop.settings().unit();
        QueryText query = new QueryText(request.getParameterMap());
        boolean asked = BlockForm.KEYS.stream().anyMatch(query::has);
        BlockForm.Block block = asked ? BlockForm.read(query, unit) : null;
        Map<String, String> typed = new LinkedHashMap<>();
        BlockForm.KEYS.forEach(key -> typed.put(key, query.typed(key)));
        if (!asked) {
            typed.put(BlockForm.MOISTURE, "8");
        }
        ModelAndView page = new ModelAndView("rack/species");
        page.setStatus(asked && block == null ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK);
        page.addObject("wood", SpeciesView.of(wood, air.air().air()));
        page.addObject("version", found.version());
        page.addObject("form", typed);
        page.addObject("lengthUnit", unit.symbol());
        page.addObject("errorList", query.errors());
        page.addObject("errors", FieldErrors.byField(query.errors()));
        if (block != null) {
            page.addObject("answer", weight(wood, block));
        }
        return page;
    }

    /** @throws NotFoundException when there is none */
    static OwnWoods.VersionedWood find(OwnWoods woods, String id) {
        return woods.wood(id).orElseThrow(() -> new NotFoundException("There is no wood “" + id + "”."));
    }

    private static String weight(Species wood, BlockForm.Block block) {
        String size = block.length() + " × " + block.width() + " × " + block.thickness() + " is "
                + block.volume()
                        .toMm3()
                        .movePointLeft(6)
                        .setScale(2, RoundingMode.HALF_UP)
                        .toPlainString()
                + " litres or " + BoardFeet.of(block.volume()).toPlainString() + " board feet";
        Optional<BigDecimal> grams = Density.grams(wood, block.moisture(), block.volume());
        return grams.map(g -> size + ". At " + block.moisture() + " it weighs about " + g.toPlainString()
                        + " g; a single board can easily be a tenth lighter or heavier.")
                .orElse(size + ". What it weighs at " + block.moisture()
                        + " is not known: it follows from figures that are not known.");
    }
}
