package org.scarfwright.necks.book;

import org.scarfwright.shop.ShopContents;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

@Component
class NecksContents implements ShopContents {
    private final JdbcClient jdbc;

    NecksContents(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Without designs there are no orders either. */
    @Override
    public boolean isEmpty() {
        return jdbc.sql("select count(*) from neck_design").query(Long.class).single() == 0;
    }
}
