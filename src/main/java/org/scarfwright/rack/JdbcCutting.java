package org.scarfwright.rack;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.ConflictException;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class JdbcCutting implements Cutting {
    private final PieceTable table;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final RandomGenerator random = new SecureRandom();

    JdbcCutting(PieceTable table, JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.table = table;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Made cut(Cut cut) {
        Piece seen = cut.seen();
        if (!seen.state().isThere()) {
            throw new ConflictException(
                    "Piece " + seen.code() + " is " + PieceWords.state(seen.state()) + "; nothing can be cut from it.");
        }
        Optional<Long> plan = jdbc.sql("select plan_id from reservation where piece_id = :id")
                .param("id", seen.id())
                .query(Long.class)
                .optional();
        List<Outcome> outcomes = new ArrayList<>();
        List<String> codes = codes(cut.rests());
        for (int i = 0; i < codes.size(); i++) {
            Rest rest = cut.rests().get(i);
            outcomes.add(Outcome.rest(
                    seen.code(),
                    codes.get(i),
                    rest.size().lengths(),
                    rest.size().volume(),
                    rest.planned()));
        }
        outcomes.addAll(cut.outcomes());
        Volume left = cut.left().map(l -> l.size().volume()).orElse(Volume.ZERO);
        Volume unexplained =
                outcomes.stream().map(Outcome::volume).reduce(seen.volume().minus(left), Volume::minus);
        if (!unexplained.isZero()) {
            outcomes.add(Outcome.unexplained(seen.code(), unexplained));
        }
        Money ofLeft = share(seen, left, outcomes);

        Set<String> lots = new HashSet<>();
        lots.addAll(writeLeft(cut, ofLeft, plan.isPresent()));
        lots.addAll(writeRests(seen, cut.rests(), codes, outcomes));

        Piece after = table.loadCodes(List.of(seen.code())).get(0);
        List<Piece> rests = table.loadCodes(codes);
        Long held = plan.orElse(null);
        List<PieceChanged> changes = new ArrayList<>();
        changes.add(new PieceChanged(
                PieceChanged.Kind.CUT,
                seen.code(),
                seen.volume(),
                after.volumeThere(),
                held,
                "Cut from " + PieceWords.size(seen)
                        + (after.state().isThere() ? " to " + PieceWords.size(after) + "." : "; used up.")));
        rests.forEach(r -> changes.add(new PieceChanged(
                PieceChanged.Kind.REST,
                r.code(),
                Volume.ZERO,
                r.volume(),
                held,
                "Cut from " + seen.code() + ": " + PieceWords.size(r) + ".")));
        events.publishEvent(new PiecesChanged(cut.doing(), changes, outcomes, lots));
        return new Made(after, rests, outcomes);
    }

    private List<String> codes(List<Rest> rests) {
        List<String> own = rests.stream()
                .map(Rest::code)
                .filter(c -> c != null)
                .map(PieceCodes::written)
                .toList();
        Set<String> taken = table.existing(own);
        for (String code : own) {
            if (!taken.add(code)) {
                throw new ConflictException("Code " + code
                        + " is taken by another piece; write another, or leave it empty and one is made.");
            }
        }
        int open = rests.size() - own.size();
        List<String> made = open == 0
                ? List.of()
                : PieceCodes.make(
                        open,
                        table.count(new PieceTable.Where("1 = 1", Map.of())),
                        c -> taken.contains(c) || !table.existing(List.of(c)).isEmpty(),
                        random);
        List<String> codes = new ArrayList<>();
        int next = 0;
        for (Rest rest : rests) {
            codes.add(rest.code() == null ? made.get(next++) : PieceCodes.written(rest.code()));
        }
        return codes;
    }

    /**
     * Gives every outcome that carries cost its share.
     *
     * @return the share of what is left; empty when nobody knows what the piece cost
     */
    private static @Nullable Money share(Piece seen, Volume left, List<Outcome> outcomes) {
        Money cost = seen.cost();
        if (cost == null) {
            return null;
        }
        List<Integer> bearers = bearers(outcomes, Outcome.Kind.PART, Outcome.Kind.REST);
        if (bearers.isEmpty() && left.isZero()) {
            bearers = bearers(outcomes, Outcome.Kind.WASTE, Outcome.Kind.UNEXPLAINED);
        }
        List<Volume> volumes = new ArrayList<>();
        bearers.forEach(i -> volumes.add(outcomes.get(i).volume()));
        volumes.add(left);
        List<Money> shares = CostShares.of(cost, volumes);
        for (int i = 0; i < bearers.size(); i++) {
            outcomes.set(bearers.get(i), outcomes.get(bearers.get(i)).withCost(shares.get(i)));
        }
        return shares.get(bearers.size());
    }

    private static List<Integer> bearers(List<Outcome> outcomes, Outcome.Kind one, Outcome.Kind other) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < outcomes.size(); i++) {
            Outcome o = outcomes.get(i);
            if ((o.kind() == one || o.kind() == other) && o.volume().signum() > 0) {
                found.add(i);
            }
        }
        return found;
    }

    private Set<String> writeLeft(Cut cut, @Nullable Money cost, boolean held) {
        Piece seen = cut.seen();
        Set<String> lots = Set.of();
        PieceState state = PieceState.USED_UP;
        if (cut.left().isPresent()) {
            Left left = cut.left().get();
            PieceFacts facts = CutPiece.facts(seen, left.size(), left.from(), seen.place(), cost, seen.note());
            lots = table.replace(seen, facts).orElseThrow(() -> new PieceChangedSinceException(seen.code()));
            state = !left.atBench() ? PieceState.ON_RACK : PieceState.AT_BENCH;
        }
        int rows = jdbc.sql("update piece set state = :state, version = :next, fits_key = null"
                        + " where id = :id and version = :version and state = :was")
                .param("state", state.name())
                .param("next", seen.version() + 1)
                .param("id", seen.id())
                .param("version", seen.version() + (cut.left().isPresent() ? 1 : 0))
                .param("was", seen.state().name())
                .update();
        if (rows == 0) {
            throw new PieceChangedSinceException(seen.code());
        }
        if (held && state == PieceState.ON_RACK) {
            jdbc.sql("delete from reservation where piece_id = :id")
                    .param("id", seen.id())
                    .update();
        }
        return lots;
    }

    /** @param outcomes those of the rests, in front of any others */
    private Set<String> writeRests(Piece whole, List<Rest> rests, List<String> codes, List<Outcome> outcomes) {
        if (codes.isEmpty()) {
            return Set.of();
        }
        LocalDate today = LocalDate.now(clock);
        List<PieceTable.NewPiece> rows = new ArrayList<>();
        for (int i = 0; i < codes.size(); i++) {
            Rest rest = rests.get(i);
            String place = rest.place() == null ? whole.place() : rest.place();
            rows.add(new PieceTable.NewPiece(
                    codes.get(i),
                    null,
                    CutPiece.facts(
                            whole,
                            rest.size(),
                            rest.from(),
                            place,
                            outcomes.get(i).cost(),
                            rest.note()),
                    today));
        }
        try {
            return table.insert(rows);
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Another piece was added at the same moment; send it again.", e);
        }
    }

    @Override
    @Transactional
    public List<Piece> writeOff(List<Lost> lost, Doing doing) {
        List<Rest> rests = lost.stream().flatMap(l -> l.rests().stream()).toList();
        List<String> codes = codes(rests);
        Map<String, Piece> sources = new TreeMap<>();
        table.loadCodes(lost.stream().map(l -> l.part().fromPiece()).distinct().toList())
                .forEach(p -> sources.put(p.code(), p));
        List<Outcome> outcomes = new ArrayList<>();
        Map<String, List<String>> titles = new TreeMap<>();
        Set<String> lots = new HashSet<>();
        int next = 0;
        for (Lost l : lost) {
            Outcome part = l.part();
            Volume waste = l.waste();
            if (part.neck() == null || waste.signum() < 0) {
                throw new IllegalArgumentException("not a part, or less of one than its rests");
            }
            List<String> own = codes.subList(next, next + l.rests().size());
            next += l.rests().size();
            List<Volume> volumes = new ArrayList<>();
            l.rests().forEach(r -> volumes.add(r.size().volume()));
            volumes.add(waste);
            List<Money> shares = part.cost() == null ? null : CostShares.of(part.cost(), volumes);
            List<Outcome> kept = new ArrayList<>();
            for (int i = 0; i < own.size(); i++) {
                Cutting.Size size = l.rests().get(i).size();
                kept.add(Outcome.rest(part.fromPiece(), own.get(i), size.lengths(), size.volume(), null)
                        .withCost(shares == null ? null : shares.get(i)));
            }
            if (!own.isEmpty()) {
                Piece source = sources.get(part.fromPiece());
                if (source == null) {
                    throw new ConflictException("Piece " + part.fromPiece()
                            + " is not in the books any more, so nobody knows what its rests are.");
                }
                lots.addAll(writeRests(source, l.rests(), own, kept));
            }
            outcomes.add(part.reversed());
            outcomes.addAll(kept);
            outcomes.add(Outcome.spoilt(part.fromPiece(), part.neck(), Objects.requireNonNull(part.size()), waste, null)
                    .withCost(shares == null ? null : shares.get(own.size())));
            titles.computeIfAbsent(part.fromPiece(), k -> new ArrayList<>())
                    .add(part.neck().title());
        }
        List<PieceChanged> changes = new ArrayList<>();
        titles.forEach((code, of) -> {
            Piece source = sources.get(code);
            Volume there = source == null ? Volume.ZERO : source.volumeThere();
            changes.add(new PieceChanged(
                    PieceChanged.Kind.FAILED,
                    code,
                    there,
                    there,
                    plan(lost),
                    String.join(" and ", of) + ", cut from it: written off."));
        });
        List<Piece> made = table.loadCodes(codes);
        Map<String, String> from = new TreeMap<>();
        outcomes.stream()
                .filter(o -> o.kind() == Outcome.Kind.REST)
                .forEach(o -> from.put(Objects.requireNonNull(o.toPiece()), o.fromPiece()));
        made.forEach(r -> changes.add(new PieceChanged(
                PieceChanged.Kind.REST,
                r.code(),
                Volume.ZERO,
                r.volume(),
                plan(lost),
                "Kept of a part from " + from.get(r.code()) + ": " + PieceWords.size(r) + ".")));
        events.publishEvent(new PiecesChanged(doing, changes, outcomes, lots));
        return made;
    }

    private static @Nullable Long plan(List<Lost> lost) {
        return lost.stream()
                .flatMap(l -> Stream.ofNullable(l.part().neck()))
                .map(Outcome.NeckPart::plan)
                .findFirst()
                .orElse(null);
    }

    @Override
    @Transactional
    public void remove(Collection<Rack.PieceStamp> seen, PieceState to, Doing doing) {
        if (to != PieceState.SCRAPPED && to != PieceState.SOLD) {
            throw new IllegalArgumentException("a piece is not taken away as " + to);
        }
        Map<String, Long> wanted = new TreeMap<>();
        seen.forEach(s -> wanted.put(PieceCodes.written(s.code()), s.version()));
        List<Piece> pieces = table.loadCodes(wanted.keySet());
        List<String> refusals = new ArrayList<>();
        wanted.forEach((code, version) -> {
            Optional<Piece> piece =
                    pieces.stream().filter(p -> p.code().equals(code)).findFirst();
            if (piece.isEmpty()) {
                refusals.add("There is no piece " + code + ".");
            } else if (!piece.get().state().isThere()) {
                refusals.add(
                        "Piece " + code + " is " + PieceWords.state(piece.get().state()) + " already.");
            } else if (piece.get().version() != version) {
                refusals.add("Piece " + code + " was changed since; look at it again.");
            }
        });
        if (!refusals.isEmpty()) {
            throw new PieceNotFreeException(refusals);
        }
        List<PieceChanged> changes = new ArrayList<>();
        List<Outcome> outcomes = new ArrayList<>();
        for (Piece piece : pieces) {
            int rows = jdbc.sql("update piece set state = :state, version = version + 1, fits_key = null"
                            + " where id = :id and version = :version and state = :was")
                    .param("state", to.name())
                    .param("id", piece.id())
                    .param("version", piece.version())
                    .param("was", piece.state().name())
                    .update();
            if (rows == 0) {
                throw new PieceNotFreeException(
                        List.of("Piece " + piece.code() + " was changed at the same moment; look at it again."));
            }
            jdbc.sql("delete from reservation where piece_id = :id")
                    .param("id", piece.id())
                    .update();
            boolean scrapped = to == PieceState.SCRAPPED;
            changes.add(new PieceChanged(
                    scrapped ? PieceChanged.Kind.SCRAPPED : PieceChanged.Kind.SOLD,
                    piece.code(),
                    piece.volume(),
                    Volume.ZERO,
                    null,
                    (scrapped ? "Scrapped: " : "Sold: ") + PieceWords.size(piece) + "."));
            outcomes.add((scrapped
                            ? Outcome.waste(piece.code(), Outcome.Cause.SCRAPPED, piece.volume(), null)
                            : new Outcome(
                                    Outcome.Kind.SOLD,
                                    null,
                                    piece.code(),
                                    null,
                                    piece.volume(),
                                    null,
                                    null,
                                    null,
                                    null))
                    .withCost(piece.cost()));
        }
        events.publishEvent(new PiecesChanged(doing, changes, outcomes, Set.of()));
    }
}
