package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** A search is held to what the shop gives it. */
class MemoryGuardTest {
    private static final long MB = 1024L * 1024;

    @Test
    void countsOnlyWhatIsTakenOnTop() {
        AtomicLong held = new AtomicLong(900 * MB);
        MemoryGuard guard = new MemoryGuard(held::get, 64);
        assertThat(guard.exceeded()).isFalse();
        MemoryGuard full = new MemoryGuard(held::get, 64);
        held.set(964 * MB + 1);
        assertThat(full.exceeded()).isTrue();
        held.set(0);
        assertThat(full.exceeded()).as("never goes back").isTrue();
    }

    @Test
    void seesWhatThisProgramHolds() {
        assertThat(MemoryGuard.heldNow()).isGreaterThan(8 * MB);
    }
}
