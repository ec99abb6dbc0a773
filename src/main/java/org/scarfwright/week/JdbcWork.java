package org.scarfwright.week;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.ShopContents;
import org.scarfwright.shop.StepKind;
import org.scarfwright.week.LaidWeek.Laying;
import org.scarfwright.week.LaidWeek.Level;
import org.scarfwright.week.LaidWeek.Remark;
import org.scarfwright.week.LaidWeek.SetUp;
import org.scarfwright.week.WorkStep.Neck;
import org.scarfwright.week.WorkStep.Needs;
import org.scarfwright.week.WorkStep.Part;
import org.scarfwright.week.WorkStep.Progress;
import org.scarfwright.week.WorkStep.Span;
import org.scarfwright.week.WorkStep.State;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Rows of the work. Every method belongs into its caller's transaction. */
@Repository
class JdbcWork implements ShopContents {
    private static final String SELECT =
            "select id, version, plan_id, week, order_code, neck_number, place, kind, part,"
                    + " piece_code, machine, set_up, minutes, planned_start, planned_end, pinned_day, state, started_at, done_at,"
                    + " who, done_minutes, clamped_until, cured_at, reason from work_step";
    private static final String ORDER = " order by plan_id, order_code, neck_number, place";

    /** What is not done, said so that an index over states finds it. */
    private static final String OPEN = "state in ('OPEN', 'STARTED', 'STOPPED')";

    private final JdbcClient jdbc;

    JdbcWork(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public boolean isEmpty() {
        return jdbc.sql("select count(*) from work_step").query(Long.class).single() == 0;
    }

    Optional<WorkStep> find(long id) {
        return jdbc.sql(SELECT + " where id = :id" + ORDER)
                .param("id", id)
                .query((row, n) -> stepOf(row))
                .optional();
    }

    List<WorkStep> ofPlan(long plan) {
        return jdbc.sql(SELECT + " where plan_id = :plan" + ORDER)
                .param("plan", plan)
                .query((row, n) -> stepOf(row))
                .list();
    }

    boolean hasSteps(long plan) {
        return jdbc.sql("select exists (select 1 from work_step where plan_id = :plan)")
                .param("plan", plan)
                .query(Boolean.class)
                .single();
    }

    /** Plans that have steps which are not done, earliest first. */
    List<Long> unfinishedPlans() {
        return jdbc.sql("select distinct plan_id from work_step where " + OPEN + " order by plan_id")
                .query(Long.class)
                .list();
    }

    /** Steps that are planned, or were done, in this time. Asked for one after the other, so that each has its index. */
    List<WorkStep> between(Instant from, Instant to) {
        return Stream.concat(doneBetween(from, to).stream(), plannedBetween(from, to).stream())
                .toList();
    }

    List<WorkStep> doneBetween(Instant from, Instant to) {
        return when("done_at >= :from and done_at < :to", from, to);
    }

    /** Steps that are planned in this time and not done. */
    List<WorkStep> plannedBetween(Instant from, Instant to) {
        return when(OPEN + " and planned_start >= :from and planned_start < :to", from, to);
    }

    /** Steps done in this time that were begun before it, or may have been: nobody noted it, and none lasts longer than that. */
    List<WorkStep> begunBefore(Instant from, Instant to) {
        return ofIds(jdbc.sql("select id from work_step where done_at >= :from and done_at < :to"
                        + " and (started_at < :from or started_at is null and done_at < :longest) order by id")
                .param("from", at(from))
                .param("longest", at(from.plus(Bench.LONGEST, ChronoUnit.MINUTES)))
                .param("to", at(to))
                .query(Long.class)
                .list());
    }

    /**
     * Gluing of joints that were in clamps when this span began or ended, and taking the clamps off them.
     *
     * @param earliest when a joint was glued at the earliest
     */
    List<WorkStep> clampedAt(Instant from, Instant to, Instant earliest) {
        return ofIds(jdbc
                .sql("select g.id, u.id from work_step g join work_step u on u.plan_id = g.plan_id"
                        + " and u.order_code = g.order_code and u.neck_number = g.neck_number where g.kind = 'GLUE'"
                        + " and g.done_at >= :earliest and g.done_at < :to and u.kind = 'UNCLAMP'"
                        + " and (u.done_at is null or u.done_at >= :to or g.done_at < :from and u.done_at >= :from)"
                        + " order by g.done_at, g.id")
                .param("earliest", at(earliest))
                .param("from", at(from))
                .param("to", at(to))
                .query((row, n) -> List.of(row.getLong(1), row.getLong(2)))
                .list()
                .stream()
                .flatMap(List::stream)
                .toList());
    }

    /** Their ids come off an index alone; these are few of those it goes through. */
    private List<WorkStep> ofIds(List<Long> ids) {
        return ids.isEmpty()
                ? List.of()
                : jdbc.sql(SELECT + " where id in (:ids)" + ORDER)
                        .param("ids", ids)
                        .query((row, n) -> stepOf(row))
                        .list();
    }

    private List<WorkStep> when(String condition, Instant from, Instant to) {
        return jdbc.sql(SELECT + " where " + condition + ORDER)
                .param("from", at(from))
                .param("to", at(to))
                .query((row, n) -> stepOf(row))
                .list();
    }

    /** When the first step starts that is planned from this instant on and not done. */
    Optional<Instant> firstUndoneFrom(Instant instant) {
        return jdbc.sql("select planned_start from work_step where state <> 'DONE' and planned_start >= :from"
                        + " order by planned_start, id fetch first row only")
                .param("from", at(instant))
                .query(OffsetDateTime.class)
                .optional()
                .map(OffsetDateTime::toInstant);
    }

    /** What was planned before this instant and is not done. */
    List<WorkStep> undoneBefore(Instant instant) {
        return jdbc.sql(SELECT + " where " + OPEN + " and planned_start < :to" + ORDER)
                .param("to", at(instant))
                .query((row, n) -> stepOf(row))
                .list();
    }

    /**
     * Hands-on minutes people recorded of a kind of step, the latest first.
     *
     * @param most how many at the most
     */
    List<Integer> recorded(StepKind kind, int most) {
        return jdbc.sql("select done_minutes from work_step where kind = :kind and state = 'DONE'"
                        + " and done_minutes is not null order by kind, done_at desc, id desc fetch first " + most
                        + " rows only")
                .param("kind", kind.name())
                .query(Integer.class)
                .list();
    }

    void insert(WorkStep s) {
        jdbc.sql(
                        "insert into work_step (plan_id, week, order_code, neck_number, place, kind, part, piece_code, machine,"
                                + " set_up, minutes, state) values (:plan, :week, :order, :number, :place, :kind, :part, :piece,"
                                + " :machine, :setUp, :minutes, 'OPEN')")
                .param("plan", s.neck().plan())
                .param("week", s.neck().week())
                .param("order", s.neck().order())
                .param("number", s.neck().number())
                .param("place", s.place())
                .param("kind", s.kind().name())
                .param("part", s.part().name())
                .param("piece", s.needs().piece().orElse(null))
                .param("machine", s.needs().machine().orElse(null))
                .param("setUp", s.needs().setUp().orElse(null))
                .param("minutes", s.minutes())
                .update();
    }

    /** Steps of a plan that does not hold any more and that nobody began. */
    void deletePlan(long plan) {
        jdbc.sql("delete from work_step where plan_id = :plan and not exists (select 1 from work_step s"
                        + " where s.plan_id = :plan and s.state <> 'OPEN')")
                .param("plan", plan)
                .update();
    }

    void plan(long id, int minutes, @Nullable Span planned) {
        jdbc.sql("update work_step set minutes = :minutes, planned_start = :start, planned_end = :end where id = :id")
                .param("minutes", minutes)
                .param("start", planned == null ? null : at(planned.start()))
                .param("end", planned == null ? null : at(planned.end()))
                .param("id", id)
                .update();
    }

    /** Takes a step off its day, its pin too. */
    void unplan(long id) {
        jdbc.sql("update work_step set planned_start = null, planned_end = null, pinned_day = null,"
                        + " version = version + 1 where id = :id")
                .param("id", id)
                .update();
    }

    /** Has a piece flattened for another neck than it was, before it is cut for that one. */
    void handOver(WorkStep flatten, WorkStep cut) {
        jdbc.sql("update work_step set place = place + 1 where plan_id = :plan and order_code = :order"
                        + " and neck_number = :number")
                .param("plan", cut.neck().plan())
                .param("order", cut.neck().order())
                .param("number", cut.neck().number())
                .update();
        // What stopped the other neck does not stop this one.
        jdbc.sql("update work_step set order_code = :order, neck_number = :number, place = 1, part = :part,"
                        + " state = case when state = 'STOPPED' then 'OPEN' else state end, reason = null"
                        + " where id = :id")
                .param("order", cut.neck().order())
                .param("number", cut.neck().number())
                .param("part", cut.part().name())
                .param("id", flatten.id())
                .update();
    }

    /** What the last laying said of a neck. */
    void forgetRemarks(Neck neck) {
        jdbc.sql("delete from laid_remark where order_code = :order and neck_number = :number")
                .param("order", neck.order())
                .param("number", neck.number())
                .update();
    }

    void pin(long id, @Nullable LocalDate day) {
        jdbc.sql("update work_step set pinned_day = :day, version = version + 1 where id = :id")
                .param("day", day)
                .param("id", id)
                .update();
    }

    /** @return false, and nothing changed, when somebody changed the step since that version */
    boolean progress(WorkStep seen, Progress p) {
        return jdbc.sql("update work_step set version = version + 1, state = :state, started_at = :started,"
                                + " done_at = :done, who = :who, done_minutes = :minutes, clamped_until = :clamped,"
                                + " cured_at = :cured, reason = :reason where id = :id and version = :seen")
                        .param("state", p.state().name())
                        .param("started", at(p.startedAt()))
                        .param("done", at(p.doneAt()))
                        .param("who", p.who().orElse(null))
                        .param("minutes", p.minutes().isPresent() ? p.minutes().getAsInt() : null)
                        .param("clamped", at(p.clampedUntil()))
                        .param("cured", at(p.curedAt()))
                        .param("reason", p.reason().orElse(null))
                        .param("id", seen.id())
                        .param("seen", seen.version())
                        .update()
                == 1;
    }

    /** Clears the plan of what is not done in weeks after this one. */
    void clearAfter(IsoWeek week) {
        jdbc.sql("update work_step set planned_start = null, planned_end = null where state <> 'DONE' and week > :week")
                .param("week", week.toString())
                .update();
    }

    Optional<Laying> laying() {
        return jdbc.sql("select week, made_at, engine, seconds_thousandths, note, late, late_bound, set_ups,"
                        + " set_ups_bound, days, days_bound from laying where id = 1")
                .query((row, n) -> new Laying(
                        IsoWeek.parse(row.getString("week")),
                        instant(row, "made_at"),
                        row.getString("engine"),
                        row.getInt("seconds_thousandths"),
                        row.getString("note"),
                        List.of(
                                new Level("late", row.getLong("late"), row.getLong("late_bound")),
                                new Level("setUps", row.getLong("set_ups"), row.getLong("set_ups_bound")),
                                new Level("days", row.getLong("days"), row.getLong("days_bound")))))
                .optional();
    }

    /** Replaces the schedule; set-ups that were made before it stay. */
    void keep(Laying laying, List<SetUp> setUps, List<Remark> remarks) {
        jdbc.sql("delete from laying").update();
        jdbc.sql("delete from laid_remark").update();
        jdbc.sql("delete from laid_set_up where ends > :now")
                .param("now", at(laying.madeAt()))
                .update();
        jdbc.sql("insert into laying (id, week, made_at, engine, seconds_thousandths, note, late, late_bound, set_ups,"
                        + " set_ups_bound, days, days_bound) values (1, :week, :madeAt, :engine, :ms, :note, :late,"
                        + " :lateBound, :setUps, :setUpsBound, :days, :daysBound)")
                .param("week", laying.week().toString())
                .param("madeAt", at(laying.madeAt()))
                .param("engine", laying.engine())
                .param("ms", laying.milliseconds())
                .param("note", laying.note())
                .param("late", laying.levels().get(0).value())
                .param("lateBound", laying.levels().get(0).bound())
                .param("setUps", laying.levels().get(1).value())
                .param("setUpsBound", laying.levels().get(1).bound())
                .param("days", laying.levels().get(2).value())
                .param("daysBound", laying.levels().get(2).bound())
                .update();
        setUps.forEach(s -> jdbc.sql("insert into laid_set_up (machine, starts, name, ready, ends)"
                        + " values (:machine, :starts, :name, :ready, :ends)")
                .param("machine", s.machine())
                .param("starts", at(s.start()))
                .param("name", s.name())
                .param("ready", at(s.ready()))
                .param("ends", at(s.end()))
                .update());
        remarks.forEach(r -> jdbc.sql("insert into laid_remark (order_code, neck_number, kind, sentence)"
                        + " values (:order, :number, :kind, :sentence)")
                .param("order", r.order())
                .param("number", r.number())
                .param("kind", r.kind().name())
                .param("sentence", r.sentence())
                .update());
    }

    /** Tells more of how good the schedule is that holds; its values stay. */
    void keepBounds(List<Level> levels) {
        jdbc.sql("update laying set late_bound = :late, set_ups_bound = :setUps, days_bound = :days where id = 1")
                .param("late", levels.get(0).bound())
                .param("setUps", levels.get(1).bound())
                .param("days", levels.get(2).bound())
                .update();
    }

    List<SetUp> setUps(Instant from, Instant to) {
        return jdbc.sql("select machine, starts, name, ready, ends from laid_set_up"
                        + " where starts >= :from and starts < :to order by starts, machine")
                .param("from", at(from))
                .param("to", at(to))
                .query((row, n) -> new SetUp(
                        row.getString("machine"),
                        row.getString("name"),
                        instant(row, "starts"),
                        instant(row, "ready"),
                        instant(row, "ends")))
                .list();
    }

    List<Remark> remarks() {
        return jdbc.sql("select order_code, neck_number, kind, sentence from laid_remark"
                        + " order by order_code, neck_number, kind")
                .query((row, n) -> new Remark(
                        row.getString("order_code"),
                        row.getInt("neck_number"),
                        Remark.Kind.valueOf(row.getString("kind")),
                        row.getString("sentence")))
                .list();
    }

    Optional<String> glueOf(String design) {
        return jdbc.sql("select glue_code from design_glue where design_code = :design")
                .param("design", design)
                .query(String.class)
                .optional();
    }

    void chooseGlue(String design, Optional<String> glue) {
        jdbc.sql("delete from design_glue where design_code = :design")
                .param("design", design)
                .update();
        glue.ifPresent(code -> jdbc.sql("insert into design_glue (design_code, glue_code) values (:design, :glue)")
                .param("design", design)
                .param("glue", code)
                .update());
    }

    /** By position: a full week reads thousands of values, and finding each by its name takes longer than reading it. */
    private static WorkStep stepOf(ResultSet row) throws SQLException {
        Instant start = instantOrNull(row, 14);
        return new WorkStep(
                row.getLong(1),
                row.getLong(2),
                new Neck(row.getLong(3), row.getString(4), row.getString(5), row.getInt(6)),
                row.getInt(7),
                StepKind.valueOf(row.getString(8)),
                Part.valueOf(row.getString(9)),
                new Needs(
                        Optional.ofNullable(row.getString(10)),
                        Optional.ofNullable(row.getString(11)),
                        Optional.ofNullable(row.getString(12))),
                row.getInt(13),
                start == null ? Optional.empty() : Optional.of(new Span(start, instant(row, 15))),
                Optional.ofNullable(row.getObject(16, LocalDate.class)),
                progressOf(row));
    }

    private static Progress progressOf(ResultSet row) throws SQLException {
        Integer minutes = row.getObject(21, Integer.class);
        return new Progress(
                State.valueOf(row.getString(17)),
                Optional.ofNullable(instantOrNull(row, 18)),
                Optional.ofNullable(instantOrNull(row, 19)),
                Optional.ofNullable(row.getString(20)),
                minutes == null ? OptionalInt.empty() : OptionalInt.of(minutes),
                Optional.ofNullable(instantOrNull(row, 22)),
                Optional.ofNullable(instantOrNull(row, 23)),
                Optional.ofNullable(row.getString(24)));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return instant(row, row.findColumn(column));
    }

    private static Instant instant(ResultSet row, int column) throws SQLException {
        return Objects.requireNonNull(instantOrNull(row, column));
    }

    private static @Nullable Instant instantOrNull(ResultSet row, int column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    private static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    private static @Nullable OffsetDateTime at(Optional<Instant> instant) {
        return instant.map(JdbcWork::at).orElse(null);
    }
}
