package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.scarfwright.measure.Volume;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class JdbcRackAge implements RackAge {
    private static final String THERE = "state in ('ON_RACK', 'RESERVED', 'AT_BENCH')";

    private final JdbcClient jdbc;
    private final Rack rack;

    JdbcRackAge(JdbcClient jdbc, Rack rack) {
        this.jdbc = jdbc;
        this.rack = rack;
    }

    @Override
    public List<Day> days() {
        return jdbc.sql("select since, count(*) as pieces,"
                        + " sum(cast(length_um as numeric(30, 0)) * width_um * thickness_um) as volume_um3 from piece where "
                        + THERE + " group by since order by since")
                .query((rs, n) -> new Day(
                        rs.getObject("since", LocalDate.class),
                        rs.getInt("pieces"),
                        new Volume(rs.getBigDecimal("volume_um3").toBigIntegerExact())))
                .list();
    }

    @Override
    public List<Piece> cameBetween(LocalDate first, LocalDate last, int most) {
        List<String> codes = jdbc.sql("select code from piece where " + THERE
                        + " and since between :first and :last order by since, code limit :most")
                .param("first", first)
                .param("last", last)
                .param("most", most)
                .query(String.class)
                .list();
        return rack.findAll(codes).stream()
                .sorted(Comparator.comparing(Piece::since).thenComparing(Piece::code))
                .toList();
    }
}
