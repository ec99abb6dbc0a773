package org.scarfwright.ledger.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.scarfwright.ledger.CutRecording;
import org.scarfwright.ledger.CutRecording.Proposal;
import org.scarfwright.rack.Doing;
import org.scarfwright.web.EditVersion;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;

/** Recording cuts over the API: what the page can do. */
@RestController
@RequestMapping("/api/rack/pieces/{code}")
@Tag(name = "Ledger", description = "What happened to every piece, append-only")
class CutApi {
    private final CutRecording recording;

    CutApi(CutRecording recording) {
        this.recording = recording;
    }

    /** A section of the plan's layout. */
    @Schema(name = "CutSection")
    record SectionJson(int number, String title, boolean cut, boolean chosen) {}

    /** What would be recorded if nothing differed. */
    @Schema(name = "CutProposal")
    record ProposalJson(
            String piece,
            @Nullable Long plan,
            List<SectionJson> sections,

            @Schema(
                    description =
                            "What every field is filled in with: lengths in the shop's unit, waste in cm³. Send back"
                                    + " only those that differ")
            Map<String, String> fields) {
        static ProposalJson of(Proposal p) {
            return new ProposalJson(
                    p.piece().code(),
                    p.plan(),
                    p.sections().stream()
                            .map(s -> new SectionJson(s.number(), s.title(), s.cut(), s.chosen()))
                            .toList(),
                    new TreeMap<>(p.fields()));
        }
    }

    /** A cut as it was made. */
    @Schema(name = "CutMade")
    record CutJson(
            @Schema(description = "Numbers of the sections that were cut; all that are not cut yet when left out")
            @Nullable
            List<Integer> sections,

            @Schema(description = "Fields that differ from the proposal, by name") @Nullable
            Map<String, String> fields,

            @Schema(maxLength = Doing.LONGEST_WHO) @Nullable String who,

            @Schema(maxLength = Doing.LONGEST_WHY) @Nullable String why) {}

    /** What came of it. */
    @Schema(name = "CutRecorded")
    record RecordedJson(EntryJson entry, List<String> rests, BigDecimal unexplainedMm3) {}

    @GetMapping("/cut")
    @Operation(
            summary = "What the plan says a piece gives, as fields to be filled in",
            description =
                    "sections: numbers, with commas; all that are not cut yet when left out. The ETag is the piece's"
                            + " version, to be sent as If-Match when the cut is recorded.")
    ResponseEntity<ProposalJson> propose(
            @PathVariable String code, @RequestParam(name = "sections", defaultValue = "") String sections) {
        Proposal proposal = recording.propose(code, numbers(sections));
        return ResponseEntity.ok()
                .eTag(EditVersion.etag(proposal.piece().version()))
                .body(ProposalJson.of(proposal));
    }

    @PostMapping("/cuts")
    @Operation(
            summary = "Record a cut",
            description =
                    "Needs If-Match with the ETag of the proposal. Fields that are left out stand as proposed, to the"
                            + " last cubic micrometre. For part 1 of section 1: part-1-1-length, -width, -thickness, -spoilt (true)."
                            + " For rests: rest-1-length, -width, -thickness, -place, -code, -note, -waste (true). Waste in cm³:"
                            + " waste-kerf, waste-bevel, waste-edge, waste-trim, waste-planing, waste-rest. What is left under the"
                            + " piece's own code: left-length, left-width, left-thickness. What does not add up is recorded as an"
                            + " unexplained difference.")
    ResponseEntity<RecordedJson> record(
            @PathVariable String code,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody CutJson cut) {
        long seen = EditVersion.seen(ifMatch);
        Map<String, String> typed = new LinkedHashMap<>(cut.fields() == null ? Map.of() : cut.fields());
        List<Integer> sections = cut.sections() == null ? List.of() : cut.sections();
        refuseUnknown(recording.propose(code, sections), typed.keySet());
        typed.put("who", cut.who() == null ? "" : cut.who());
        typed.put("why", cut.why() == null ? "" : cut.why());
        try {
            CutRecording.Recorded recorded = recording.record(code, seen, sections, typed);
            return ResponseEntity.status(HttpStatus.CREATED)
                    .location(UriComponentsBuilder.fromPath("/api/ledger/entries/{id}")
                            .build(recorded.entry().id()))
                    .body(new RecordedJson(
                            EntryJson.of(recorded.entry()),
                            recorded.restCodes(),
                            EntryJson.unexplained(recorded.entry()).toMm3()));
        } catch (InvalidInputException e) {
            throw new InvalidInputException(e.errors().stream()
                    .map(f -> f.pointer().equals("/who") || f.pointer().equals("/why")
                            ? f
                            : new FieldError("/fields" + f.pointer(), f.label(), f.value(), f.message()))
                    .toList());
        }
    }

    /** A mistyped name must not pass for the plan's figure. */
    private static void refuseUnknown(Proposal proposal, Set<String> names) {
        List<FieldError> unknown = new ArrayList<>();
        for (String name : names) {
            boolean known = proposal.fields().containsKey(name)
                    || proposal.parts().stream().anyMatch(p -> name.equals(p.name() + "-spoilt"))
                    || proposal.rests().stream()
                            .anyMatch(r -> name.matches(r.name() + "-(length|width|thickness|place|code|note|waste)"));
            if (!known) {
                unknown.add(new FieldError(
                        "/fields/" + name,
                        "Field",
                        name,
                        "“" + name + "” is none of this cut; ask for its fields first"));
            }
        }
        if (!unknown.isEmpty()) {
            throw new InvalidInputException(unknown);
        }
    }

    private static List<Integer> numbers(String text) {
        if (text.isBlank()) {
            return List.of();
        }
        List<Integer> numbers = new ArrayList<>();
        for (String one : text.split(",", -1)) {
            if (!one.strip().matches("\\d{1,4}")) {
                throw new InvalidInputException(new FieldError(
                        "/sections", "Sections", text, "are numbers with commas between them, for example 1,2"));
            }
            numbers.add(Integer.parseInt(one.strip()));
        }
        return numbers;
    }
}
