package org.scarfwright.durability;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.scarfwright.ScarfwrightApplication;

/** The program as a process of its own, started as a person starts it but for the port and a quicker start. */
final class RunningProgram implements AutoCloseable {
    private static final Pattern READY = Pattern.compile("Scarfwright is ready: (http://\\S+)");
    private static final Duration LONGEST_START = Duration.ofMinutes(3);

    private final Process process;
    private final Path log;
    private final URI address;

    private RunningProgram(Process process, Path log, URI address) {
        this.process = process;
        this.log = log;
        this.address = address;
    }

    /** Returns once the program says it is ready. */
    static RunningProgram start(Path home) throws IOException, InterruptedException {
        Path log = Files.createTempFile(home.getParent(), home.getFileName() + "-", ".log");
        Process process = launch(home, log);
        long deadline = System.nanoTime() + LONGEST_START.toNanos();
        while (System.nanoTime() < deadline) {
            Matcher ready = READY.matcher(Files.readString(log));
            if (ready.find()) {
                return new RunningProgram(process, log, URI.create(ready.group(1)));
            }
            if (!process.isAlive()) {
                break;
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
        process.destroyForcibly();
        throw new IllegalStateException("The program did not start:\n" + Files.readString(log));
    }

    /** Starts the program and returns at once; what it says goes to the log. */
    static Process launch(Path home, Path log) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xmx512m",
                        "-cp",
                        programClassPath(),
                        ScarfwrightApplication.class.getName(),
                        "--scarfwright.home=" + home,
                        "--server.port=0")
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
    }

    /** The class path of this test without the tests themselves. */
    private static String programClassPath() {
        String all = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        List<String> entries = Arrays.asList(all.split(File.pathSeparator));
        return entries.stream()
                .filter(e -> !e.contains("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    URI at(String path) {
        return address.resolve(path);
    }

    String said() throws IOException {
        return Files.readString(log);
    }

    /** SIGKILL: the process gets no chance to tidy up. Returns when it is gone. */
    void kill() {
        process.destroyForcibly();
        process.onExit().orTimeout(30, TimeUnit.SECONDS).join();
    }

    @Override
    public void close() {
        kill();
    }
}
