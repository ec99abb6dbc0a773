package org.scarfwright.rack.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Moisture;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.DimensionalChange;
import org.scarfwright.wood.EquilibriumMoisture;
import org.scarfwright.wood.GrainDirection;
import org.scarfwright.wood.ProtectedWood;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The woods with their figures and sources, and the moisture they come to in air. */
@Controller
class WoodController {
    private static final String UNKNOWN = "–";
    private static final String AT_TWELVE = "12 % MC volume";
    private static final Moisture TWELVE = new Moisture(1200);

    private final SpeciesCatalog catalog;

    WoodController(SpeciesCatalog catalog) {
        this.catalog = catalog;
    }

    /**
     * One wood as its row shows it; a figure nobody published is a dash.
     *
     * @param density at 12 % moisture content; only where the specific gravity is referred to the volume there
     * @param linearNotChecked the radial and tangential figures could not be checked
     * @param volumetricNotChecked the volumetric figure could not be checked
     * @param movementNotChecked the same for what follows from the first two, or for the second of two published figures
     */
    record Row(
            String name,
            String botanical,
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
            boolean lookUpAppendix,
            List<String> sources) {

        static Row of(Species wood) {
            Double gravity = wood.specificGravity();
            boolean green = gravity != null && !AT_TWELVE.equals(wood.specificGravityBasis());
            return new Row(
                    wood.commonName(),
                    wood.botanicalName(),
                    gravity == null
                            ? UNKNOWN
                            : BigDecimal.valueOf(gravity).setScale(2).toPlainString() + (green ? " (green)" : ""),
                    gravity == null || green
                            ? UNKNOWN
                            : BigDecimal.valueOf(Density.kgPerCubicMetre(gravity, TWELVE))
                                    .setScale(0, RoundingMode.HALF_UP)
                                    .toPlainString(),
                    plain(wood.shrinkRadialPct()),
                    plain(wood.shrinkTangentialPct()),
                    plain(wood.shrinkVolumetricPct()),
                    movement(wood, GrainDirection.RADIAL),
                    movement(wood, GrainDirection.TANGENTIAL),
                    wood.bonding().orElse(UNKNOWN),
                    wood.linearShrinkageNotChecked(),
                    wood.shrinkageNotChecked(),
                    wood.linearShrinkageNotChecked() || isRange(wood),
                    ProtectedWood.lookUpAppendix(wood),
                    wood.bondingSource() == null
                            ? List.of(wood.mechanicalSource(), wood.shrinkageSource())
                            : List.of(wood.mechanicalSource(), wood.shrinkageSource(), wood.bondingSource()));
        }

        private static boolean isRange(Species wood) {
            return DimensionalChange.of(wood, GrainDirection.RADIAL)
                    .filter(DimensionalChange.Coefficient::isRange)
                    .isPresent();
        }

        private static String movement(Species wood, GrainDirection direction) {
            return DimensionalChange.of(wood, direction)
                    .map(c -> c.isRange()
                            ? c.low().toPlainString() + " to " + c.high().toPlainString()
                            : c.low().toPlainString())
                    .orElse(UNKNOWN);
        }

        private static String plain(@Nullable Double figure) {
            return figure == null ? UNKNOWN : BigDecimal.valueOf(figure).toPlainString();
        }
    }

    @GetMapping("/wood")
    String wood(HttpServletRequest request, HttpServletResponse response, Model model) {
        QueryText query = new QueryText(request.getParameterMap());
        boolean asked = query.has(AirForm.CELSIUS) || query.has(AirForm.HUMIDITY);
        AirForm.Air air = asked ? AirForm.read(query) : null;
        if (asked && air == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        model.addAttribute(
                "form",
                Map.of(
                        "celsius", asked ? query.typed(AirForm.CELSIUS) : "21",
                        "rh", asked ? query.typed(AirForm.HUMIDITY) : "45"));
        model.addAttribute("errorList", query.errors());
        model.addAttribute("errors", FieldErrors.byField(query.errors()));
        if (air != null) {
            model.addAttribute("answer", answer(air));
        }
        model.addAttribute("woods", catalog.all().stream().map(Row::of).toList());
        return "rack/wood";
    }

    private static String answer(AirForm.Air air) {
        BigDecimal emc = BigDecimal.valueOf(EquilibriumMoisture.percent(air.celsius(), air.humidity()))
                .setScale(1, RoundingMode.HALF_UP);
        return "In air of " + air.celsius().toPlainString() + " °C and "
                + air.humidity().toPlainString() + " % relative humidity wood comes to about " + emc.toPlainString()
                + " % moisture content.";
    }
}
