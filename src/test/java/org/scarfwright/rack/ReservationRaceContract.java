package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.measure.LengthUnit;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Plans that want the same pieces at the same moment: one gets them all, the others none. Commits, and cleans up. */
@SuppressWarnings("NullAway.Init")
abstract class ReservationRaceContract {
    private static final int ROUNDS = 15;
    private static final int PLANS = 4;

    @Autowired
    Rack rack;

    @Autowired
    Pieces pieces;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Flyway flyway;

    @Test
    void onePlanGetsThePiecesHoweverManyAskAtOnce() throws Exception {
        List<Rack.PieceStamp> stamps = new ArrayList<>();
        for (String code : List.of("RACE-1", "RACE-2", "RACE-3")) {
            Piece piece = pieces.add(RackContract.cells(code, "600", "70", "22"), LengthUnit.MM);
            stamps.add(new Rack.PieceStamp(piece.code(), piece.version()));
        }
        List<Rack.PieceStamp> backwards = new ArrayList<>(stamps);
        java.util.Collections.reverse(backwards);
        ExecutorService people = Executors.newFixedThreadPool(PLANS);
        try {
            for (int round = 0; round < ROUNDS; round++) {
                CyclicBarrier start = new CyclicBarrier(PLANS);
                List<Callable<Boolean>> asks = new ArrayList<>();
                for (int i = 0; i < PLANS; i++) {
                    long plan = 9_000_000L + (long) round * PLANS + i;
                    List<Rack.PieceStamp> wanted = i % 2 == 0 ? stamps : backwards;
                    asks.add(() -> {
                        start.await();
                        return reserved(plan, wanted);
                    });
                }
                int won = 0;
                for (Future<Boolean> answer : people.invokeAll(asks)) {
                    won += answer.get() ? 1 : 0;
                }
                assertThat(won)
                        .as("plans that got the pieces in round %d", round)
                        .isEqualTo(1);
                List<Long> holders = jdbc.sql("select distinct r.plan_id from reservation r join piece p"
                                + " on p.id = r.piece_id where p.code like 'RACE-%' order by r.plan_id")
                        .query(Long.class)
                        .list();
                assertThat(holders).hasSize(1);
                assertThat(rack.findAll(List.of("RACE-1", "RACE-2", "RACE-3")))
                        .allMatch(p -> p.state() == PieceState.RESERVED);
                rack.release(holders.get(0));
            }
        } finally {
            people.shutdownNow();
            EmptyDatabase.of(flyway);
        }
    }

    private boolean reserved(long plan, List<Rack.PieceStamp> wanted) {
        try {
            rack.reserve(plan, wanted);
            return true;
        } catch (PieceNotFreeException e) {
            assertThat(e.reasons()).isNotEmpty();
            return false;
        }
    }
}
