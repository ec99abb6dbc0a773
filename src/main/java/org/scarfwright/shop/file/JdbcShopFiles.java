package org.scarfwright.shop.file;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopFileRead;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.scarfwright.web.ConflictException;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.TransactionStatus;
import org.springframework.transaction.support.TransactionTemplate;

@Service
class JdbcShopFiles implements ShopFiles {
    private static final int ROWS_AT_ONCE = 500;

    private final List<ShopList> lists;
    private final ShopTables tables;
    private final JdbcClient jdbc;
    private final PlatformTransactionManager transactions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    JdbcShopFiles(
            List<ShopLists> rooms,
            ShopTables tables,
            JdbcClient jdbc,
            PlatformTransactionManager transactions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.lists = rooms.stream().flatMap(r -> r.lists().stream()).toList();
        this.tables = tables;
        this.jdbc = jdbc;
        this.transactions = transactions;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public Contents write(Path into) {
        TransactionTemplate snapshot = new TransactionTemplate(transactions);
        // The level at which both databases show one moment over all tables.
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_SERIALIZABLE);
        snapshot.setReadOnly(true);
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        return Objects.requireNonNull(snapshot.execute(status -> new ShopFileWriter(tables).write(into, lists, now)));
    }

    @Override
    public boolean isEmpty() {
        return firstHeld().isEmpty();
    }

    @Override
    public @Nullable Instant readAt() {
        return jdbc.sql("select read_at from shop_file_read where id = 1")
                .query(OffsetDateTime.class)
                .optional()
                .map(OffsetDateTime::toInstant)
                .orElse(null);
    }

    /**
     * The file is gone through once without the database, so that most of what can be wrong is found before anybody has to wait; then
     * the counts of ids are put behind those of the file, where they do no harm if nothing else follows; then all of it is saved in
     * one transaction.
     */
    @Override
    public Contents read(Path file) {
        ShopFileReader reader = new ShopFileReader(lists);
        Map<ShopList, Long> highest = new HashMap<>();
        Contents looked = reader.read(file, new ShopFileReader.Rows() {
            @Override
            public void row(ShopList list, long line, @Nullable Object[] values) {
                if (list.keys().equals(List.of("id")) && values[0] instanceof Long id) {
                    highest.merge(list, id, Math::max);
                }
            }

            @Override
            public void end(ShopList list) {
                // nothing to do between the lists
            }
        });
        if (isThisOne(looked)) {
            return again(looked);
        }
        // Its own transactions, because H2 ends one with a statement that counts ids anew.
        TransactionTemplate own = new TransactionTemplate(transactions);
        own.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
        boolean begun = Boolean.TRUE.equals(own.execute(status -> {
            tables.keepWritersOut(lists);
            if (isThisOne(looked)) {
                return false;
            }
            refuseUnlessEmpty();
            countOnFrom(highest);
            return true;
        }));
        boolean saved = begun && Boolean.TRUE.equals(own.execute(status -> save(file, reader, looked, status)));
        if (!saved) {
            return again(looked);
        }
        events.publishEvent(new ShopFileRead());
        return looked;
    }

    private static Contents again(Contents c) {
        return new Contents(c.writtenAt(), c.sha256(), c.lists(), true);
    }

    private boolean isThisOne(Contents looked) {
        return jdbc.sql("select count(*) from shop_file_read where sha256 = :sha256")
                        .param("sha256", looked.sha256())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private Optional<ShopList> firstHeld() {
        return lists.stream().filter(l -> !l.begins()).filter(tables::holdsAny).findFirst();
    }

    private void refuseUnlessEmpty() {
        firstHeld().ifPresent(held -> {
            throw new ConflictException("This shop is not empty: it holds "
                    + held.name().replace('_', ' ') + " already. A shop file is read into an empty shop only, so that"
                    + " nothing is mixed up or lost; start the program with another data folder and read it there.");
        });
    }

    private void countOnFrom(Map<ShopList, Long> highest) {
        Set<String> numbered = tables.numbered();
        highest.forEach((list, id) -> {
            if (numbered.contains(list.table()) && id >= 1 && id < Long.MAX_VALUE) {
                tables.restart(list, id + 1);
            }
        });
    }

    private boolean save(Path file, ShopFileReader reader, Contents looked, TransactionStatus status) {
        tables.keepWritersOut(lists);
        if (isThisOne(looked)) {
            return false;
        }
        refuseUnlessEmpty();
        for (int i = lists.size() - 1; i >= 0; i--) {
            if (lists.get(i).begins()) {
                tables.clear(lists.get(i));
            }
        }
        Contents saved = reader.read(file, new Saving(status));
        if (!saved.equals(looked)) {
            throw ShopFileReader.refused("The file", "was changed while it was read; send it again");
        }
        jdbc.sql("insert into shop_file_read (id, sha256, read_at) values (1, :sha256, :at)")
                .param("sha256", saved.sha256())
                .param("at", clock.instant().truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC))
                .update();
        return true;
    }

    /** Collects rows and saves some at a time; where some are refused, the first one that is refused alone is named. */
    private final class Saving implements ShopFileReader.Rows {
        private final TransactionStatus status;
        private final List<@Nullable Object[]> waiting = new ArrayList<>();
        private long lastLine;

        Saving(TransactionStatus status) {
            this.status = status;
        }

        @Override
        public void row(ShopList list, long line, @Nullable Object[] values) {
            waiting.add(values);
            lastLine = line;
            if (waiting.size() == ROWS_AT_ONCE || list.heavy()) {
                save(list);
            }
        }

        @Override
        public void end(ShopList list) {
            save(list);
        }

        private void save(ShopList list) {
            if (waiting.isEmpty()) {
                return;
            }
            Object before = status.createSavepoint();
            try {
                tables.insert(list, waiting);
                status.releaseSavepoint(before);
            } catch (DataIntegrityViolationException e) {
                status.rollbackToSavepoint(before);
                throw refusal(list, e);
            }
            waiting.clear();
        }

        private RuntimeException refusal(ShopList list, DataIntegrityViolationException whole) {
            long line = lastLine - waiting.size();
            for (@Nullable Object[] row : waiting) {
                line++;
                try {
                    tables.insert(list, List.<@Nullable Object[]>of(row));
                } catch (DataIntegrityViolationException e) {
                    return ShopFileReader.refused(list, line, reason(list, e));
                }
            }
            return whole;
        }

        private String reason(ShopList list, DataIntegrityViolationException e) {
            String state =
                    e.getMostSpecificCause() instanceof SQLException sql ? String.valueOf(sql.getSQLState()) : "";
            return switch (state) {
                case "23505" ->
                    "has " + String.join(" and ", list.keys())
                            + ", or another value that may be there once only, of a line before it";
                case "23503", "23506" -> "points to something that is not in the file";
                case "23513", "23514" -> "holds a value that is outside what the program allows there";
                case "22001" -> "holds a text that is too long";
                case "22003" -> "holds a number that is too large";
                default -> "cannot be saved (SQL state " + state + ")";
            };
        }
    }
}
