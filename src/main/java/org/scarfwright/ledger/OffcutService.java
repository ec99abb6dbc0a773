package org.scarfwright.ledger;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Rack;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class OffcutService implements Offcuts {
    private final JdbcClient jdbc;
    private final Rack rack;
    private final Clock clock;

    OffcutService(JdbcClient jdbc, Rack rack, Clock clock) {
        this.jdbc = jdbc;
        this.rack = rack;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Piece> unwanted(int months) {
        if (months < 0 || months > MOST_MONTHS) {
            throw new IllegalArgumentException(months + " months are not between 0 and " + MOST_MONTHS);
        }
        LocalDate latest = LocalDate.now(clock).minusMonths(months);
        List<String> rests = jdbc.sql("select o.to_piece from outcome o where o.kind = 'REST' and not exists"
                        + " (select 1 from act a where a.piece_code = o.to_piece and a.kind = 'RESERVED')"
                        + " group by o.to_piece having sum(o.volume_um3) > 0 order by o.to_piece")
                .query(String.class)
                .list();
        return rack.findAll(rests).stream()
                .filter(p -> p.state() == PieceState.ON_RACK && !p.since().isAfter(latest))
                .sorted(Comparator.comparing(Piece::since).thenComparing(Piece::code))
                .limit(Losses.MOST_PIECES)
                .toList();
    }
}
