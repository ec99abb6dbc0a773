package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.scarfwright.ledger.Losses.LostPart;
import org.scarfwright.matching.Plan;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.matching.Plans;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.ShopStart;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/**
 * The demo week on the floor: every piece is cut, and much goes another way than planned. The yield is held against sums the
 * database adds up from the rows themselves; taking everything back leaves the rack as it was.
 */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class DemoWeekCutContract {
    private static final IsoWeek WEEK = new IsoWeek(2026, 49);

    @Autowired
    ShopStart start;

    @Autowired
    Plans plans;

    @Autowired
    Rack rack;

    @Autowired
    Pieces pieces;

    @Autowired
    CutRecording recording;

    @Autowired
    Losses losses;

    @Autowired
    Ledger ledger;

    @Autowired
    Yield yields;

    @Autowired
    Verification verification;

    @Autowired
    JdbcClient jdbc;

    private final List<Long> deeds = new ArrayList<>();

    private Map<String, String> look() {
        return Deeds.look(
                pieces.list(PieceFilter.ALL, PieceFilter.Sort.CODE, 1, Pieces.LARGEST_PAGE)
                        .pieces(),
                pieces);
    }

    /** What differs at the i-th piece: nothing, a spoilt part, a wide kerf, a rest thrown away, a shorter rest, wood nobody can explain. */
    private static Map<String, String> deviation(int i, CutRecording.Proposal proposal) {
        Map<String, String> typed = new HashMap<>();
        String part = proposal.parts().get(0).name();
        switch (i % 6) {
            case 1 -> typed.put(part + "-spoilt", "true");
            case 2 -> typed.put("waste-kerf", "31.4");
            case 3 -> typed.put("rest-1-waste", "true");
            case 4 -> {
                if (proposal.rests().get(0).planned().isPresent()) {
                    typed.put("rest-1-length", "101");
                }
            }
            case 5 -> typed.put("waste-planing", "0");
            default -> {}
        }
        typed.put("who", i % 2 == 0 ? "Alder" : "Birch");
        return typed;
    }

    private BigDecimal sum(String where) {
        return jdbc.sql("select coalesce(sum(volume_um3), 0) from outcome where " + where)
                .query(BigDecimal.class)
                .single();
    }

    private static BigDecimal um3(Volume volume) {
        return new BigDecimal(volume.um3());
    }

    @Test
    void theDemoWeekIsCutWithDeviationsReportedAndTakenBack() {
        start.loadDemo();
        Plan plan = plans.accept(plans.make(WEEK).id());
        Map<String, String> before = look();
        int i = 0;
        for (Plan.PieceLayout layout : plan.layouts()) {
            Piece piece = rack.find(layout.piece()).orElseThrow();
            Map<String, String> typed = deviation(i++, recording.propose(piece.code(), List.of()));
            deeds.add(recording
                    .record(piece.code(), piece.version(), List.of(), typed)
                    .entry()
                    .id());
        }
        assertThat(deeds).hasSizeGreaterThan(12);
        Plan.Pairing failed = plan.pairings().stream()
                .filter(p -> standing(plan, p.order(), p.number(), false))
                .findFirst()
                .orElseThrow();
        TypedLength thin = TypedLength.of(Length.ofMm(15));
        deeds.add(losses.writeOff(
                        new Losses.Neck(plan.id(), failed.order(), failed.number()),
                        List.of(new LostPart(
                                false,
                                List.of(new Cutting.Rest(
                                        new Cutting.Size(TypedLength.of(Length.ofMm(250)), thin, thin),
                                        null,
                                        null,
                                        "bay 1",
                                        "",
                                        null)))),
                        "Alder",
                        "The joint opened in the clamps.")
                .id());

        reportsWhatTheRowsSay();
        assertThat(ledger.balance().closes()).isTrue();
        assertThat(verification.run().faults()).isEmpty();

        Collections.reverse(deeds);
        deeds.forEach(id -> ledger.undo(id, "", "Practice."));
        assertThat(look()).isEqualTo(before);
        assertThat(yields.report(new Yield.Question(Yield.By.WOOD, null, null)).lines())
                .isEmpty();
        assertThat(verification.run().faults()).isEmpty();
        plans.giveUp(new PlannedNeck(plan.id(), failed.order(), failed.number()), "", "After all.");
        assertThat(plans.make(WEEK).pairings())
                .as("the neck is looked for again")
                .allMatch(p -> p.order().equals(failed.order()) || p.order().equals("A-109"));
    }

    private boolean standing(Plan plan, String order, int number, boolean head) {
        return jdbc.sql(
                                "select count(*) from outcome where plan_id = :plan and order_code = :order and neck_number = :number"
                                        + " and kind = 'PART' and part = :part")
                        .param("plan", plan.id())
                        .param("order", order)
                        .param("number", number)
                        .param("part", head ? "HEAD" : "NECK")
                        .query(Integer.class)
                        .single()
                == 1;
    }

    private void reportsWhatTheRowsSay() {
        for (Yield.By by : Yield.By.values()) {
            Yield.Report report = yields.report(new Yield.Question(by, null, null));
            assertThat(report.closes()).as(by.word()).isTrue();
            YieldSums total = report.total();
            assertThat(um3(total.of(YieldFigure.PARTS))).as(by.word()).isEqualByComparingTo(sum("kind = 'PART'"));
            assertThat(um3(total.of(YieldFigure.RESTS))).isEqualByComparingTo(sum("kind = 'REST'"));
            assertThat(um3(total.of(YieldFigure.SPOILT)))
                    .isEqualByComparingTo(sum("cause = '" + Outcome.Cause.SPOILT + "'"));
            assertThat(um3(total.of(YieldFigure.KERF))).isEqualByComparingTo(sum("cause = 'KERF'"));
            assertThat(um3(total.of(YieldFigure.UNEXPLAINED))).isEqualByComparingTo(sum("kind = 'UNEXPLAINED'"));
            assertThat(um3(total.of(YieldFigure.INPUT))).isEqualByComparingTo(sum("1 = 1"));
            assertThat(report.lines().stream()
                            .map(l -> l.sums().of(YieldFigure.INPUT))
                            .reduce(Volume.ZERO, Volume::plus))
                    .as("lines by %s", by.word())
                    .isEqualTo(total.of(YieldFigure.INPUT));
            assertThat(total.flow().stream()
                            .mapToInt(YieldSums.Share::hundredths)
                            .sum())
                    .isEqualTo(10_000);
        }
    }
}
