package org.scarfwright.matching.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.BlankAnswer;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlanComparison;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.matching.WhyNot;
import org.scarfwright.matching.web.WeekStanding.OrderRow;
import org.scarfwright.matching.web.WeekStanding.Step;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;

/** Today is Wednesday 25 November 2026, in week 48 (ISO 8601). */
class WeekStandingsTest {
    private static final Clock WEDNESDAY = Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
    private static final IsoWeek W47 = new IsoWeek(2026, 47);
    private static final IsoWeek W49 = new IsoWeek(2026, 49);

    private final List<NeckOrder> orders = new ArrayList<>();
    private final List<Plan> plans = new ArrayList<>();
    private final List<Plans.GivenUp> givenUp = new ArrayList<>();
    private final WeekStandings standings = new WeekStandings(new AskedFor(), new NoDesigns(), new Made(), WEDNESDAY);

    private void order(String code, int quantity, IsoWeek week) {
        orders.add(new NeckOrder(1, 0, code, "WITHY-6", quantity, week.monday().plusDays(2), 5, week, ""));
    }

    /** A later plan stands before an earlier one. */
    private void plan(Plan.State state, List<String> filled, List<String> missing) {
        Plan.Part part = new Plan.Part(
                "K7M",
                1,
                Length.ZERO,
                Length.ofMm(570),
                false,
                Length.ofMm(457),
                Length.ofMm(570),
                Length.ofMm(60),
                Length.ofMm(20));
        List<Plan.Pairing> pairings = new ArrayList<>();
        for (String code : filled) {
            pairings.add(new Plan.Pairing(
                    code,
                    pairings.size() + 1,
                    "WITHY-6",
                    Arrangement.UNDERLAID,
                    Angle.ofDegrees(10),
                    part,
                    part,
                    null,
                    null,
                    List.of()));
        }
        plans.add(
                0,
                new Plan(
                        plans.size() + 1L,
                        W49.toString(),
                        state,
                        Plan.Status.PROVED,
                        WEDNESDAY.instant(),
                        "by hand",
                        0,
                        filled.size(),
                        filled.size() + missing.size(),
                        List.of(),
                        pairings,
                        List.of(),
                        missing.stream()
                                .map(code -> new Plan.Unfilled(code, "WITHY-6", 1, List.of(), null))
                                .toList(),
                        Plan.Books.NOTHING));
    }

    private List<String> standing() {
        return standings.of(W49).orders().stream().map(OrderRow::standing).toList();
    }

    @Test
    void takesThisWeekElseTheNextWithOrdersElseTheLastThatHadSome() {
        assertThat(standings.weekAtHand()).hasToString("2026-W48");
        order("A-1", 1, W47);
        assertThat(standings.weekAtHand()).isEqualTo(W47);
        order("A-2", 1, W49);
        assertThat(standings.weekAtHand()).isEqualTo(W49);
        order("A-3", 1, new IsoWeek(2026, 48));
        assertThat(standings.weekAtHand()).hasToString("2026-W48");
    }

    @Test
    void asksForAnOrderWhereThereIsNone() {
        assertThat(standings.of(W49).step()).isEqualTo(Step.ORDER);
    }

    @Test
    void asksForAMatchUntilThereIsAPlan() {
        order("A-1", 2, W49);
        assertThat(standings.of(W49).step()).isEqualTo(Step.MATCH);
        assertThat(standing()).containsExactly("not matched yet");
    }

    @Test
    void asksForADecisionOnAProposal() {
        order("A-1", 2, W49);
        order("A-2", 1, W49);
        plan(Plan.State.PROPOSED, List.of("A-1"), List.of("A-1", "A-2"));
        assertThat(standings.of(W49).step()).isEqualTo(Step.DECIDE);
        assertThat(standing()).containsExactly("1 proposed, 1 without wood", "no wood fits");
    }

    @Test
    void asksForAMatchAgainOnceAPlanIsUndone() {
        order("A-1", 1, W49);
        plan(Plan.State.UNDONE, List.of("A-1"), List.of());
        assertThat(standings.of(W49).step()).isEqualTo(Step.MATCH);
        assertThat(standings.of(W49).current()).isNull();
    }

    @Test
    void asksForWoodWhereTheAcceptedPlanLeavesNecksUnfilled() {
        order("A-1", 1, W49);
        order("A-2", 1, W49);
        plan(Plan.State.ACCEPTED, List.of("A-1"), List.of("A-2"));
        assertThat(standings.of(W49).step()).isEqualTo(Step.FILL);
        assertThat(standings.of(W49).open()).isEqualTo(1);
        assertThat(standing()).containsExactly("accepted", "no wood fits");
    }

    @Test
    void asksForAMatchWhenAnOrderCameAfterTheAcceptedPlan() {
        order("A-1", 1, W49);
        plan(Plan.State.ACCEPTED, List.of("A-1"), List.of());
        order("A-2", 1, W49);
        assertThat(standings.of(W49).step()).isEqualTo(Step.MATCH);
        assertThat(standing()).containsExactly("accepted", "not matched yet");
    }

    @Test
    void saysCutWhenEveryNeckIsAcceptedInOneOrSeveralPlans() {
        order("A-1", 2, W49);
        plan(Plan.State.ACCEPTED, List.of("A-1"), List.of("A-1"));
        plan(Plan.State.ACCEPTED, List.of("A-1"), List.of());
        assertThat(standings.of(W49).step()).isEqualTo(Step.CUT);
        assertThat(standings.of(W49).planned()).isEqualTo(2);
    }

    @Test
    void aNeckThatIsGivenUpIsNotMatchedAnyMore() {
        order("A-1", 2, W49);
        plan(Plan.State.ACCEPTED, List.of("A-1", "A-1"), List.of());
        givenUp.add(new Plans.GivenUp(new PlannedNeck(1, "A-1", 2), WEDNESDAY.instant(), "", "split"));
        assertThat(standings.of(W49).step()).isEqualTo(Step.MATCH);
        assertThat(standing()).containsExactly("1 accepted, 1 not matched yet");
    }

    @Test
    void namesWhatEarlierWeeksLeftOver() {
        order("A-1", 1, W47);
        order("A-2", 1, W49);
        assertThat(standings.lateBefore(W49)).singleElement().satisfies(o -> {
            assertThat(o.code()).isEqualTo("A-1");
            assertThat(o.late()).isTrue();
            assertThat(o.open()).isEqualTo(1);
        });
        assertThat(standings.of(W49).orders()).noneMatch(OrderRow::late);
    }

    private final class AskedFor implements Orders {
        @Override
        public List<NeckOrder> inWeek(IsoWeek week) {
            return orders.stream().filter(o -> o.week().equals(week)).toList();
        }

        @Override
        public List<IsoWeek> weeks() {
            return orders.stream().map(NeckOrder::week).distinct().sorted().toList();
        }

        @Override
        public Optional<NeckOrder> find(String code) {
            return orders.stream().filter(o -> o.code().equals(code)).findFirst();
        }
    }

    private static final class NoDesigns implements Designs {
        @Override
        public List<NeckDesign> all() {
            return List.of();
        }

        @Override
        public Optional<NeckDesign> find(String code) {
            return Optional.empty();
        }
    }

    private final class Made implements Plans {
        @Override
        public List<Plan> nearEquals(long id) {
            throw new UnsupportedOperationException();
        }

        @Override
        public List<Relative> relatives(long id) {
            throw new UnsupportedOperationException();
        }

        @Override
        public PlanComparison compare(long first, long second) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Plan make(IsoWeek week, Plan.Asked asked) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Optional<Plan> find(long id) {
            return plans.stream().filter(p -> p.id() == id).findFirst();
        }

        @Override
        public Optional<Plan> latest(IsoWeek week) {
            return ofWeek(week).stream().findFirst();
        }

        @Override
        public List<Plan> ofWeek(IsoWeek week) {
            return plans.stream().filter(p -> p.week().equals(week.toString())).toList();
        }

        @Override
        public List<BlankAnswer> oneMore(long plan, Length length, Length width, Length thickness) {
            throw new UnsupportedOperationException();
        }

        @Override
        public WhyNot whyNot(long plan, String order, String piece) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Plan accept(long id) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Plan undo(long id) {
            throw new UnsupportedOperationException();
        }

        @Override
        public List<Long> acceptedIn(IsoWeek week) {
            throw new UnsupportedOperationException();
        }

        @Override
        public List<Long> acceptedUpTo(IsoWeek week) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Map<String, Integer> acceptedCounts(Collection<String> codes) {
            Map<String, Integer> counts = new HashMap<>();
            plans.stream()
                    .filter(p -> p.state() == Plan.State.ACCEPTED)
                    .flatMap(p -> p.pairings().stream())
                    .filter(p -> codes.contains(p.order()))
                    .forEach(p -> counts.merge(p.order(), 1, Integer::sum));
            givenUp.forEach(g -> counts.merge(g.neck().order(), -1, Integer::sum));
            return counts;
        }

        @Override
        public NeckStanding neck(PlannedNeck neck) {
            throw new UnsupportedOperationException();
        }

        @Override
        public List<GivenUp> givenUp(long plan) {
            return givenUp.stream().filter(g -> g.neck().plan() == plan).toList();
        }

        @Override
        public GivingUp giveUp(PlannedNeck neck, String who, String why) {
            throw new UnsupportedOperationException();
        }

        @Override
        public void makeAfterAll(PlannedNeck neck) {
            throw new UnsupportedOperationException();
        }
    }
}
