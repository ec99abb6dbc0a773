package org.scarfwright.shop;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import org.scarfwright.web.ConflictException;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcShopStart implements ShopStart {
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final List<ShopContents> rooms;
    private final Clock clock;

    JdbcShopStart(JdbcClient jdbc, ApplicationEventPublisher events, List<ShopContents> rooms, Clock clock) {
        this.jdbc = jdbc;
        this.events = events;
        this.rooms = List.copyOf(rooms);
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean isStarted() {
        boolean chosen = jdbc.sql("select count(*) from shop_start where id = 1 and state <> 'NOT_STARTED'")
                        .query(Integer.class)
                        .single()
                > 0;
        return chosen || holdsAnything();
    }

    @Override
    @Transactional
    public void startEmpty() {
        begin("EMPTY");
    }

    @Override
    @Transactional
    public void loadDemo() {
        if (holdsAnything()) {
            throw new ConflictException("The shop already holds wood, designs or orders of its own. "
                    + "The demo shop is loaded into an empty shop only; start with another data folder to look at it.");
        }
        if (!begin("DEMO") && !changeFromEmpty()) {
            throw new ConflictException("The demo shop was loaded before. It is loaded once; "
                    + "start with another data folder to begin again.");
        }
        events.publishEvent(new DemoShopRequested());
    }

    /** The where clause decides between two people who press at once; the row's lock makes the second wait. */
    private boolean begin(String state) {
        return jdbc.sql("update shop_start set state = :state, started_at = :now"
                                + " where id = 1 and state = 'NOT_STARTED'")
                        .param("state", state)
                        .param("now", Timestamp.from(clock.instant()))
                        .update()
                == 1;
    }

    /** Somebody who began empty and still holds nothing may change their mind. */
    private boolean changeFromEmpty() {
        return jdbc.sql("update shop_start set state = 'DEMO', started_at = :now where id = 1 and state = 'EMPTY'")
                        .param("now", Timestamp.from(clock.instant()))
                        .update()
                == 1;
    }

    private boolean holdsAnything() {
        return rooms.stream().anyMatch(r -> !r.isEmpty());
    }
}
