package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.ShopStart;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** The demo shop's week, from its files to a plan, shows what the description of the demo data says it shows. */
@OnH2
@Transactional
@SuppressWarnings("NullAway.Init")
class DemoWeekTest {
    @Autowired
    ShopStart start;

    @Autowired
    Plans plans;

    @Autowired
    Rack rack;

    @Test
    void everyNeckButTheWengeOneIsMadeAndTheBowedBoardsGiveHeads() {
        start.loadDemo();
        Plan plan = plans.make(Shelf.WEEK);
        assertThat(plan.ordered()).isEqualTo(15);
        assertThat(plan.filled()).isEqualTo(14);
        assertThat(plan.status()).isEqualTo(Plan.Status.PROVED);
        assertThat(plan.levels())
                .hasSize(5)
                .allSatisfy(l -> assertThat(l.value()).as(l.name()).isEqualByComparingTo(l.bound()));
        assertThat(plan.books().difference()).isEqualTo(Volume.ZERO);
        assertThat(plan.books().rescue()).isGreaterThan(0.1);

        assertThat(plan.unfilled()).singleElement().satisfies(u -> {
            assertThat(u.order()).isEqualTo("A-109");
            assertThat(u.misses().get(0).rule()).isEqualTo("same piece");
            assertThat(u.misses().get(0).text()).startsWith("G-01: neck and head together take");
            assertThat(u.relaxation()).isNotBlank();
        });
        for (String order : new String[] {"A-102", "A-107", "A-111"}) {
            Plan.Pairing p = pairing(plan, order);
            assertThat(piece(p.head().piece()).setAside())
                    .as("the head of %s", order)
                    .isTrue();
            assertThat(p.reasons())
                    .anyMatch(r -> r.startsWith("Rescue: " + p.head().piece()));
        }
        assertThat(plan.pairings()).anyMatch(p -> p.wingWidth() != null);
    }

    private static Plan.Pairing pairing(Plan plan, String order) {
        return plan.pairings().stream()
                .filter(p -> p.order().equals(order))
                .findFirst()
                .orElseThrow();
    }

    private Piece piece(String code) {
        return rack.find(code).orElseThrow();
    }
}
