package org.scarfwright.rack;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcReadingTrend implements ReadingTrend {
    private static final String PIECE = " join piece p on p.id = r.piece_id";
    private static final String DAYS = " and r.read_on between :first and :last";
    private static final String NEWEST = " order by r.read_on desc, r.id desc";
    private static final int AT_ONCE = 5000;

    private final JdbcClient jdbc;
    private final PieceTexts texts;

    JdbcReadingTrend(JdbcClient jdbc, PieceTexts texts) {
        this.jdbc = jdbc;
        this.texts = texts;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Month> months(Question question) {
        String value = "r." + column(question.measure());
        return narrowed(
                        "select extract(year from r.read_on) as in_year, extract(month from r.read_on) as in_month,"
                                + " count(*) as readings, min(" + value
                                + ") as least, percentile_cont(0.5) within group"
                                + " (order by " + value + ") as middle, max(" + value + ") as most from "
                                + table(question) + " r" + (isNarrow(question) ? PIECE : "") + " where 1 = 1"
                                + condition(question)
                                + " group by extract(year from r.read_on), extract(month from r.read_on)"
                                + " order by in_year, in_month",
                        question)
                .query((rs, n) -> new Month(
                        YearMonth.of(rs.getInt("in_year"), rs.getInt("in_month")),
                        rs.getLong("readings"),
                        rs.getLong("least"),
                        rs.getBigDecimal("middle"),
                        rs.getLong("most")))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Reading> readings(Question question, @Nullable YearMonth month, int most) {
        String days = month == null ? "" : DAYS;
        String newest = NEWEST + " fetch first " + most + " rows only";
        // Of all pieces the newest are picked off the index of days before their pieces are looked up.
        String from = isNarrow(question)
                ? table(question)
                : "(select * from " + table(question) + " r where 1 = 1" + days + newest + ")";
        return readings(from, question, month, newest)
                .query(JdbcReadingTrend::reading)
                .list();
    }

    /**
     * Month by month: a list of all readings of many years would be laid on the disk to put it in order. Codes of all pieces are in
     * memory; looking each up would take as long as reading the readings.
     */
    @Override
    @Transactional(readOnly = true)
    public void each(Question question, @Nullable YearMonth month, Consumer<Reading> taker) {
        if (month != null || isNarrow(question)) {
            readings(table(question), question, month, NEWEST)
                    .withFetchSize(AT_ONCE)
                    .query(rs -> {
                        taker.accept(reading(rs, 0));
                    });
            return;
        }
        Map<Long, String> codes = texts.codes();
        LocalDate last = end(question, "max");
        LocalDate first = end(question, "min");
        if (last == null || first == null) {
            return;
        }
        for (YearMonth at = YearMonth.from(last); !at.isBefore(YearMonth.from(first)); at = at.minusMonths(1)) {
            jdbc.sql("select r.piece_id, r.read_on, r." + column(question.measure()) + " from " + table(question)
                            + " r where 1 = 1" + DAYS + NEWEST)
                    .param("first", at.atDay(1))
                    .param("last", at.atEndOfMonth())
                    .withFetchSize(AT_ONCE)
                    .query(rs -> {
                        String code = codes.get(rs.getLong(1));
                        // Without one it is of a piece that was added meanwhile.
                        if (code != null) {
                            taker.accept(new Reading(code, rs.getObject(2, LocalDate.class), rs.getLong(3)));
                        }
                    });
        }
    }

    private @Nullable LocalDate end(Question question, String which) {
        return jdbc.sql("select " + which + "(read_on) from " + table(question))
                .query(LocalDate.class)
                .optional()
                .orElse(null);
    }

    private StatementSpec readings(String from, Question question, @Nullable YearMonth month, String order) {
        StatementSpec statement = narrowed(
                "select p.code, r.read_on, r." + column(question.measure()) + " as reading from " + from + " r" + PIECE
                        + " where 1 = 1" + condition(question) + (month == null ? "" : DAYS) + order,
                question);
        return month == null
                ? statement
                : statement.param("first", month.atDay(1)).param("last", month.atEndOfMonth());
    }

    private static Reading reading(ResultSet rs, int number) throws SQLException {
        return new Reading(rs.getString(1), rs.getObject(2, LocalDate.class), rs.getLong(3));
    }

    private static String table(Question question) {
        return question.measure() == Measure.MOISTURE ? "moisture_reading" : "warp_reading";
    }

    private static boolean isNarrow(Question question) {
        return question.wood() != null || question.lot() != null || question.piece() != null;
    }

    private static String condition(Question question) {
        return (question.wood() == null ? "" : " and p.species_id = :wood")
                + (question.lot() == null ? "" : " and p.lot_id in (select id from lot where code_key = :lot)")
                + (question.piece() == null ? "" : " and p.code = :piece");
    }

    private StatementSpec narrowed(String sql, Question question) {
        StatementSpec statement = jdbc.sql(sql);
        if (question.wood() != null) {
            statement = statement.param("wood", question.wood());
        }
        if (question.lot() != null) {
            statement = statement.param("lot", PieceTable.key(question.lot()));
        }
        return question.piece() == null ? statement : statement.param("piece", question.piece());
    }

    private static String column(Measure measure) {
        return switch (measure) {
            case MOISTURE -> "mc_hundredths";
            case BOW -> "bow_um";
            case CROOK -> "crook_um";
            case CUP -> "cup_um";
            case TWIST -> "twist_um";
        };
    }

    @Override
    @Transactional(readOnly = true)
    public List<WoodName> woods() {
        return jdbc.sql(
                        "select s.id, s.common_name from species s"
                                + " where exists (select 1 from piece p where p.species_id = s.id) order by s.common_name, s.id")
                .query((rs, n) -> new WoodName(rs.getString("id"), rs.getString("common_name")))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> lot(String typed) {
        return jdbc.sql("select code from lot where code_key = :key order by id")
                .param("key", PieceTable.key(typed))
                .query(String.class)
                .optional();
    }
}
