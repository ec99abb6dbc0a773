package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.Act;
import org.scarfwright.ledger.Balance;
import org.scarfwright.ledger.Entry;
import org.scarfwright.ledger.Ledger;
import org.scarfwright.ledger.Ledger.ActList;
import org.scarfwright.ledger.Verification;
import org.scarfwright.rack.Doing;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;

/** The ledger for programs: it can be read, held against the rack, and what was done last can be taken back. */
@RestController
@RequestMapping("/api/ledger")
@Tag(name = "Ledger", description = "What happened to every piece, append-only")
class LedgerApi {
    private static final int USUAL_SIZE = 50;

    private final Ledger ledger;
    private final Verification verification;

    LedgerApi(Ledger ledger, Verification verification) {
        this.ledger = ledger;
        this.verification = verification;
    }

    /** One act. */
    @Schema(name = "Act")
    record ActJson(
            long entry,
            int position,
            String kind,
            String piece,
            BigDecimal volumeBeforeMm3,
            BigDecimal volumeAfterMm3,
            @Nullable Long plan,
            Instant at,
            String who,
            String detail) {
        static ActJson of(Act act) {
            return new ActJson(
                    act.entry(),
                    act.position(),
                    act.kind().name().toLowerCase(Locale.ROOT),
                    act.pieceCode(),
                    act.volumeBefore().toMm3(),
                    act.volumeAfter().toMm3(),
                    act.planId(),
                    act.at(),
                    act.who(),
                    act.detail());
        }
    }

    /** Some acts, the newest first. */
    @Schema(name = "ActList")
    record ListJson(
            List<ActJson> acts,
            long total,

            @Schema(description = "Ask for these with after; empty when there are no newer ones") @Nullable
            String newer,

            @Schema(description = "Ask for these with before; empty when there are no older ones") @Nullable
            String older) {}

    /** All acts of one kind. */
    @Schema(name = "BalanceLine")
    record LineJson(String kind, long acts, BigDecimal inMm3, BigDecimal outMm3) {}

    /** What came in, went out and is there. */
    @Schema(name = "Balance")
    record BalanceJson(
            List<LineJson> lines,
            BigDecimal inMm3,
            BigDecimal outMm3,

            @Schema(description = "Volume of the pieces that are there, from their sizes")
            BigDecimal onRackMm3,

            @Schema(description = "On the rack minus what the acts account for; 0 when the books close")
            BigDecimal unexplainedMm3,

            boolean closes) {}

    @GetMapping
    @Operation(
            summary = "Acts, the newest first, some at a time",
            description = "piece: only acts on this piece. before, after: a place in the ledger, an entry's number or"
                    + " one of its acts, such as 57 or 57.2; acts older or newer than that one. size 1 to 500, usually"
                    + " 50.")
    ListJson acts(
            @RequestParam(name = "piece", required = false) @Nullable String piece,
            @RequestParam(name = "before", required = false) @Nullable String before,
            @RequestParam(name = "after", required = false) @Nullable String after,
            @RequestParam(name = "size", defaultValue = "" + USUAL_SIZE) int size) {
        if (size < 1 || size > Ledger.LARGEST_PAGE) {
            throw refused("/size", "Size", String.valueOf(size), "is not a number from 1 to " + Ledger.LARGEST_PAGE);
        }
        if (before != null && after != null) {
            throw refused("/after", "After", after, "cannot be asked together with before; leave one of them out");
        }
        ActList found = before != null
                ? ledger.acts(piece, new Ledger.From(spot("before", before), true), size)
                : after != null
                        ? ledger.acts(piece, new Ledger.From(spot("after", after), false), size)
                        : ledger.newest(piece, size);
        return new ListJson(
                found.acts().stream().map(ActJson::of).toList(),
                found.total(),
                found.newer() == null ? null : found.newer().toString(),
                found.older() == null ? null : found.older().toString());
    }

    private static Ledger.Spot spot(String name, String text) {
        return Ledger.Spot.read(text)
                .orElseThrow(() -> refused(
                        "/" + name,
                        name.equals("before") ? "Before" : "After",
                        text,
                        "is no place in the ledger; write an entry’s number, or one of its acts, for example 57 or"
                                + " 57.2"));
    }

    @GetMapping("/balance")
    @Operation(summary = "What came in, what went out and what is there, exact")
    BalanceJson balance() {
        Balance balance = ledger.balance();
        return new BalanceJson(
                balance.lines().stream()
                        .map(l -> new LineJson(
                                l.kind().name().toLowerCase(Locale.ROOT),
                                l.acts(),
                                l.in().toMm3(),
                                l.out().toMm3()))
                        .toList(),
                balance.in().toMm3(),
                balance.out().toMm3(),
                balance.onRack().toMm3(),
                balance.unexplained().toMm3(),
                balance.closes());
    }

    /** Who takes an entry back, and why. */
    @Schema(name = "UndoWords")
    record UndoJson(
            @Schema(maxLength = Doing.LONGEST_WHO) @Nullable String who,

            @Schema(maxLength = Doing.LONGEST_WHY) @Nullable String why) {}

    /** What came of holding the ledger against itself and the rack. */
    @Schema(name = "Verification")
    record ReportJson(
            Instant at,
            long tookMillis,
            long entries,
            long acts,
            long pieces,
            boolean sound,

            @Schema(description = "The first of what is wrong, a sentence each")
            List<String> faults,

            long faultCount) {
        static ReportJson of(Verification.Report report) {
            return new ReportJson(
                    report.at(),
                    report.took().toMillis(),
                    report.entries(),
                    report.acts(),
                    report.pieces(),
                    report.isSound(),
                    report.faults(),
                    report.faultCount());
        }
    }

    @GetMapping("/entries/{id}")
    @Operation(summary = "One entry, with its acts and what became of the wood")
    EntryJson entry(@PathVariable long id) {
        return EntryJson.of(ledger.entry(id).orElseThrow(() -> new NotFoundException("There is no entry " + id + ".")));
    }

    @PostMapping("/entries/{id}/undo")
    @Operation(
            summary = "Take an entry back, as an entry of its own",
            description =
                    "One of the last 50 of whoever made it, and only while nothing that came later builds on it. A"
                            + " 409 names the reason.")
    ResponseEntity<EntryJson> undo(@PathVariable long id, @RequestBody UndoJson words) {
        Entry undone = ledger.undo(
                id,
                EntryWords.who(words.who() == null ? "" : words.who()),
                EntryWords.why(words.why() == null ? "" : words.why()));
        return ResponseEntity.status(HttpStatus.CREATED)
                .location(UriComponentsBuilder.fromPath("/api/ledger/entries/{id}")
                        .build(undone.id()))
                .body(EntryJson.of(undone));
    }

    /** How far it is. */
    @Schema(name = "VerificationGoing")
    record GoingJson(Instant begun, long entries, long of) {}

    /** What came of it last, and how far it is where it goes on. */
    @Schema(name = "VerificationState")
    record StateJson(@Nullable ReportJson last, @Nullable GoingJson going) {}

    @PostMapping("/verification")
    @Operation(
            summary = "Hold the ledger against itself and the rack, now",
            description =
                    "200 with what came of it where that is quick; else 202, and it goes on by itself: ask for its"
                            + " state until nothing is going on.")
    ResponseEntity<Object> verify() {
        Optional<Verification.Report> done = verification.begin(LedgerController.PATIENCE);
        return done.isPresent()
                ? ResponseEntity.ok(ReportJson.of(done.get()))
                : ResponseEntity.accepted()
                        .location(UriComponentsBuilder.fromPath("/api/ledger/verification/state")
                                .build()
                                .toUri())
                        .body(state());
    }

    @GetMapping("/verification/state")
    @Operation(summary = "What came of it last, and how far it is where it goes on")
    StateJson state() {
        return new StateJson(
                verification.last().map(ReportJson::of).orElse(null),
                verification
                        .going()
                        .map(g -> new GoingJson(g.begun(), g.entries(), g.of()))
                        .orElse(null));
    }

    @GetMapping("/verification")
    @Operation(summary = "What came of it last, at the start of the program, in the night or when somebody asked")
    ReportJson verified() {
        return ReportJson.of(verification
                .last()
                .orElseThrow(() -> new NotFoundException("It was not gone through yet since the program started.")));
    }

    private static InvalidInputException refused(String pointer, String label, String value, String message) {
        return new InvalidInputException(new FieldError(pointer, label, value, message));
    }
}
