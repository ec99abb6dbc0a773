package org.scarfwright.shop.web;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopEditing;
import org.scarfwright.shop.ShopEditing.VersionedSaw;
import org.scarfwright.shop.ShopEditing.VersionedSettings;
import org.scarfwright.shop.ShopSettings;
import org.scarfwright.shop.ShopStart;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** The shop over the API: what its pages can do. */
@RestController
@RequestMapping("/api/shop")
class ShopApi {
    private final ShopEditing shop;
    private final ShopStart start;

    ShopApi(ShopEditing shop, ShopStart start) {
        this.shop = shop;
        this.start = start;
    }

    /** The rules on the wire. */
    @Schema(
            name = "ShopRules",
            description = "In input a length may also be text as people write it, such as \"1/16 in\"")
    record SettingsView(
            String lengthUnit,
            String currency,
            BigDecimal planingPerFaceMm,
            BigDecimal edgeAllowanceMm,
            BigDecimal neckStraightnessMm,
            BigDecimal shortestMachinedMm,
            BigDecimal usableRestLengthMm,
            BigDecimal usableRestWidthMm,
            int neckGrainSlope,
            BigDecimal driestPercent,
            BigDecimal wettestPercent,
            BigDecimal moistureApartPoints,
            int searchSeconds,
            int searchMemoryMb) {
        static SettingsView of(ShopSettings s) {
            return new SettingsView(
                    s.unit().symbol(),
                    s.currency(),
                    s.planingPerFace().toMm(),
                    s.edgeAllowance().toMm(),
                    s.neckStraightness().toMm(),
                    s.shortestMachined().toMm(),
                    s.usableRestLength().toMm(),
                    s.usableRestWidth().toMm(),
                    s.neckGrainSlope(),
                    s.driest().toPercent(),
                    s.wettest().toPercent(),
                    BigDecimal.valueOf(s.moistureApart().hundredths(), 2),
                    s.searchSeconds(),
                    s.searchMemoryMb());
        }
    }

    /** A saw on the wire. */
    @Schema(name = "Saw", description = "In input a length may also be text as people write it, such as \"1/16 in\"")
    record SawView(
            String code,
            String name,
            String kind,
            BigDecimal kerfMm,
            BigDecimal depthMm,
            BigDecimal reachMm,
            BigDecimal shallowestDegrees,
            BigDecimal steepestDegrees,
            BigDecimal truingMm,

            @Schema(
                    description = "Least difference of angles that can be read; 0.5 when left out",
                    minimum = "0.01",
                    maximum = "5")
            BigDecimal scaleDegrees) {
        static SawView of(Saw s) {
            return new SawView(
                    s.code(),
                    s.name(),
                    SawForm.word(s.kind()),
                    s.kerf().toMm(),
                    s.depth().toMm(),
                    s.reach().toMm(),
                    s.shallowest().toDegrees(),
                    s.steepest().toDegrees(),
                    s.truing().toMm(),
                    s.scale().toDegrees());
        }
    }

    @GetMapping("/settings")
    ResponseEntity<SettingsView> settings() {
        return answer(shop.editableSettings());
    }

    @PutMapping("/settings")
    ResponseEntity<SettingsView> changeSettings(
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SettingsView.class)))
                    @RequestBody
                    JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        ShopSettings wanted =
                SettingsForm.of(JsonTexts.read(body, SettingsForm.JSON_KEYS)).read(Entries.ofApi());
        if (!shop.changeSettings(seen, wanted)) {
            throw EditConditionException.stale();
        }
        return answer(shop.editableSettings());
    }

    @GetMapping("/saws")
    List<SawView> saws() {
        return shop.editableSaws().stream().map(s -> SawView.of(s.saw())).toList();
    }

    @PostMapping("/saws")
    ResponseEntity<SawView> addSaw(
            @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SawView.class)))
                    @RequestBody
                    JsonNode body) {
        Entries entries = Entries.ofApi();
        SawForm form = SawForm.of(JsonTexts.read(body, SawForm.JSON_KEYS, SawForm.OPTIONAL_KEYS));
        Saw saw = form.read(entries);
        if (!shop.addSaw(saw)) {
            throw new ConflictException("There is another saw “" + saw.code() + "”; choose a code of its own.");
        }
        return ResponseEntity.created(URI.create("/api/shop/saws/" + saw.code()))
                .eTag(EditVersion.etag(0))
                .body(SawView.of(saw));
    }

    @GetMapping("/saws/{code}")
    ResponseEntity<SawView> saw(@PathVariable String code) {
        return answer(find(code));
    }

    @PutMapping("/saws/{code}")
    ResponseEntity<SawView> changeSaw(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content = @Content(schema = @Schema(implementation = SawView.class)))
                    @RequestBody
                    JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        Entries entries = Entries.ofApi();
        SawForm form = SawForm.of(JsonTexts.read(body, SawForm.JSON_KEYS, SawForm.OPTIONAL_KEYS));
        Saw wanted = form.read(entries);
        if (!wanted.code().equals(code)) {
            entries.refuse(form.codeEntry(), "“" + wanted.code() + "” is not the code in the address, " + code);
            entries.throwIfRefused();
        }
        if (!shop.changeSaw(seen, wanted)) {
            throw EditConditionException.stale();
        }
        return answer(find(code));
    }

    @DeleteMapping("/saws/{code}")
    ResponseEntity<Void> removeSaw(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        if (!shop.removeSaw(seen, code)) {
            throw EditConditionException.stale();
        }
        return ResponseEntity.noContent().build();
    }

    @GetMapping("/start")
    Map<String, Boolean> started() {
        return Map.of("started", start.isStarted());
    }

    @PostMapping("/demo")
    Map<String, Boolean> loadDemo() {
        start.loadDemo();
        return started();
    }

    @PostMapping("/empty")
    Map<String, Boolean> startEmpty() {
        start.startEmpty();
        return started();
    }

    private VersionedSaw find(String code) {
        return shop.editableSaw(code)
                .orElseThrow(() -> new NotFoundException("There is no saw “" + code + "” in the shop."));
    }

    private static ResponseEntity<SettingsView> answer(VersionedSettings now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(SettingsView.of(now.settings()));
    }

    private static ResponseEntity<SawView> answer(VersionedSaw now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(SawView.of(now.saw()));
    }
}
