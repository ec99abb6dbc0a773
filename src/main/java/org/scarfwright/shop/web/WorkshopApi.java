package org.scarfwright.shop.web;

import java.math.BigDecimal;
import java.net.URI;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.DayOff;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.LearnedMinutes;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.StepRecords;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.shop.WorkshopBook.VersionedGlue;
import org.scarfwright.shop.WorkshopBook.VersionedWorkshop;
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

/** Hours, hands, clamps, days off and glues over the API: what their pages can do. */
@RestController
@RequestMapping("/api/shop")
class WorkshopApi {
    private final WorkshopBook book;
    private final StepRecords records;

    WorkshopApi(WorkshopBook book, StepRecords records) {
        this.book = book;
        this.records = records;
    }

    /** A glue on the wire; times in hours and minutes, temperatures in °C. */
    record GlueView(
            String code,
            String name,
            BigDecimal clampHours,
            BigDecimal cureHours,
            BigDecimal lowestCelsius,
            int openMinutes,
            boolean commonPractice) {
        static GlueView of(Glue g) {
            return new GlueView(
                    g.code(),
                    g.name(),
                    new BigDecimal(GlueForm.hours(g.clamp())),
                    new BigDecimal(GlueForm.hours(g.cure())),
                    g.lowestCelsius(),
                    g.openMinutes(),
                    g.commonPractice());
        }
    }

    /** A day off on the wire. */
    record DayOffView(LocalDate day, String word) {}

    @GetMapping("/workshop")
    ResponseEntity<Map<String, String>> workshop() {
        return answer(book.workshop());
    }

    @PutMapping("/workshop")
    ResponseEntity<Map<String, String>> change(
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        Entries entries = Entries.ofApi();
        WorkshopForm form = WorkshopForm.of(JsonTexts.read(body, WorkshopForm.KEYS, WorkshopForm.OPTIONAL));
        Workshop wanted = form.read(entries);
        WorkshopController.refuseUnknownGlue(book, wanted, form, entries);
        if (!book.change(seen, wanted)) {
            throw EditConditionException.stale();
        }
        return answer(book.workshop());
    }

    /**
     * Minutes of one kind of step on the wire.
     *
     * @param key of its minutes in the workshop
     * @param own the shop's own minutes
     * @param learned median of the last recorded; null when nobody recorded any
     * @param records how many it is of
     * @param laidWith what the week is laid with
     * @param from where that comes from: learned or own
     */
    record StepMinutesView(
            String key,
            String step,
            int own,
            @Nullable Integer learned,
            int records,
            @Nullable Integer least,
            @Nullable Integer most,
            int laidWith,
            String from) {}

    @GetMapping("/step-minutes")
    List<StepMinutesView> stepMinutes() {
        Workshop workshop = book.workshop().workshop();
        Map<StepKind, LearnedMinutes> learned = records.learned();
        Workshop laid = workshop.laidWith(learned);
        return Stream.of(StepKind.values())
                .map(kind -> {
                    LearnedMinutes l = learned.get(kind);
                    return new StepMinutesView(
                            WorkshopForm.key(kind),
                            kind.words(),
                            workshop.minutesOf(kind),
                            l == null ? null : Integer.valueOf(l.minutes()),
                            l == null ? 0 : l.records(),
                            l == null ? null : Integer.valueOf(l.least()),
                            l == null ? null : Integer.valueOf(l.most()),
                            laid.minutesOf(kind),
                            workshop.learns(kind, learned) ? WorkshopForm.LEARNED : WorkshopForm.OWN);
                })
                .toList();
    }

    @GetMapping("/days-off")
    List<DayOffView> daysOff() {
        return book.daysOff().stream()
                .map(d -> new DayOffView(d.day(), d.word()))
                .toList();
    }

    @PostMapping("/days-off")
    ResponseEntity<DayOffView> addDayOff(@RequestBody JsonNode body) {
        JsonTexts json = JsonTexts.read(body, List.of("day", "word"));
        DayOff off = new WorkshopController.DayOffForm(json.text("day"), json.text("word")).read(Entries.ofApi());
        if (!book.addDayOff(off)) {
            throw new ConflictException(off.day() + " is off already.");
        }
        return ResponseEntity.created(URI.create("/api/shop/days-off/" + off.day()))
                .body(new DayOffView(off.day(), off.word()));
    }

    @DeleteMapping("/days-off/{day}")
    ResponseEntity<Void> removeDayOff(@PathVariable String day) {
        DayOff off = new WorkshopController.DayOffForm(day, "-").read(Entries.ofApi());
        if (!book.removeDayOff(off.day())) {
            throw new NotFoundException(day + " is no day off.");
        }
        return ResponseEntity.noContent().build();
    }

    @GetMapping("/glues")
    List<GlueView> glues() {
        return book.glues().stream().map(g -> GlueView.of(g.glue())).toList();
    }

    @PostMapping("/glues")
    ResponseEntity<GlueView> addGlue(@RequestBody JsonNode body) {
        Glue glue = GlueForm.of(JsonTexts.read(body, GlueForm.KEYS)).read(Entries.ofApi());
        if (!book.addGlue(glue)) {
            throw new ConflictException("There is another glue “" + glue.code() + "”; choose a code of its own.");
        }
        return ResponseEntity.created(URI.create("/api/shop/glues/" + glue.code()))
                .eTag(EditVersion.etag(0))
                .body(GlueView.of(glue));
    }

    @GetMapping("/glues/{code}")
    ResponseEntity<GlueView> glue(@PathVariable String code) {
        return answer(find(code));
    }

    @PutMapping("/glues/{code}")
    ResponseEntity<GlueView> changeGlue(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody JsonNode body) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        Entries entries = Entries.ofApi();
        GlueForm form = GlueForm.of(JsonTexts.read(body, GlueForm.KEYS));
        Glue wanted = form.read(entries);
        if (!wanted.code().equals(code)) {
            entries.refuse(form.codeEntry(), "“" + wanted.code() + "” is not the code in the address, " + code);
            entries.throwIfRefused();
        }
        if (!book.changeGlue(seen, wanted)) {
            throw EditConditionException.stale();
        }
        return answer(find(code));
    }

    @DeleteMapping("/glues/{code}")
    ResponseEntity<Void> removeGlue(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        long seen = EditVersion.seen(ifMatch);
        find(code);
        if (!book.removeGlue(seen, code)) {
            throw EditConditionException.stale();
        }
        return ResponseEntity.noContent().build();
    }

    private VersionedGlue find(String code) {
        return book.glue(code).orElseThrow(() -> new NotFoundException("There is no glue “" + code + "” in the shop."));
    }

    /** Every setting as the page shows it. */
    private static ResponseEntity<Map<String, String>> answer(VersionedWorkshop now) {
        WorkshopForm form = WorkshopForm.of(now.version(), now.workshop());
        Map<String, String> texts = new LinkedHashMap<>();
        WorkshopForm.KEYS.forEach(key -> texts.put(key, form.text(key)));
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(texts);
    }

    private static ResponseEntity<GlueView> answer(VersionedGlue now) {
        return ResponseEntity.ok().eTag(EditVersion.etag(now.version())).body(GlueView.of(now.glue()));
    }
}
