package org.scarfwright.necks.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.SQLException;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.Orders;
import org.springframework.beans.factory.annotation.Autowired;

/** Reading outside a transaction gives its connection back: a shop reads a page more often than it has connections. */
@OnH2
@SuppressWarnings("NullAway.Init")
class NecksConnectionsTest {
    @Autowired
    Designs designs;

    @Autowired
    Orders orders;

    @Autowired
    OrderBook orderBook;

    @Autowired
    DataSource connections;

    @Test
    void givesEveryConnectionBack() throws SQLException {
        HikariDataSource pool = connections.unwrap(HikariDataSource.class);
        int moreThanThereAre = pool.getMaximumPoolSize() + 1;
        for (int i = 0; i < moreThanThereAre; i++) {
            designs.all();
            designs.find("NONE");
            orders.weeks();
            orders.find("NONE");
            orderBook.weeksOnFile();
            orderBook.openOf("NONE");
            orderBook.entries(Optional.empty());
        }
        assertThat(pool.getHikariPoolMXBean().getTotalConnections()).isLessThan(moreThanThereAre);
    }
}
