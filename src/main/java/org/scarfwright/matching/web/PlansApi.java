package org.scarfwright.matching.web;

import io.swagger.v3.oas.annotations.media.Schema;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.BlankAnswer;
import org.scarfwright.matching.ExtraCost;
import org.scarfwright.matching.MatchRun;
import org.scarfwright.matching.MatchRuns;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Doing;
import org.scarfwright.web.NotFoundException;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Plans over the API. */
@RestController
@RequestMapping("/api/plans")
class PlansApi {
    private final Plans plans;
    private final MatchRuns runs;

    PlansApi(Plans plans, MatchRuns runs) {
        this.plans = plans;
        this.runs = runs;
    }

    /** Orders to accept. */
    record LockRequest(
            @Schema(description = "Codes of orders the plan makes necks of; at least one") @Nullable
            List<@Nullable String> orders) {}

    /**
     * What came of locking some orders.
     *
     * @param accepted the plan of the accepted orders
     * @param remainder the search for what is left; null when nothing is
     */
    record LockJson(PlanJson accepted, @Nullable RunJson remainder) {}

    /** Who gives a neck up, and why. */
    record GiveUpRequest(
            @Schema(maxLength = Doing.LONGEST_WHO, description = "May be empty") @Nullable
            String who,

            @Schema(maxLength = Doing.LONGEST_WHY, requiredMode = Schema.RequiredMode.REQUIRED) @Nullable
            String why) {}

    /** A neck a plan makes no longer. */
    record GivenUpJson(String order, int number, Instant at, String who, String why) {
        static GivenUpJson of(Plans.GivenUp g) {
            return new GivenUpJson(g.neck().order(), g.neck().number(), g.at(), g.who(), g.why());
        }
    }

    /**
     * What came of it.
     *
     * @param freed codes of the pieces that are on the rack again
     */
    record GivingUpJson(GivenUpJson neck, List<String> freed) {}

    /**
     * One neck of a plan.
     *
     * @param givenUp null while the plan makes it
     * @param wood the pieces it is cut from, and what becomes of each when it is given up
     */
    record NeckJson(
            String order,
            int number,
            String design,
            @Nullable GivenUpJson givenUp,
            List<Plans.Wood> wood) {
        static NeckJson of(Plans.NeckStanding s) {
            Plans.GivenUp g = s.givenUp();
            return new NeckJson(
                    s.pairing().order(),
                    s.pairing().number(),
                    s.pairing().design(),
                    g == null ? null : GivenUpJson.of(g),
                    s.wood());
        }
    }

    /** How much more book value a near-equal plan may spend. */
    record NearRequest(
            @Schema(
                    description =
                            "In the shop's currency, 0 to 1000000000, or in per cent of the plan's book value, 0 % to "
                                    + ExtraCost.MOST_PERCENT + " %",
                    example = "5 %")
            @Nullable
            String extra) {}

    /** Matches the week's orders, or those that are named, with the free pieces and keeps the plan as a proposal. */
    @PostMapping
    ResponseEntity<PlanJson> make(@RequestBody AskForm asked) {
        Plan plan = plans.make(asked.readWeek(), asked.read());
        return ResponseEntity.created(URI.create("/api/plans/" + plan.id())).body(PlanJson.of(plan));
    }

    /** Every plan of a week, the one made last first. */
    @GetMapping
    List<PlanJson> ofWeek(@RequestParam String week) {
        return plans.ofWeek(week(week)).stream().map(PlanJson::of).toList();
    }

    @GetMapping("/{id}")
    PlanJson find(@PathVariable long id) {
        return PlanJson.of(plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + ".")));
    }

    /** Why a piece is not cut for an order: one answer for each part in each way the order may be made. */
    @GetMapping("/{id}/why-not")
    WhyNotJson whyNot(@PathVariable long id, @RequestParam String order, @RequestParam String piece) {
        return WhyNotJson.of(plans.whyNot(id, order, piece));
    }

    /** What one more blank would give the orders that could not be filled; lengths in millimetres or as people write them. */
    @GetMapping("/{id}/one-more")
    List<BlankAnswer> oneMore(@PathVariable long id, @ParameterObject BlankForm blank) {
        BlankForm.Sizes s = blank.read(LengthUnit.MM);
        return plans.oneMore(id, s.length(), s.width(), s.thickness());
    }

    /** Reserves the pieces. Accepting an accepted plan again changes nothing. */
    @PostMapping("/{id}/accept")
    PlanJson accept(@PathVariable long id) {
        return PlanJson.of(plans.accept(id));
    }

    /** Frees the pieces. Undoing an undone plan again changes nothing. */
    @PostMapping("/{id}/undo")
    PlanJson undo(@PathVariable long id) {
        return PlanJson.of(plans.undo(id));
    }

    /**
     * Reserves the pieces of some orders and asks for the others to be matched with the rack that is left. A piece that carries
     * parts of several orders goes with all of them or with none.
     */
    @PostMapping("/{id}/lock")
    LockJson lock(@PathVariable long id, @RequestBody LockRequest request) {
        MatchRuns.Locked done = runs.lock(id, new AskForm(null, request.orders(), null).chosen());
        MatchRun remainder = done.remainder();
        return new LockJson(PlanJson.of(done.locked()), remainder == null ? null : RunJson.of(remainder));
    }

    /** Asks for up to three plans that differ most within a cost and answers at once. */
    @PostMapping("/{id}/near-equal")
    ResponseEntity<RunJson> nearEqual(@PathVariable long id, @RequestBody NearRequest request) {
        MatchRun run = runs.nearEqual(id, NearForm.read(request.extra()));
        return ResponseEntity.status(HttpStatus.ACCEPTED)
                .header(
                        HttpHeaders.LOCATION,
                        URI.create("/api/match-runs/" + run.id()).toString())
                .body(RunJson.of(run));
    }

    /** Near-equal plans that were found for this one, the one found first in front. */
    @GetMapping("/{id}/near-equal")
    List<NearJson> nearEquals(@PathVariable long id) {
        Plan plan = plans.find(id).orElseThrow(() -> new NotFoundException("There is no plan " + id + "."));
        return plans.nearEquals(id).stream()
                .map(near -> NearJson.of(PlanComparison.of(plan, near)))
                .toList();
    }

    /** How one neck of a plan stands, and which of its pieces giving it up would free. */
    @GetMapping("/{id}/necks/{order}/{number}")
    NeckJson neck(@PathVariable long id, @PathVariable String order, @PathVariable int number) {
        return NeckJson.of(plans.neck(new PlannedNeck(id, order, number)));
    }

    /** Necks the plan was accepted for and makes no longer. */
    @GetMapping("/{id}/given-up")
    List<GivenUpJson> givenUp(@PathVariable long id) {
        find(id);
        return plans.givenUp(id).stream().map(GivenUpJson::of).toList();
    }

    /** Takes a neck out of an accepted plan, so that its week can be matched for it again. Doing it again changes nothing. */
    @PostMapping("/{id}/necks/{order}/{number}/give-up")
    GivingUpJson giveUp(
            @PathVariable long id,
            @PathVariable String order,
            @PathVariable int number,
            @RequestBody GiveUpRequest request) {
        Plans.GivingUp done = plans.giveUp(
                new PlannedNeck(id, order, number),
                Objects.requireNonNullElse(request.who(), ""),
                Objects.requireNonNullElse(request.why(), ""));
        return new GivingUpJson(GivenUpJson.of(done.neck()), done.freed());
    }

    /** Has the plan make a neck after all that was given up. Doing it again changes nothing. */
    @PostMapping("/{id}/necks/{order}/{number}/make-after-all")
    NeckJson makeAfterAll(@PathVariable long id, @PathVariable String order, @PathVariable int number) {
        PlannedNeck neck = new PlannedNeck(id, order, number);
        plans.makeAfterAll(neck);
        return NeckJson.of(plans.neck(neck));
    }

    /** Two plans of one week side by side. */
    @GetMapping("/compare")
    ComparisonJson compare(
            @RequestParam(required = false) @Nullable String a, @RequestParam(required = false) @Nullable String b) {
        CompareForm form = new CompareForm(a, b);
        CompareForm.Ids ids = form.read();
        return ComparisonJson.of(plans.compare(ids.first(), ids.second()));
    }

    static IsoWeek week(@Nullable String text) {
        return new AskForm(text, null, null).readWeek();
    }
}
