package org.scarfwright.ledger;

import java.util.Objects;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Reads what {@link YieldBook} keeps, up to date and all of it as it was at one moment. */
@Component
class YieldSnapshot {
    private final YieldBook book;
    private final TransactionTemplate snapshot;

    YieldSnapshot(YieldBook book, PlatformTransactionManager transactions) {
        this.book = book;
        this.snapshot = new TransactionTemplate(transactions);
        snapshot.setReadOnly(true);
        snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    }

    <T> T read(Supplier<T> reading) {
        book.bringUpToDate();
        return Objects.requireNonNull(snapshot.execute(status -> reading.get()));
    }
}
