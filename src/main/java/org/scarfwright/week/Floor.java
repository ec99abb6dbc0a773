package org.scarfwright.week;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.Plan.Pairing;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.matching.Plans.GivenUp;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.StepRecords;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.WorkshopBook;
import org.scarfwright.shop.WorkshopBook.VersionedGlue;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.State;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;

/** What the other rooms say of the necks that are being made. Belongs into its caller's transaction. */
@Component
class Floor {
    private static final String DIFFICULT = "with difficulty";

    private final Plans plans;
    private final Orders orders;
    private final Rack rack;
    private final SpeciesCatalog woods;
    private final WorkshopBook book;
    private final JdbcWork rows;
    private final StepRecords records;
    private final Clock clock;

    Floor(
            Plans plans,
            Orders orders,
            Rack rack,
            SpeciesCatalog woods,
            WorkshopBook book,
            JdbcWork rows,
            StepRecords records,
            Clock clock) {
        this.plans = plans;
        this.orders = orders;
        this.rack = rack;
        this.woods = woods;
        this.book = book;
        this.rows = rows;
        this.records = records;
        this.clock = clock;
    }

    /**
     * Accepted plans of this week, and of the weeks before it those with something left to do: steps that are not done or, where
     * no steps were ever written down, pieces that are not cut.
     */
    List<Long> acceptedUpTo(IsoWeek week) {
        Set<Long> wanted = new HashSet<>(rows.unfinishedPlans());
        rack.holders().stream().filter(id -> !rows.hasSteps(id)).forEach(wanted::add);
        plans.acceptedIn(week).forEach(wanted::add);
        return plans.acceptedUpTo(week).stream().filter(wanted::contains).toList();
    }

    Optional<Plan> plan(long id) {
        return plans.find(id);
    }

    /** True for a plan that does not hold any more. */
    boolean isUndone(long id) {
        return plan(id).filter(p -> p.state() == Plan.State.ACCEPTED).isEmpty();
    }

    /** The shop with the minutes its steps are laid with: learned ones where there are enough. */
    Workshop workshop() {
        return book.workshop().workshop().laidWith(records.learned());
    }

    ShopCalendar calendar() {
        return new ShopCalendar(book.workshop().workshop(), book.daysOff(), clock.getZone());
    }

    Facts of(Collection<Long> planIds) {
        return new Facts(Set.copyOf(planIds));
    }

    /** What plans say, once they were read. */
    private record Planned(Map<Long, Plan> byId, Map<Neck, Pairing> pairings, Set<String> codes) {}

    private Planned read(Collection<Long> planIds) {
        Planned planned = new Planned(new HashMap<>(), new HashMap<>(), new HashSet<>());
        for (Plan plan : planIds.stream().flatMap(id -> plan(id).stream()).toList()) {
            planned.byId().put(plan.id(), plan);
            for (Pairing p : plan.pairings()) {
                planned.pairings().put(new Neck(plan.id(), plan.week(), p.order(), p.number()), p);
                planned.codes().add(p.neck().piece());
                planned.codes().add(p.head().piece());
            }
        }
        return planned;
    }

    /** Facts about the necks of some plans. Plans and pieces are read when they are asked for: what is done asks for neither. */
    final class Facts {
        private final Workshop workshop = book.workshop().workshop();
        private final Set<Long> planIds;
        private final Map<PlannedNeck, GivenUp> givenUp = new HashMap<>();
        private @Nullable Planned planned;
        private @Nullable Map<String, Piece> pieces;
        private final Map<String, Glue> glues;
        private final Map<String, Optional<String>> chosen = new HashMap<>();

        private Facts(Set<Long> planIds) {
            this.planIds = planIds;
            planIds.forEach(id -> plans.givenUp(id).forEach(g -> givenUp.put(g.neck(), g)));
            glues = book.glues().stream().map(VersionedGlue::glue).collect(Collectors.toMap(Glue::code, g -> g));
        }

        private Planned planned() {
            if (planned == null) {
                planned = read(planIds);
            }
            return planned;
        }

        private @Nullable Piece piece(String code) {
            if (pieces == null) {
                pieces = rack.findAll(planned().codes()).stream()
                        .collect(Collectors.toMap(Piece::code, Function.identity()));
            }
            return pieces.get(code);
        }

        /** Necks a plan was to make. */
        Stream<Neck> necks(long plan) {
            return planned().pairings().keySet().stream().filter(neck -> neck.plan() == plan);
        }

        /** True for a neck its plan makes no longer; nothing is done on it. */
        boolean isGivenUp(Neck neck) {
            return givenUp.containsKey(neck.planned());
        }

        Optional<String> design(Neck neck) {
            return Optional.ofNullable(planned().pairings().get(neck)).map(Pairing::design);
        }

        /** Its design's glue, else the shop's own. */
        Optional<Glue> glue(Neck neck) {
            return design(neck)
                    .flatMap(d -> chosen.computeIfAbsent(d, rows::glueOf))
                    .or(workshop::glue)
                    .map(glues::get);
        }

        private List<String> piecesOf(Neck neck) {
            Pairing p = planned().pairings().get(neck);
            return p == null
                    ? List.of()
                    : List.of(p.neck().piece(), p.head().piece()).stream()
                            .distinct()
                            .toList();
        }

        /** Why nothing can be done on a neck, whichever step; empty when work can go on. */
        Optional<String> stands(Neck neck, List<WorkStep> steps) {
            Plan plan = planned().byId().get(neck.plan());
            if (plan == null || plan.state() != Plan.State.ACCEPTED) {
                return Optional.of(
                        "Plan " + neck.plan() + " is not accepted any more, so its pieces are not reserved. Accept"
                                + " a plan with this neck first.");
            }
            GivenUp given = givenUp.get(neck.planned());
            if (given != null) {
                return Optional.of(neck.title() + " was given up: " + given.why()
                        + ". Match its week again to make it of other wood.");
            }
            Optional<WorkStep> stopped = steps.stream()
                    .filter(s -> s.progress().state() == State.STOPPED)
                    .findFirst();
            if (stopped.isPresent()) {
                return Optional.of("It was stopped at “" + stopped.get().words() + "”: "
                        + stopped.get().progress().reason().orElse("") + ". Let it go on first.");
            }
            boolean glued = steps.stream().anyMatch(s -> s.kind() == StepKind.GLUE && s.isDone());
            return glued
                    ? Optional.empty()
                    : piecesOf(neck).stream()
                            .flatMap(code -> pieceFault(code, steps).stream())
                            .findFirst();
        }

        private Optional<String> pieceFault(String code, List<WorkStep> steps) {
            Piece piece = piece(code);
            if (piece == null) {
                return Optional.of("Piece " + code + " is not on the rack any more. Match this neck again.");
            }
            boolean cut = steps.stream()
                    .filter(s -> s.kind() == StepKind.CUT
                            && s.needs().piece().filter(code::equals).isPresent())
                    .allMatch(WorkStep::isDone);
            return switch (piece.state()) {
                case SCRAPPED ->
                    Optional.of("Piece " + code + " was scrapped. Match this neck again with another piece.");
                case SOLD -> Optional.of("Piece " + code + " was sold. Match this neck again with another piece.");
                case ON_RACK ->
                    cut
                            ? Optional.empty()
                            : Optional.of("Piece " + code + " is not reserved any more. Accept a plan with it first.");
                case RESERVED, AT_BENCH, USED_UP -> Optional.empty();
            };
        }

        /** Why a neck cannot be glued; empty when it can. */
        Optional<String> glueFault(Neck neck) {
            Optional<Glue> glue = glue(neck);
            if (glue.isEmpty()) {
                return Optional.of(
                        "Design " + design(neck).orElse("?")
                                + " names no glue and the shop has none of its own. Choose one for the design or for the shop.");
            }
            Glue g = glue.get();
            return workshop.celsius().compareTo(g.lowestCelsius()) < 0
                    ? Optional.of(g.name() + " sets at " + g.lowestCelsius().toPlainString()
                            + " °C or above, and the shop is kept at "
                            + workshop.celsius().toPlainString() + " °C. Warm the shop or choose another glue.")
                    : Optional.empty();
        }

        NeckFacts facts(Neck neck, List<WorkStep> steps, ShopCalendar calendar) {
            Optional<NeckOrder> order = orders.find(neck.order());
            IsoWeek week = IsoWeek.parse(neck.week());
            LocalDate due = order.map(NeckOrder::due).orElse(week.monday().plusDays(6));
            Instant notBefore = calendar.startOf(week.monday());
            for (String code : piecesOf(neck)) {
                Piece piece = piece(code);
                if (piece != null && piece.lotReadyOn() != null) {
                    Instant ready = calendar.startOf(piece.lotReadyOn());
                    notBefore = ready.isAfter(notBefore) ? ready : notBefore;
                }
            }
            return new NeckFacts(
                    neck,
                    steps,
                    calendar.startOf(due.plusDays(1)),
                    order.map(NeckOrder::priority).orElse(1),
                    notBefore,
                    glue(neck),
                    difficult(neck));
        }

        boolean difficult(Neck neck) {
            List<String> ids = new ArrayList<>();
            piecesOf(neck).forEach(code -> {
                Piece piece = piece(code);
                if (piece != null) {
                    ids.addAll(piece.wood().speciesIds());
                }
            });
            return ids.stream()
                    .flatMap(id -> woods.find(id).stream())
                    .map(Species::bonding)
                    .anyMatch(b -> b.filter(DIFFICULT::equals).isPresent());
        }
    }
}
