package org.scarfwright.rack.web;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Moisture;
import org.scarfwright.rack.PieceReadiness;
import org.scarfwright.shop.ShopAir;
import org.scarfwright.shop.ShopAirBook;
import org.scarfwright.shop.ShopAirBook.VersionedAir;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.Formats;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.EquilibriumMoisture;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The air wood lies in: what it brings wood to, what keeps wood where it should be, and the shop's own air. */
@Controller
class WoodAirController {
    private static final String KEEP_CELSIUS = "keepCelsius";
    private static final String KEEP = "keep";
    private static final String READING = "reading";
    private static final String VERSION = "version";

    private final ShopAirBook book;
    private final PieceReadiness readiness;
    private final Formats formats;
    private final Clock clock;

    WoodAirController(ShopAirBook book, PieceReadiness readiness, Formats formats, Clock clock) {
        this.book = book;
        this.readiness = readiness;
        this.formats = formats;
        this.clock = clock;
    }

    @GetMapping("/wood/air")
    ModelAndView air(HttpServletRequest request) {
        QueryText query = new QueryText(request.getParameterMap());
        VersionedAir kept = book.air();
        Map<String, String> form = AirForm.texts(kept.air());
        form.put(VERSION, Long.toString(kept.version()));
        fill(form, query, kept.air());
        ModelAndView page = page(form, kept.air());
        if (query.has(AirForm.CELSIUS) || query.has(AirForm.HUMIDITY)) {
            ShopAir.Air asked = AirForm.read(query);
            if (asked != null) {
                page.addObject("answer", comesTo(asked));
            }
        }
        if (query.has(KEEP_CELSIUS) || query.has(KEEP)) {
            String kept7 = keeps(query);
            if (kept7 != null) {
                page.addObject("keepAnswer", kept7);
            }
        }
        if (query.has(READING)) {
            Moisture reading = query.read(READING, "Moisture of the piece", "8", Moisture::parse);
            if (reading != null) {
                page.addObject("readyAnswer", readiness.of(reading).sentence());
            }
        }
        return withErrors(page, query.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @PostMapping("/wood/air")
    ModelAndView save(HttpServletRequest request, RedirectAttributes after) {
        QueryText query = new QueryText(request.getParameterMap());
        ShopAir wanted = AirForm.shopAir(query, LocalDate.now(clock));
        Map<String, String> form = new LinkedHashMap<>();
        AirForm.texts(book.air().air()).keySet().forEach(key -> form.put(key, query.typed(key)));
        form.put(VERSION, query.typed(VERSION));
        if (wanted != null && book.change(version(query.typed(VERSION)), wanted)) {
            after.addFlashAttribute("notice", "The shop’s air is saved.");
            return new ModelAndView("redirect:/wood/air");
        }
        VersionedAir kept = book.air();
        fill(form, query, kept.air());
        ModelAndView page = page(form, kept.air());
        if (wanted == null) {
            return withErrors(page, query.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        form.put(VERSION, Long.toString(kept.version()));
        return withErrors(
                page,
                List.of(
                        new FieldError(
                                "",
                                "The shop’s air",
                                "",
                                "was changed since you opened this page; your entries are kept below. Save again to replace it")),
                HttpStatus.CONFLICT);
    }

    private static void fill(Map<String, String> form, QueryText query, ShopAir kept) {
        ShopAir.Air now = kept.now();
        form.put(AirForm.CELSIUS, typed(query, AirForm.CELSIUS, now == null ? "21" : DecimalText.plain(now.celsius())));
        form.put(
                AirForm.HUMIDITY,
                typed(query, AirForm.HUMIDITY, now == null ? "45" : DecimalText.plain(now.humidity())));
        form.put(KEEP_CELSIUS, typed(query, KEEP_CELSIUS, now == null ? "20" : DecimalText.plain(now.celsius())));
        form.put(KEEP, typed(query, KEEP, "7"));
        form.put(READING, query.typed(READING));
    }

    private static String typed(QueryText query, String key, String otherwise) {
        return query.has(key) ? query.typed(key) : otherwise;
    }

    private ModelAndView page(Map<String, String> form, ShopAir kept) {
        ModelAndView page = new ModelAndView("rack/air");
        page.addObject("form", form);
        page.addObject("kept", words(kept));
        return page;
    }

    private static ModelAndView withErrors(ModelAndView page, List<FieldError> errors, HttpStatus status) {
        page.setStatus(errors.isEmpty() ? HttpStatus.OK : status);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }

    /** What the shop's air does to wood, in sentences. */
    private List<String> words(ShopAir air) {
        ShopAir.Air now = air.now();
        String today = now == null
                ? "Nobody read the shop’s hygrometer yet, so whether a piece is at rest is not known."
                : comesTo(now) + " Read on " + formats.day(air.readOn()) + ".";
        return List.of(
                today,
                "Over the year wood goes from about " + tenth(air.driest()) + " % in the driest air to "
                        + tenth(air.dampest()) + " % in the dampest.");
    }

    private static String tenth(ShopAir.Air air) {
        return SpeciesView.tenth(EquilibriumMoisture.of(air.celsius(), air.humidity()));
    }

    private static String comesTo(ShopAir.Air air) {
        return "In air of " + DecimalText.plain(air.celsius()) + " °C and " + DecimalText.plain(air.humidity())
                + " % relative humidity wood comes to about " + tenth(air) + " % moisture content.";
    }

    /** @return null when it was refused */
    private static @Nullable String keeps(QueryText query) {
        BigDecimal celsius = AirForm.celsius(query, KEEP_CELSIUS);
        Moisture content = query.read(KEEP, "Moisture to keep", "7", Moisture::parse);
        if (celsius == null || content == null) {
            return null;
        }
        var refusal = EquilibriumMoisture.contentRefusal(celsius, content);
        if (refusal.isPresent()) {
            query.refuse(KEEP, "Moisture to keep", refusal.get());
            return null;
        }
        return "At " + DecimalText.plain(celsius) + " °C about "
                + BigDecimal.valueOf(EquilibriumMoisture.humidityKeeping(celsius, content))
                        .setScale(0, RoundingMode.HALF_UP)
                + " % relative humidity keeps wood at " + content + ".";
    }

    private static long version(String text) {
        return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
    }
}
