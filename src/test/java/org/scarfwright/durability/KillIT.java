package org.scarfwright.durability;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.FreshHome;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/**
 * Kills the program twenty times while four people write, on the database address it comes with. What it said it saved is
 * there after the next start, and nothing is there by halves: a laminated piece writes its row, three strips, a warp
 * reading, a moisture reading and an entry in the ledger, or none of them.
 */
class KillIT {
    private static final int ROUNDS = 20;
    private static final int WRITERS = 4;
    private static final int CREATED = 201;
    private static final long SEED = 417;

    private final Path home = FreshHome.create();
    private final HttpClient http = HttpClient.newHttpClient();
    private final Random random = new Random(SEED);

    @Test
    void losesNothingItAcknowledgedInTwentyKillsUnderWrites() throws Exception {
        Set<String> acknowledged = new HashSet<>();
        Set<String> sent = new HashSet<>();
        for (int round = 0; round < ROUNDS; round++) {
            RunningProgram program = RunningProgram.start(home);
            Written written = writeUntilKilled(program, round);
            assertThat(written.acknowledged())
                    .as("round " + round + " wrote something before it was killed")
                    .isNotEmpty();
            acknowledged.addAll(written.acknowledged());
            sent.addAll(written.sent());
            assertWhole(acknowledged, sent, "round " + round);
        }
        try (RunningProgram program = RunningProgram.start(home)) {
            for (String code : lastOf(acknowledged)) {
                HttpResponse<String> answer = http.send(
                        HttpRequest.newBuilder(program.at("/api/rack/pieces/" + code))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
                assertThat(answer.statusCode()).as(code).isEqualTo(200);
            }
        }
        System.out.printf(
                "kill test: %d rounds, %d pieces sent, %d acknowledged, none lost%n",
                ROUNDS, sent.size(), acknowledged.size());
    }

    /**
     * H2 writes over space it gave up 45 seconds ago: some versions do not find what they wrote there when killed after it. Those
     * that write on and on find it now and then, so it rests in between, as a shop does.
     */
    @Test
    void losesNothingOnceSpaceOfTheFileIsUsedAgain() throws Exception {
        Set<String> acknowledged = new HashSet<>();
        try (RunningProgram program = RunningProgram.start(home)) {
            write(program, "A-", 20, acknowledged);
            TimeUnit.SECONDS.sleep(50);
            write(program, "B-", 8, acknowledged);
        }
        assertWhole(acknowledged, acknowledged, "killed after it rested");
    }

    private void write(RunningProgram program, String prefix, int pieces, Set<String> acknowledged) throws Exception {
        for (int n = 1; n <= pieces; n++) {
            String code = prefix + n;
            assertThat(http.send(newPiece(program, code), HttpResponse.BodyHandlers.ofString())
                            .statusCode())
                    .as(code)
                    .isEqualTo(CREATED);
            acknowledged.add(code);
        }
    }

    /** What the writers of one round sent, and of that what was answered with success. */
    private record Written(Collection<String> sent, Collection<String> acknowledged) {}

    private Written writeUntilKilled(RunningProgram program, int round) throws InterruptedException {
        ConcurrentLinkedQueue<String> sent = new ConcurrentLinkedQueue<>();
        ConcurrentLinkedQueue<String> acknowledged = new ConcurrentLinkedQueue<>();
        ConcurrentLinkedQueue<String> refused = new ConcurrentLinkedQueue<>();
        CountDownLatch warm = new CountDownLatch(WRITERS);
        List<Thread> writers = new ArrayList<>();
        for (int w = 0; w < WRITERS; w++) {
            String prefix = "R" + round + "W" + w + "-";
            Thread writer = new Thread(() -> {
                for (int n = 1; ; n++) {
                    String code = prefix + n;
                    sent.add(code);
                    try {
                        HttpResponse<String> answer =
                                http.send(newPiece(program, code), HttpResponse.BodyHandlers.ofString());
                        if (answer.statusCode() != CREATED) {
                            refused.add(code + ": " + answer.statusCode() + " " + answer.body());
                            warm.countDown();
                            return;
                        }
                        acknowledged.add(code);
                        warm.countDown();
                    } catch (IOException | InterruptedException killed) {
                        return; // the program is gone: what was under way was never acknowledged
                    }
                }
            });
            writers.add(writer);
            writer.start();
        }
        assertThat(warm.await(90, TimeUnit.SECONDS)).as("every writer wrote").isTrue();
        TimeUnit.MILLISECONDS.sleep(100 + random.nextInt(700));
        program.kill();
        for (Thread writer : writers) {
            writer.join(30_000);
        }
        assertThat(refused).as("a piece that is right is not refused").isEmpty();
        return new Written(sent, acknowledged);
    }

    private static HttpRequest newPiece(RunningProgram program, String code) {
        String body = """
                {"code":"%s","lengthMm":640,"widthMm":75,"thicknessMm":23,"moisture":7.5,"bowMm":0.5,"lamination":[
                 {"wood":"maple_sugar","widthMm":34},{"wood":"walnut_black","widthMm":7},{"wood":"maple_sugar","widthMm":34}]}
                """.formatted(code);
        return HttpRequest.newBuilder(program.at("/api/rack/pieces"))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }

    /** Opens the database the killed program left, with the address the program comes with. */
    private void assertWhole(Set<String> acknowledged, Set<String> sent, String round) throws IOException {
        JdbcClient left = JdbcClient.create(new DriverManagerDataSource(shippedAddress()));
        List<String> there = left.sql("select code from piece order by code")
                .query(String.class)
                .list();
        assertThat(there).as(round + ": acknowledged pieces are there").containsAll(acknowledged);
        assertThat(sent).as(round + ": nothing is there that nobody sent").containsAll(there);
        List<String> halves = left.sql("""
                        select p.code from piece p
                        where (select count(*) from piece_strip s where s.piece_id = p.id) <> 3
                           or (select count(*) from warp_reading w where w.piece_id = p.id) <> 1
                           or (select count(*) from moisture_reading m where m.piece_id = p.id) <> 1
                           or (select count(*) from act a where a.piece_code = p.code) <> 1
                        order by p.code""").query(String.class).list();
        assertThat(halves).as(round + ": pieces saved by halves").isEmpty();
        List<String> orphans = left.sql("""
                        select a.piece_code from act a
                        where not exists (select 1 from piece p where p.code = a.piece_code)
                        order by a.piece_code""").query(String.class).list();
        assertThat(orphans).as(round + ": ledger entries of no piece").isEmpty();
    }

    private String shippedAddress() throws IOException {
        Properties shipped = new Properties();
        try (InputStream in = getClass().getResourceAsStream("/application.properties")) {
            shipped.load(new java.io.InputStreamReader(in, StandardCharsets.UTF_8));
        }
        return shipped.getProperty("spring.datasource.url").replace("${scarfwright.home}", home.toString());
    }

    private static List<String> lastOf(Set<String> codes) {
        return codes.stream()
                .filter(c -> c.startsWith("R" + (ROUNDS - 1) + "W"))
                .sorted()
                .toList();
    }
}
