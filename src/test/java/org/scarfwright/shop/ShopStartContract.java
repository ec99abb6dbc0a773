package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scarfwright.web.ConflictException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

@Transactional
abstract class ShopStartContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    JdbcClient jdbc;

    private final List<Object> published = new ArrayList<>();
    private boolean roomIsEmpty = true;

    @Test
    void anEmptyShopHasNotStarted() {
        assertThat(start().isStarted()).isFalse();
    }

    @Test
    void beginsEmptyOnce() {
        start().startEmpty();
        assertThat(start().isStarted()).isTrue();
        start().startEmpty();
        assertThat(published).isEmpty();
    }

    @Test
    void loadsTheDemoShopByAskingEveryRoom() {
        start().loadDemo();
        assertThat(start().isStarted()).isTrue();
        assertThat(published).containsExactly(new DemoShopRequested());
    }

    @Test
    void whoBeganEmptyAndStillHoldsNothingMayLoadTheDemoShop() {
        start().startEmpty();
        start().loadDemo();
        assertThat(published).hasSize(1);
    }

    @Test
    void loadsTheDemoShopOnce() {
        start().loadDemo();
        assertThatThrownBy(() -> start().loadDemo())
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("was loaded before");
        assertThat(published).hasSize(1);
    }

    @Test
    void neverMixesTheDemoShopIntoARealOne() {
        roomIsEmpty = false;
        assertThat(start().isStarted())
                .as("something was put in without choosing")
                .isTrue();
        assertThatThrownBy(() -> start().loadDemo())
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("already holds wood, designs or orders");
        assertThat(published).isEmpty();
    }

    private ShopStart start() {
        return new JdbcShopStart(jdbc, published::add, List.of(() -> roomIsEmpty), Clock.systemUTC());
    }
}
