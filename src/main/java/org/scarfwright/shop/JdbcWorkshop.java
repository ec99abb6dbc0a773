package org.scarfwright.shop;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.web.ConflictException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcWorkshop implements WorkshopBook {
    private static final String GLUE = "select version, code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths,"
            + " open_minutes, common_practice from glue";

    private final JdbcClient jdbc;

    JdbcWorkshop(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public VersionedWorkshop workshop() {
        Map<DayOfWeek, List<Stretch>> hours = new EnumMap<>(DayOfWeek.class);
        jdbc.sql("select weekday, from_minute, to_minute from opening order by weekday, from_minute")
                .query(row -> {
                    hours.computeIfAbsent(DayOfWeek.of(row.getInt("weekday")), d -> new ArrayList<>())
                            .add(new Stretch(time(row.getInt("from_minute")), time(row.getInt("to_minute"))));
                });
        Map<StepKind, Integer> minutes = new EnumMap<>(StepKind.class);
        Set<StepKind> keepsMinutes = EnumSet.noneOf(StepKind.class);
        jdbc.sql("select kind, minutes, learns from step_minutes order by kind").query(row -> {
            StepKind kind = StepKind.valueOf(row.getString("kind"));
            minutes.put(kind, row.getInt("minutes"));
            if (!row.getBoolean("learns")) {
                keepsMinutes.add(kind);
            }
        });
        return jdbc.sql("select version, hands, people, clamp_sets, celsius_tenths, glue_code, set_up_minutes"
                        + " from workshop where id = 1")
                .query((row, n) -> new VersionedWorkshop(
                        row.getLong("version"),
                        new Workshop(
                                hours,
                                row.getInt("hands"),
                                row.getString("people"),
                                row.getInt("clamp_sets"),
                                decimal(row.getInt("celsius_tenths")),
                                Optional.ofNullable(row.getString("glue_code")),
                                row.getInt("set_up_minutes"),
                                minutes,
                                keepsMinutes)))
                .single();
    }

    @Override
    @Transactional
    public boolean change(long seenVersion, Workshop w) {
        boolean seen = jdbc.sql("update workshop set version = version + 1, hands = :hands, people = :people,"
                                + " clamp_sets = :clamps, celsius_tenths = :celsius, glue_code = :glue,"
                                + " set_up_minutes = :setUp where id = 1 and version = :seen")
                        .param("hands", w.hands())
                        .param("people", w.people())
                        .param("clamps", w.clampSets())
                        .param("celsius", tenths(w.celsius()))
                        .param("glue", w.glue().orElse(null))
                        .param("setUp", w.setUpMinutes())
                        .param("seen", seenVersion)
                        .update()
                == 1;
        if (!seen) {
            return false;
        }
        w.minutes()
                .forEach((kind, minutes) -> jdbc.sql(
                                "update step_minutes set minutes = :minutes, learns = :learns where kind = :kind")
                        .param("minutes", minutes)
                        .param("learns", !w.keepsMinutes().contains(kind))
                        .param("kind", kind.name())
                        .update());
        jdbc.sql("delete from opening").update();
        w.hours()
                .forEach((day, stretches) -> stretches.forEach(
                        s -> jdbc.sql("insert into opening (weekday, from_minute, to_minute) values (:day, :from, :to)")
                                .param("day", day.getValue())
                                .param("from", s.from().toSecondOfDay() / 60)
                                .param("to", s.toMinute())
                                .update()));
        return true;
    }

    @Override
    @Transactional(readOnly = true)
    public List<DayOff> daysOff() {
        return jdbc.sql("select closed_on, word from day_off order by closed_on")
                .query((row, n) -> new DayOff(row.getObject("closed_on", LocalDate.class), row.getString("word")))
                .list();
    }

    @Override
    @Transactional
    public boolean addDayOff(DayOff off) {
        if (daysOff().stream().anyMatch(d -> d.day().equals(off.day()))) {
            return false;
        }
        try {
            jdbc.sql("insert into day_off (closed_on, word) values (:day, :word)")
                    .param("day", off.day())
                    .param("word", off.word())
                    .update();
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody else took that day off at the same moment.");
        }
        return true;
    }

    @Override
    @Transactional
    public boolean removeDayOff(LocalDate day) {
        return jdbc.sql("delete from day_off where closed_on = :day")
                        .param("day", day)
                        .update()
                == 1;
    }

    @Override
    @Transactional(readOnly = true)
    public List<VersionedGlue> glues() {
        return jdbc.sql(GLUE + " order by name, code")
                .query((row, n) -> glueOf(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<VersionedGlue> glue(String code) {
        return jdbc.sql(GLUE + " where code = :code order by code")
                .param("code", code)
                .query((row, n) -> glueOf(row))
                .optional();
    }

    @Override
    @Transactional
    public boolean addGlue(Glue glue) {
        if (glue(glue.code()).isPresent()) {
            return false;
        }
        try {
            with(
                            jdbc.sql("insert into glue (code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths,"
                                    + " open_minutes, common_practice)"
                                    + " values (:code, :name, :clamp, :cure, :lowest, :open, :common)"),
                            glue)
                    .update();
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody else added a glue of that code at the same moment.");
        }
        return true;
    }

    @Override
    @Transactional
    public boolean changeGlue(long seenVersion, Glue glue) {
        return with(
                                jdbc.sql("update glue set version = version + 1, name = :name, clamp_minutes = :clamp,"
                                        + " cure_minutes = :cure, lowest_celsius_tenths = :lowest, open_minutes = :open,"
                                        + " common_practice = :common where code = :code and version = :seen"),
                                glue)
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    @Override
    @Transactional
    public boolean removeGlue(long seenVersion, String code) {
        if (workshop().workshop().glue().filter(code::equals).isPresent()) {
            throw new ConflictException(
                    "This is the shop’s own glue, which every design without one is glued with. Choose another first.");
        }
        try {
            return jdbc.sql("delete from glue where code = :code and version = :seen")
                            .param("code", code)
                            .param("seen", seenVersion)
                            .update()
                    == 1;
        } catch (DataIntegrityViolationException e) {
            throw new ConflictException("A design is glued with this glue. Choose another for it first.");
        }
    }

    private static StatementSpec with(StatementSpec statement, Glue glue) {
        return statement
                .param("code", glue.code())
                .param("name", glue.name())
                .param("clamp", glue.clamp().toMinutes())
                .param("cure", glue.cure().toMinutes())
                .param("lowest", tenths(glue.lowestCelsius()))
                .param("open", glue.openMinutes())
                .param("common", glue.commonPractice());
    }

    private static VersionedGlue glueOf(ResultSet row) throws SQLException {
        return new VersionedGlue(
                row.getLong("version"),
                new Glue(
                        row.getString("code"),
                        row.getString("name"),
                        Duration.ofMinutes(row.getInt("clamp_minutes")),
                        Duration.ofMinutes(row.getInt("cure_minutes")),
                        decimal(row.getInt("lowest_celsius_tenths")),
                        row.getInt("open_minutes"),
                        row.getBoolean("common_practice")));
    }

    private static LocalTime time(int minute) {
        return LocalTime.ofSecondOfDay(minute % (24 * 60) * 60L);
    }

    private static int tenths(BigDecimal value) {
        return value.movePointRight(1).setScale(0, RoundingMode.HALF_UP).intValueExact();
    }

    private static BigDecimal decimal(int tenths) {
        return BigDecimal.valueOf(tenths, 1);
    }
}
