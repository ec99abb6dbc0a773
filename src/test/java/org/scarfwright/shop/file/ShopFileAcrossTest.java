package org.scarfwright.shop.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scarfwright.ScarfwrightApplication;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.database.FreshHome;
import org.scarfwright.database.OnEmbeddedPostgres;
import org.scarfwright.ledger.Verification;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopLists;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.web.context.WebApplicationContext;

/** A shop goes from H2 to PostgreSQL and back again by its file. */
@OnEmbeddedPostgres
@SuppressWarnings("NullAway.Init")
class ShopFileAcrossTest {
    @Autowired
    WebApplicationContext postgres;

    @Autowired
    Flyway flyway;

    @TempDir
    Path folder;

    private static SortedMap<String, List<String>> rows(ApplicationContext program) {
        Map<String, String> leftOut = new HashMap<>();
        program.getBeansOfType(ShopLists.class).values().forEach(r -> leftOut.putAll(r.leftOut()));
        StoredRows stored = new StoredRows(program.getBean(JdbcTemplate.class));
        SortedMap<String, List<String>> all = new TreeMap<>();
        stored.columns().forEach((table, columns) -> {
            if (!leftOut.containsKey(table)) {
                List<String> kept = new ArrayList<>(columns);
                kept.removeIf(c -> leftOut.containsKey(table + "." + c));
                all.put(table, stored.of(table, kept));
            }
        });
        return all;
    }

    private static ConfigurableApplicationContext h2() {
        return new SpringApplicationBuilder(ScarfwrightApplication.class)
                .run(
                        "--server.port=0",
                        "--scarfwright.home=" + FreshHome.create(),
                        "--scarfwright.ledger.check-by-itself=false");
    }

    private static void same(SortedMap<String, List<String>> found, SortedMap<String, List<String>> expected) {
        assertThat(found.keySet()).isEqualTo(expected.keySet());
        found.forEach((table, rows) -> assertThat(rows).as(table).isEqualTo(expected.get(table)));
    }

    @Test
    void fromH2ToPostgresAndBack() {
        Path there = folder.resolve("there.zip");
        Path back = folder.resolve("back.zip");
        SortedMap<String, List<String>> first;
        try (ConfigurableApplicationContext h2 = h2()) {
            FullShop.fill((WebApplicationContext) h2);
            first = rows(h2);
            h2.getBean(ShopFiles.class).write(there);
        }
        EmptyDatabase.of(flyway);
        try {
            postgres.getBean(ShopFiles.class).read(there);
            same(rows(postgres), first);
            assertThat(postgres.getBean(Verification.class).run().faults()).isEmpty();
            postgres.getBean(ShopFiles.class).write(back);
        } finally {
            EmptyDatabase.of(flyway);
        }
        try (ConfigurableApplicationContext h2 = h2()) {
            h2.getBean(ShopFiles.class).read(back);
            same(rows(h2), first);
            assertThat(h2.getBean(Verification.class).run().faults()).isEmpty();
        }
    }
}
