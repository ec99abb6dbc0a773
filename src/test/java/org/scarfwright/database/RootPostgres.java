package org.scarfwright.database;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.postgresql.ds.PGSimpleDataSource;
import org.tukaani.xz.XZInputStream;

/**
 * The embedded PostgreSQL for a build that runs as root, as in a container: PostgreSQL refuses to run as root, and many
 * containers forbid the user namespace that would hide it. So it runs as nobody.
 */
final class RootPostgres {
    private static final String NOBODY = "nobody";
    private static final Duration LONGEST_START = Duration.ofMinutes(2);

    private final int port;

    private RootPostgres(int port) {
        this.port = port;
    }

    static boolean isNeeded() {
        return System.getProperty("os.name").equals("Linux")
                && System.getProperty("user.name").equals("root");
    }

    /** Starts a server in a fresh folder; it stops with this process and leaves nothing behind. */
    static RootPostgres start() throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("embedded-postgres-");
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        Path binaries = Files.createDirectory(folder.resolve("binaries"));
        unpack(binaries);
        Path data = Files.createDirectory(folder.resolve("data"));
        Files.setOwner(
                data, data.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(NOBODY));
        Path log = folder.resolve("log");
        Process making = asNobody(
                log,
                bin(binaries, "initdb"),
                "-D",
                data.toString(),
                "-U",
                "postgres",
                "-A",
                "trust",
                "-E",
                "UTF8",
                "--no-locale",
                "--no-sync");
        if (making.waitFor() != 0) {
            throw new IllegalStateException("initdb failed:\n" + Files.readString(log));
        }
        int port = freePort();
        Process server = asNobody(
                log,
                bin(binaries, "postgres"),
                "-D",
                data.toString(),
                "-p",
                Integer.toString(port),
                "-h",
                "127.0.0.1",
                "-c",
                "unix_socket_directories=",
                "-c",
                "fsync=off",
                "-c",
                "max_connections=300");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(server, folder)));
        RootPostgres started = new RootPostgres(port);
        started.awaitAnswer(server, log);
        return started;
    }

    PGSimpleDataSource database(String name) {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(url(name));
        source.setUser("postgres");
        return source;
    }

    String url(String name) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + name;
    }

    private void awaitAnswer(Process server, Path log) throws IOException, InterruptedException {
        long deadline = System.nanoTime() + LONGEST_START.toNanos();
        while (!answers()) {
            if (!server.isAlive() || System.nanoTime() > deadline) {
                throw new IllegalStateException("PostgreSQL did not start:\n" + Files.readString(log));
            }
            TimeUnit.MILLISECONDS.sleep(100);
        }
    }

    private boolean answers() {
        try (var connection = database("postgres").getConnection()) {
            return connection.isValid(1);
        } catch (SQLException e) {
            return false; // not yet
        }
    }

    private static Process asNobody(Path log, String... command) throws IOException {
        List<String> all =
                new ArrayList<>(List.of("setpriv", "--reuid=" + NOBODY, "--regid=nogroup", "--clear-groups", "--"));
        all.addAll(List.of(command));
        return new ProcessBuilder(all)
                .directory(Path.of("/").toFile())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
    }

    private static String bin(Path binaries, String name) {
        return binaries.resolve("bin").resolve(name).toString();
    }

    private static void unpack(Path to) throws IOException {
        try (InputStream packed =
                        DefaultPostgresBinaryResolver.INSTANCE.getPgBinary("Linux", System.getProperty("os.arch"));
                TarArchiveInputStream tar = new TarArchiveInputStream(new XZInputStream(packed))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path target = to.resolve(entry.getName()).normalize();
                if (!target.startsWith(to)) {
                    throw new IOException("leaves its folder: " + entry.getName());
                }
                if (entry.isDirectory()) {
                    Files.createDirectories(target);
                } else if (entry.isSymbolicLink()) {
                    Files.createDirectories(target.getParent());
                    Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
                } else {
                    Files.createDirectories(target.getParent());
                    Files.copy(tar, target);
                    boolean runs = (entry.getMode() & 0111) != 0;
                    Files.setPosixFilePermissions(
                            target, PosixFilePermissions.fromString(runs ? "rwxr-xr-x" : "rw-r--r--"));
                }
            }
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void remove(Process server, Path folder) {
        server.destroy();
        try {
            if (!server.waitFor(20, TimeUnit.SECONDS)) {
                server.destroyForcibly();
            }
            try (var all = Files.walk(folder)) {
                for (Path p : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                    Files.delete(p);
                }
            }
        } catch (IOException e) {
            System.err.println("left behind: " + folder + " (" + e.getMessage() + ")");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
