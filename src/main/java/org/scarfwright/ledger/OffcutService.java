package org.scarfwright.ledger;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.scarfwright.rack.Piece;
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
        // The oldest of the rack come first, so that no more of it is looked at than is needed. A code may have been
        // that of another
        // piece once, whose cut was taken back: only what stands of its rests makes a piece a rest.
        List<String> rests = jdbc.sql("select p.code from piece p where p.state = 'ON_RACK' and p.since <= :latest"
                        + " and (select sum(o.volume_um3) from outcome o where o.to_piece = p.code and o.kind = 'REST') > 0"
                        + " and not exists (select 1 from act a where a.piece_code = p.code and a.kind = 'RESERVED')"
                        + " order by p.state, p.since, p.code_order limit :most")
                .param("latest", latest)
                .param("most", Losses.MOST_PIECES)
                .query(String.class)
                .list();
        return rack.findAll(rests).stream()
                .sorted(Comparator.comparing(Piece::since).thenComparing(Piece::code))
                .toList();
    }
}
