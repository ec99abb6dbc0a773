package org.scarfwright.rack;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.scarfwright.web.ConflictException;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class JdbcRack implements Rack {
    private final PieceTable table;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    JdbcRack(PieceTable table, JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.table = table;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Piece> free() {
        return table.load(new PieceTable.Where("p.state = 'ON_RACK'", Map.of()));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Piece> find(String code) {
        return PieceCodes.refusal(code).isPresent()
                ? Optional.empty()
                : table.loadCodes(List.of(PieceCodes.written(code))).stream().findFirst();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Piece> findAll(Collection<String> codes) {
        return table.loadCodes(codes.stream()
                .filter(code -> PieceCodes.refusal(code).isEmpty())
                .map(PieceCodes::written)
                .distinct()
                .toList());
    }

    @Override
    @Transactional
    public void reserve(long planId, Collection<PieceStamp> stamps) {
        // One order for everybody, so that two plans that want the same pieces never wait for each other in a circle.
        Map<String, Long> wanted = new TreeMap<>();
        stamps.forEach(s -> wanted.put(PieceCodes.written(s.code()), s.version()));
        List<String> lost = new ArrayList<>();
        wanted.forEach((code, version) -> {
            int rows = jdbc.sql("update piece set state = 'RESERVED'"
                            + " where code = :code and version = :version and state = 'ON_RACK'")
                    .param("code", code)
                    .param("version", version)
                    .update();
            if (rows == 0) {
                lost.add(code);
            }
        });
        if (!lost.isEmpty()) {
            throw new PieceNotFreeException(reasons(lost, wanted));
        }
        List<Piece> pieces = table.loadCodes(wanted.keySet());
        try {
            for (Piece piece : pieces) {
                jdbc.sql("insert into reservation (piece_id, plan_id, reserved_at) values (:piece, :plan, :at)")
                        .param("piece", piece.id())
                        .param("plan", planId)
                        .param("at", OffsetDateTime.now(clock))
                        .update();
            }
        } catch (DuplicateKeyException e) {
            throw new PieceNotFreeException(
                    List.of("One of the pieces was reserved at the same moment; match again."), e);
        }
        events.publishEvent(new PiecesChanged(
                Doing.of(PieceChanged.Kind.RESERVED),
                pieces.stream()
                        .map(p -> act(PieceChanged.Kind.RESERVED, p, planId, "Reserved for plan " + planId + "."))
                        .toList()));
    }

    @Override
    @Transactional(readOnly = true)
    public Set<Long> holders() {
        return Set.copyOf(jdbc.sql("select distinct r.plan_id from piece p join reservation r on r.piece_id = p.id"
                        + " where p.state = 'RESERVED' order by r.plan_id")
                .query(Long.class)
                .list());
    }

    @Override
    @Transactional
    public void release(long planId) {
        List<String> begun = jdbc.sql("select p.code from reservation r join piece p on p.id = r.piece_id"
                        + " where r.plan_id = :plan and p.state <> 'RESERVED' order by p.code_order")
                .param("plan", planId)
                .query(String.class)
                .list();
        if (!begun.isEmpty()) {
            throw new ConflictException((begun.size() == 1 ? "Piece " : "Pieces ") + String.join(", ", begun)
                    + (begun.size() == 1 ? " was" : " were") + " cut for plan " + planId
                    + " already, so it cannot be undone. Undo those cuts in the ledger first.");
        }
        List<Piece> pieces = table.load(new PieceTable.Where(
                "p.state = 'RESERVED' and p.id in (select r.piece_id from reservation r where r.plan_id = :plan)",
                Map.of("plan", planId)));
        if (pieces.isEmpty()) {
            return;
        }
        for (Piece piece : pieces) {
            jdbc.sql("delete from reservation where piece_id = :piece and plan_id = :plan")
                    .param("piece", piece.id())
                    .param("plan", planId)
                    .update();
            jdbc.sql("update piece set state = 'ON_RACK' where id = :piece and state = 'RESERVED'")
                    .param("piece", piece.id())
                    .update();
        }
        events.publishEvent(new PiecesChanged(
                Doing.of(PieceChanged.Kind.RELEASED),
                pieces.stream()
                        .map(p -> act(PieceChanged.Kind.RELEASED, p, planId, "Released from plan " + planId + "."))
                        .toList()));
    }

    @Override
    @Transactional
    public List<String> release(long planId, Collection<String> codes, String because, Doing doing) {
        List<String> freed = new ArrayList<>();
        for (String code : new TreeSet<>(codes)) {
            int rows = jdbc.sql(
                            "update piece set state = 'ON_RACK' where code = :code and state in ('RESERVED', 'AT_BENCH')"
                                    + " and id in (select r.piece_id from reservation r where r.plan_id = :plan)")
                    .param("code", code)
                    .param("plan", planId)
                    .update();
            if (rows == 1) {
                freed.add(code);
                jdbc.sql("delete from reservation where plan_id = :plan and piece_id in"
                                + " (select p.id from piece p where p.code = :code)")
                        .param("plan", planId)
                        .param("code", code)
                        .update();
            }
        }
        if (!freed.isEmpty()) {
            events.publishEvent(new PiecesChanged(
                    doing,
                    table.loadCodes(freed).stream()
                            .map(p -> act(
                                    PieceChanged.Kind.RELEASED,
                                    p,
                                    planId,
                                    "Released from plan " + planId + ": " + because + "."))
                            .toList()));
        }
        return freed;
    }

    @Override
    @Transactional(readOnly = true)
    public OptionalLong holder(String code) {
        return jdbc.sql("select r.plan_id from reservation r join piece p on p.id = r.piece_id where p.code = :code")
                .param("code", PieceCodes.written(code))
                .query(Long.class)
                .optional()
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
    }

    @Override
    public List<String> refusals(Collection<PieceStamp> stamps) {
        Map<String, Long> wanted = new TreeMap<>();
        stamps.forEach(s -> wanted.put(PieceCodes.written(s.code()), s.version()));
        Map<String, Long> lost = new TreeMap<>(wanted);
        table.loadCodes(wanted.keySet()).stream()
                .filter(p -> p.state() == PieceState.ON_RACK)
                .forEach(p -> lost.remove(p.code(), p.version()));
        return reasons(List.copyOf(lost.keySet()), wanted);
    }

    private List<String> reasons(List<String> lost, Map<String, Long> wanted) {
        Map<String, Piece> there = new TreeMap<>();
        table.loadCodes(lost).forEach(p -> there.put(p.code(), p));
        return lost.stream()
                .map(code -> {
                    Piece piece = there.get(code);
                    if (piece == null) {
                        return "Piece " + code + " is not on the rack any more.";
                    }
                    return switch (piece.state()) {
                        case RESERVED -> "Piece " + code + " is reserved already.";
                        case AT_BENCH -> "Piece " + code + " is at the bench.";
                        case USED_UP -> "Piece " + code + " is used up.";
                        case SCRAPPED -> "Piece " + code + " was scrapped.";
                        case SOLD -> "Piece " + code + " was sold.";
                        case ON_RACK ->
                            "Piece " + code + " was changed since"
                                    + (Long.valueOf(piece.version()).equals(wanted.get(code))
                                            ? "; it is free again now."
                                            : "; match again.");
                    };
                })
                .toList();
    }

    private static PieceChanged act(PieceChanged.Kind kind, Piece piece, long planId, String detail) {
        return new PieceChanged(kind, piece.code(), piece.volumeThere(), piece.volumeThere(), planId, detail);
    }
}
