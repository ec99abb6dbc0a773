package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.shop.DemoShopRequested;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** The demo shop's wood comes in the way a person's would. */
@OnH2
@Transactional
class DemoRackLoadTest {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    DemoRack demo;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @Test
    void loadsTheWholeFileOnceHoweverOftenItIsAskedFor() {
        long before = count();
        demo.load(new DemoShopRequested());
        long loaded = count() - before;
        assertThat(loaded).isGreaterThan(50);
        demo.load(new DemoShopRequested());
        assertThat(count() - before).isEqualTo(loaded);
    }

    private long count() {
        return pieces.list(PieceFilter.ALL, PieceFilter.Sort.CODE, 1, 1).total();
    }
}
