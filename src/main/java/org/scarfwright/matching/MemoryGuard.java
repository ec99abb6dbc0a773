package org.scarfwright.matching;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Watches what a search takes on top of what the program held when it began. The solvers take memory outside of the Java heap,
 * so the whole process is looked at where the system tells it (Linux), and the heap elsewhere.
 */
final class MemoryGuard {
    private static final Logger log = LoggerFactory.getLogger(MemoryGuard.class);
    private static final Path STATUS = Path.of("/proc/self/status");
    private static final long PAUSE_NANOS = 100_000_000;
    private static final long MB = 1024L * 1024;

    private final LongSupplier held;
    private final long most;
    private long next = System.nanoTime();
    private volatile boolean exceeded;

    MemoryGuard(int limitMb) {
        this(MemoryGuard::heldNow, limitMb);
    }

    /** @param held bytes the program holds now */
    MemoryGuard(LongSupplier held, int limitMb) {
        this.held = held;
        this.most = held.getAsLong() + limitMb * MB;
    }

    /** Never goes back to false. Looks a few times a second at most; asked by one thread. */
    boolean exceeded() {
        long now = System.nanoTime();
        if (!exceeded && now - next >= 0) {
            next = now + PAUSE_NANOS;
            exceeded = held.getAsLong() > most;
        }
        return exceeded;
    }

    static long heldNow() {
        Runtime runtime = Runtime.getRuntime();
        long heap = runtime.totalMemory() - runtime.freeMemory();
        if (!Files.isReadable(STATUS)) {
            return heap;
        }
        try {
            for (String line : Files.readAllLines(STATUS, StandardCharsets.UTF_8)) {
                if (line.startsWith("VmRSS:")) {
                    return Long.parseLong(line.replaceAll("\\D", "")) * 1024;
                }
            }
        } catch (IOException e) {
            log.debug("The system does not tell what the program holds", e);
        }
        return heap;
    }
}
