package org.scarfwright.shop.startup;

import com.zaxxer.hikari.HikariDataSource;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.stereotype.Component;

/**
 * Refuses an H2 address that would lose acknowledged work. H2 writes a commit to disk up to half a second after it answered,
 * unless {@code WRITE_DELAY=0}; a process killed in between has lost it. Looks at the finished pool before it opens, so that
 * it sees the address wherever it was set.
 */
@Component
class H2AddressGuard implements BeanPostProcessor {
    @Override
    public Object postProcessBeforeInitialization(Object bean, String beanName) {
        if (bean instanceof HikariDataSource pool) {
            check(pool.getJdbcUrl());
        }
        return bean;
    }

    /** H2 gets one writer at a time; PostgreSQL keeps its transactions apart by itself. */
    @Override
    public Object postProcessAfterInitialization(Object bean, String beanName) {
        return bean instanceof HikariDataSource pool && isH2(pool.getJdbcUrl()) ? new OneWriterAtATime(pool) : bean;
    }

    private static boolean isH2(@Nullable String address) {
        return address != null && address.toLowerCase(Locale.ROOT).startsWith("jdbc:h2:");
    }

    static void check(@Nullable String address) {
        if (address == null || !isH2(address)) {
            return;
        }
        List<String> options = Arrays.stream(address.split(";"))
                .skip(1)
                .map(o -> o.strip().toUpperCase(Locale.ROOT).replace(" ", ""))
                .toList();
        if (!options.contains("WRITE_DELAY=0")) {
            throw new StartRefusedException(
                    "The database address " + address
                            + " has no WRITE_DELAY=0: work the program already confirmed could be lost when it is killed.",
                    "Add ;WRITE_DELAY=0 to spring.datasource.url, or leave spring.datasource.url out to use the address the "
                            + "program comes with.");
        }
        if (options.stream().anyMatch(o -> o.startsWith("DATABASE_TO_LOWER"))) {
            throw new StartRefusedException(
                    "The database address " + address
                            + " sets DATABASE_TO_LOWER: the program's tables would not be found under their names.",
                    "Remove DATABASE_TO_LOWER from spring.datasource.url.");
        }
    }
}
