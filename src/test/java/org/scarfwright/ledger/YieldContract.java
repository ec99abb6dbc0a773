package org.scarfwright.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.scarfwright.ledger.Yield.By;
import org.scarfwright.ledger.Yield.Line;
import org.scarfwright.ledger.Yield.Question;
import org.scarfwright.ledger.Yield.Report;
import org.scarfwright.ledger.Yield.Wanted;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.rack.Cutting;
import org.scarfwright.rack.Doing;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceState;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** What became of the wood, against a small shop worked by hand and against sums by the database. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class YieldContract {
    private static final double TO_A_MILLIONTH = 1e-6;
    private static final Question ALL = new Question(By.WEEK, null, null);

    @Autowired
    Yield yield;

    @Autowired
    NeckCosts costs;

    @Autowired
    YieldBook book;

    @Autowired
    Ledger ledger;

    @Autowired
    Pieces pieces;

    @Autowired
    Cutting cutting;

    @Autowired
    Losses losses;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private static Volume cm3(String cm3) {
        return Volume.parseCm3(cm3);
    }

    private static Cutting.Size size(String length, String width, String thickness) {
        return new Cutting.Size(
                TypedLength.parse(length, LengthUnit.MM),
                TypedLength.parse(width, LengthUnit.MM),
                TypedLength.parse(thickness, LengthUnit.MM));
    }

    private Piece add(String code, String wood, String lot, String length) {
        return add(code, wood, lot, length, "10.00");
    }

    private Piece add(String code, String wood, String lot, String length, String cost) {
        PieceCells cells = new PieceCells()
                .put(PieceField.CODE, code)
                .put(PieceField.WOOD, wood)
                .put(PieceField.LENGTH, length)
                .put(PieceField.WIDTH, "70")
                .put(PieceField.THICKNESS, "22")
                .put(PieceField.COST, cost);
        return pieces.add(lot.isEmpty() ? cells : cells.put(PieceField.LOT, lot), LengthUnit.MM);
    }

    private static Outcome part(Piece piece, String order, String design, boolean head, String cm3, String planned) {
        return Outcome.part(
                piece.code(),
                new Outcome.NeckPart(7, order, 1, design, head),
                new Outcome.Size(Length.ofMm(100), Length.ofMm(50), Length.ofMm(20)),
                cm3(cm3),
                cm3(planned));
    }

    private static Outcome waste(Piece piece, Outcome.Cause cause, String cm3, String planned) {
        return Outcome.waste(piece.code(), cause, cm3(cm3), planned.isEmpty() ? null : cm3(planned));
    }

    private long cut(Piece piece, String who, List<Cutting.Rest> rests, Outcome... outcomes) {
        cutting.cut(new Cutting.Cut(
                piece, Optional.empty(), rests, List.of(outcomes), Doing.of(PieceChanged.Kind.CUT, who, "")));
        return newest();
    }

    private long newest() {
        return ledger.newest(null, 1).acts().get(0).entry();
    }

    /** The clock of these tests is the machine's, so the day is set afterwards. */
    private void happened(long entry, String day) {
        jdbc.sql("update entry set acted_at = :at where id = :id")
                .param(
                        "at",
                        LocalDate.parse(day)
                                .atTime(12, 0)
                                .atZone(clock.getZone())
                                .toInstant()
                                .atOffset(ZoneOffset.UTC))
                .param("id", entry)
                .update();
        book.makeAnew();
    }

    /**
     * The shop.
     *
     * <p>Monday 2 November, Ada: Y-1, 640 × 70 × 22 mm = 985.6 cm³, is used up. It gives a neck of 500 cm³ for D-1, a head of
     * 100 cm³ for D-2, a rest of 200 × 70 × 22 mm = 308 cm³, 20 cm³ of kerf where 15 were planned, and 40 cm³ of end trim as
     * planned. Unexplained: 985.6 − 500 − 100 − 308 − 20 − 40 = 17.6 cm³.
     *
     * <p>Sunday 8 November, Kit: Y-2, 300 × 70 × 22 mm = 462 cm³, is used up: a head of 400 cm³ for D-1 where 410 were planned, and
     * 62 cm³ of planing where 52 were planned.
     *
     * <p>Monday 9 November, Kit: Y-3, 100 × 70 × 22 mm = 154 cm³, is scrapped. Y-4 is sold. Y-5 is cut, and the cut taken back.
     */
    private void shop() {
        Piece y1 = add("Y-1", "maple_sugar", "L-1", "640");
        happened(
                cut(
                        y1,
                        "Ada",
                        List.of(new Cutting.Rest(size("200", "70", "22"), "Y-1R", null, null, "", cm3("308"))),
                        part(y1, "O-1", "D-1", false, "500", "500"),
                        part(y1, "O-2", "D-2", true, "100", "100"),
                        waste(y1, Outcome.Cause.KERF, "20", "15"),
                        waste(y1, Outcome.Cause.TRIM, "40", "40")),
                "2026-11-02");
        Piece y2 = add("Y-2", "walnut_black", "", "300");
        happened(
                cut(
                        y2,
                        "Kit",
                        List.of(),
                        part(y2, "O-1", "D-1", true, "400", "410"),
                        waste(y2, Outcome.Cause.PLANING, "62", "52")),
                "2026-11-08");
        Piece y3 = add("Y-3", "maple_sugar", "L-1", "100");
        cutting.remove(
                List.of(new Rack.PieceStamp(y3.code(), y3.version())),
                PieceState.SCRAPPED,
                Doing.of(PieceChanged.Kind.SCRAPPED, "Kit", "It split."));
        happened(newest(), "2026-11-09");
        Piece y4 = add("Y-4", "maple_sugar", "", "200");
        cutting.remove(
                List.of(new Rack.PieceStamp(y4.code(), y4.version())),
                PieceState.SOLD,
                Doing.of(PieceChanged.Kind.SOLD, "Kit", "For a box."));
        happened(newest(), "2026-11-10");
        Piece y5 = add("Y-5", "maple_sugar", "L-1", "640");
        long wrong = cut(y5, "Kit", List.of(), waste(y5, Outcome.Cause.EDGE, "985.6", "0"));
        happened(wrong, "2026-11-10");
        happened(ledger.undo(wrong, "Kit", "Another piece was meant.").id(), "2026-11-16");
    }

    private static YieldSums line(Report report, String key) {
        return report.lines().stream()
                .filter(l -> l.key().equals(key))
                .map(Line::sums)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aShopWorkedByHandByWeek() {
        shop();
        Report report = yield.report(ALL);
        assertThat(report.lines()).extracting(Line::key).containsExactly("2026-W45", "2026-W46");

        // 985.6 + 462 = 1447.6; parts 500 + 100 + 400; waste 20 + 40 + 17.6 + 62 = 139.6; 1000 + 308 + 139.6 = 1447.6
        YieldSums first = line(report, "2026-W45");
        assertThat(first.of(YieldFigure.INPUT)).isEqualTo(cm3("1447.6"));
        assertThat(first.of(YieldFigure.PARTS)).isEqualTo(cm3("1000"));
        assertThat(first.of(YieldFigure.RESTS)).isEqualTo(cm3("308"));
        assertThat(first.of(YieldFigure.KERF)).isEqualTo(cm3("20"));
        assertThat(first.of(YieldFigure.TRIM)).isEqualTo(cm3("40"));
        assertThat(first.of(YieldFigure.PLANING)).isEqualTo(cm3("62"));
        assertThat(first.of(YieldFigure.UNEXPLAINED)).isEqualTo(cm3("17.6"));
        assertThat(first.of(YieldFigure.WASTE)).isEqualTo(cm3("139.6"));
        // 1000 / (1447.6 − 308) = 1000 / 1139.6
        assertThat(first.netYield().orElseThrow()).isCloseTo(0.877501, within(TO_A_MILLIONTH));
        // 1308 / 1447.6
        assertThat(first.recovery().orElseThrow()).isCloseTo(0.903565, within(TO_A_MILLIONTH));
        // Parts 1000 of 1010 planned; waste and unexplained 20 + 40 + 62 + 17.6 of 15 + 40 + 52.
        assertThat(first.overPlan(YieldFigure.PARTS)).isEqualTo(Volume.ZERO.minus(cm3("10")));
        assertThat(first.overPlan(YieldFigure.WASTE)).isEqualTo(cm3("32.6"));

        YieldSums second = line(report, "2026-W46");
        assertThat(second.of(YieldFigure.INPUT)).isEqualTo(cm3("154"));
        assertThat(second.of(YieldFigure.SCRAPPED)).isEqualTo(cm3("154"));
        assertThat(second.netYield().orElseThrow()).isZero();
        assertThat(second.rescue()).isEmpty();

        // Input 1601.6: 1000 is 62.4376 %, 308 19.2308, 20 1.2488, 40 2.4975, 62 3.8711, 154 9.6154, 17.6 1.0989.
        // Rounded down
        // they are 99.96; the four hundredths that are over go to the largest of what was cut off:
        // 1.0989 (.89), 1.2488 (.88), 62.4376 (.76), 2.4975 (.75), 9.6154 (.54), 3.8711 (.11), 19.2308 (.08).
        assertThat(report.total().flow())
                .extracting(s -> s.figure() + " " + s.hundredths())
                .containsExactly(
                        "PARTS 6244",
                        "RESTS 1923",
                        "KERF 125",
                        "TRIM 250",
                        "PLANING 387",
                        "SCRAPPED 961",
                        "UNEXPLAINED 110");
        assertThat(report.closes()).isTrue();
        assertThat(report.taken()).isEqualTo(cm3("1601.6"));
    }

    @Test
    void byDesignWhatWasLostBesidePartsIsSharedByTheirVolume() {
        shop();
        Report report = yield.report(new Question(By.DESIGN, null, null));
        assertThat(report.lines()).extracting(Line::key).containsExactly("D-1", "D-2", "");
        // Of Y-1 the neck is 500 and the head 100: 5/6 and 1/6. 20 cm³ of kerf are 20e12 µm³: 16,666,666,666,666.67 and
        // 3,333,333,333,333.33; the one that is over goes to the .67.
        assertThat(line(report, "D-1").of(YieldFigure.KERF).um3()).isEqualTo(new BigInteger("16666666666667"));
        assertThat(line(report, "D-2").of(YieldFigure.KERF).um3()).isEqualTo(new BigInteger("3333333333333"));
        assertThat(line(report, "D-1").of(YieldFigure.PARTS)).isEqualTo(cm3("900"));
        assertThat(line(report, "D-1").of(YieldFigure.PLANING)).isEqualTo(cm3("62"));
        assertThat(line(report, "").of(YieldFigure.INPUT)).isEqualTo(cm3("154"));
        // The neck of D-1 has both parts: of 10.00 for Y-1 by volume 500 : 100 : 308 it is 10 · 500 / 908 = 5.5066, and
        // all of
        // Y-2. That of D-2 lacks its neck.
        assertThat(report.necks())
                .containsExactly(new Yield.NeckCost(
                        "D-1", 1, 0, new Money(1551), new Money(1551), new Money(1551), new Money(1551)));
    }

    @Test
    void byWoodLotAndPerson() {
        shop();
        Report woods = yield.report(new Question(By.WOOD, null, null));
        assertThat(line(woods, "maple_sugar").of(YieldFigure.INPUT)).isEqualTo(cm3("1139.6"));
        assertThat(line(woods, "walnut_black").of(YieldFigure.INPUT)).isEqualTo(cm3("462"));
        Report lots = yield.report(new Question(By.LOT, null, null));
        assertThat(line(lots, "L-1").of(YieldFigure.INPUT)).isEqualTo(cm3("1139.6"));
        assertThat(line(lots, "").of(YieldFigure.INPUT)).isEqualTo(cm3("462"));
        Report people = yield.report(new Question(By.PERSON, null, null));
        assertThat(line(people, "Ada").of(YieldFigure.INPUT)).isEqualTo(cm3("985.6"));
        assertThat(line(people, "Kit").of(YieldFigure.INPUT)).isEqualTo(cm3("616"));
    }

    @Test
    void daysAreWholeAndBothEndsCount() {
        shop();
        Report sunday =
                yield.report(new Question(By.MONTH, LocalDate.parse("2026-11-08"), LocalDate.parse("2026-11-08")));
        assertThat(sunday.lines()).extracting(Line::key).containsExactly("2026-11");
        assertThat(sunday.total().of(YieldFigure.INPUT)).isEqualTo(cm3("462"));
        assertThat(sunday.closes()).isTrue();
        assertThat(yield.report(new Question(By.WEEK, LocalDate.parse("2026-11-11"), null))
                        .lines())
                .isEmpty();
    }

    @Test
    void aCutThatIsTakenBackAndMadeAgainCountsOnItsFirstDay() {
        shop();
        long undone = newest();
        ledger.undo(undone, "Kit", "It was the right one after all.");
        YieldSums second = line(yield.report(ALL), "2026-W46");
        // 154 scrapped and 985.6 of Y-5
        assertThat(second.of(YieldFigure.INPUT)).isEqualTo(cm3("1139.6"));
        assertThat(second.of(YieldFigure.EDGE)).isEqualTo(cm3("985.6"));
    }

    /** The head of D-2, 100 cm³, is written off: a part fewer and waste more, on the day it was, and no new input. */
    @Test
    void aPartThatIsWrittenOffIsWasteFromThatDay() {
        shop();
        losses.writeOff(new Losses.Neck(7, "O-2", 1), List.of(Losses.LostPart.whole(true)), "Ada", "The joint opened.");
        happened(newest(), "2026-11-17");
        YieldSums later = line(yield.report(ALL), "2026-W47");
        assertThat(later.of(YieldFigure.PARTS)).isEqualTo(Volume.ZERO.minus(cm3("100")));
        assertThat(later.of(YieldFigure.SPOILT)).isEqualTo(cm3("100"));
        assertThat(later.of(YieldFigure.INPUT)).isEqualTo(Volume.ZERO);
        assertThat(later.netYield()).isEmpty();
        Report all = yield.report(ALL);
        // 900 / (1601.6 − 308)
        assertThat(all.total().netYield().orElseThrow()).isCloseTo(0.695733, within(TO_A_MILLIONTH));
        assertThat(all.closes()).isTrue();
    }

    /** Necks of three designs from pieces of many costs, some of them unknown, against what the database adds up for each neck. */
    @Test
    void everyCostOfADesignOpensTheNecksItWasAddedUpFrom() {
        Random random = new Random(77);
        for (int i = 0; i < 24; i++) {
            Piece piece =
                    add("N-" + i, "maple_sugar", "", "640", i % 5 == 0 ? "" : "1" + random.nextInt(10) + ".3" + i % 7);
            String order = "O-" + i;
            String design = "D-" + random.nextInt(3);
            List<Outcome> outcomes = new ArrayList<>(List.of(part(piece, order, design, false, "400", "400")));
            if (i % 4 > 0) {
                outcomes.add(part(piece, order, design, true, "1" + i, "100"));
            }
            outcomes.add(waste(piece, Outcome.Cause.TRIM, "20", ""));
            happened(
                    cut(piece, "Ada", List.of(), outcomes.toArray(Outcome[]::new)),
                    "2026-1" + i % 3 + "-" + (10 + random.nextInt(20)));
        }
        for (LocalDate from : List.of(LocalDate.parse("2026-10-01"), LocalDate.parse("2026-11-15"))) {
            List<Yield.NeckCost> reported =
                    yield.report(new Question(By.DESIGN, from, null)).necks();
            assertThat(reported).hasSizeGreaterThan(1);
            for (Yield.NeckCost cost : reported) {
                NeckCosts.Necks known = necks(cost.design(), from, NeckCosts.Cost.KNOWN, NeckCosts.First.LEAST);
                assertThat(known.total())
                        .isEqualTo(cost.necks())
                        .isEqualTo(known.necks().size());
                assertThat(known.sum()).isEqualTo(cost.sum());
                assertThat(cents(known))
                        .isSorted()
                        .isEqualTo(byDatabase(known))
                        .first()
                        .isEqualTo(cost.least());
                NeckCosts.Necks most = necks(cost.design(), from, NeckCosts.Cost.KNOWN, NeckCosts.First.MOST);
                assertThat(cents(most)).first().isEqualTo(cost.most());
                NeckCosts.Necks unknown = necks(cost.design(), from, NeckCosts.Cost.UNKNOWN, NeckCosts.First.NEWEST);
                assertThat(unknown.total()).isEqualTo(cost.unknown());
                assertThat(unknown.necks())
                        .allSatisfy(neck -> assertThat(neck.cost()).isNull());
                assertThat(known.necks())
                        .allSatisfy(neck -> assertThat(neck.cost()).isNotNull());
                assertThat(necks(cost.design(), from, NeckCosts.Cost.ALL, NeckCosts.First.NEWEST)
                                .total())
                        .isEqualTo(known.total() + unknown.total());
            }
            NeckCosts.Wanted all = new NeckCosts.Wanted(null, from, null, NeckCosts.Cost.ALL, NeckCosts.First.NEWEST);
            List<NeckCosts.Neck> one = new ArrayList<>();
            costs.each(all, one::add);
            List<NeckCosts.Neck> paged = new ArrayList<>();
            for (int page = 1; page <= costs.necks(all, 1, 4).pages(); page++) {
                paged.addAll(costs.necks(all, page, 4).necks());
            }
            assertThat(paged)
                    .isEqualTo(one)
                    .hasSize(reported.stream()
                            .mapToInt(c -> c.necks() + c.unknown())
                            .sum());
        }
    }

    private NeckCosts.Necks necks(String design, LocalDate from, NeckCosts.Cost cost, NeckCosts.First first) {
        return costs.necks(new NeckCosts.Wanted(design, from, null, cost, first), 1, NeckCosts.LARGEST_PAGE);
    }

    private static List<Money> cents(NeckCosts.Necks necks) {
        return necks.necks().stream().map(n -> Objects.requireNonNull(n.cost())).toList();
    }

    private List<Money> byDatabase(NeckCosts.Necks necks) {
        return necks.necks().stream()
                .map(n -> new Money(jdbc.sql("select sum(cost_cents) from outcome where plan_id = :plan"
                                + " and order_code = :order and neck_number = :number")
                        .param("plan", n.name().plan())
                        .param("order", n.name().order())
                        .param("number", n.name().number())
                        .query(Long.class)
                        .single()))
                .toList();
    }

    @Test
    void rowsAddUpToTheFigureTheyAreBehind() {
        shop();
        for (By by : By.values()) {
            Question question = new Question(by, null, null);
            for (Line line : yield.report(question).lines()) {
                for (YieldFigure figure : YieldFigure.values()) {
                    Yield.Rows rows = yield.rows(new Wanted(question, line.key(), figure), 1, Yield.LARGEST_PAGE);
                    assertThat(rows.sum()).isEqualTo(line.sums().of(figure));
                    assertThat(rows.rows().stream().map(Yield.Row::counted).reduce(Volume.ZERO, Volume::plus))
                            .isEqualTo(line.sums().of(figure));
                }
            }
        }
        Yield.Rows second = yield.rows(new Wanted(ALL, null, YieldFigure.INPUT), 2, 3);
        assertThat(second.total()).isEqualTo(9);
        assertThat(second.pages()).isEqualTo(3);
        assertThat(second.rows()).hasSize(3);
    }

    /** ISO 8601: the days around the turn of the year, as the standard's own notes and any calendar of weeks have them. */
    @ParameterizedTest
    @CsvSource({"2020-12-31,2020-W53", "2021-01-03,2020-W53", "2021-01-04,2021-W01", "2024-12-30,2025-W01"})
    void weeksAreThoseOfTheStandard(String day, String week) {
        Piece piece = add("Y-9", "maple_sugar", "", "100");
        happened(cut(piece, "Ada", List.of(), waste(piece, Outcome.Cause.EDGE, "154", "154")), day);
        assertThat(yield.report(ALL).lines()).extracting(Line::key).containsExactly(week);
    }

    /**
     * Many cuts at random, a third of them taken back: every figure, in every grouping, equals what the database adds up over
     * all rows, those that were taken back and their opposites with them.
     */
    @ParameterizedTest
    @EnumSource(By.class)
    void everyGroupingAddsUpToWhatTheDatabaseAddsUp(By by) {
        Random random = new Random(8520 + by.name().length());
        List<Long> made = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            Piece piece = add(
                    "R-" + i,
                    random.nextBoolean() ? "maple_sugar" : "walnut_black",
                    random.nextBoolean() ? "L-" + random.nextInt(3) : "",
                    "640");
            List<Outcome> outcomes = new ArrayList<>();
            for (int p = random.nextInt(4); p > 0; p--) {
                String cm3 = String.valueOf(random.nextInt(150_000) / 1000.0);
                Outcome whole = part(piece, "O-" + i + p, "D-" + random.nextInt(3), random.nextBoolean(), cm3, cm3);
                outcomes.add(random.nextInt(4) > 0 ? whole : spoilt(whole));
            }
            for (Outcome.Cause cause : Outcome.Cause.values()) {
                if (random.nextInt(3) == 0 && cause != Outcome.Cause.SPOILT && cause != Outcome.Cause.SCRAPPED) {
                    outcomes.add(waste(
                            piece,
                            cause,
                            String.valueOf(random.nextInt(90_000) / 1000.0),
                            random.nextInt(4) == 0 ? "" : "30"));
                }
            }
            long entry = cut(piece, random.nextBoolean() ? "Ada" : "Kit", List.of(), outcomes.toArray(Outcome[]::new));
            happened(entry, "2026-1" + random.nextInt(3) + "-" + (10 + random.nextInt(20)));
            made.add(entry);
            if (random.nextInt(3) == 0) {
                ledger.undo(made.remove(random.nextInt(made.size())), "Kit", "Wrong.");
            }
        }
        Map<String, Volume> byDatabase = new HashMap<>();
        jdbc.sql("select kind, coalesce(cause, '') as cause, sum(volume_um3) as um3 from outcome group by kind, cause"
                        + " order by kind, cause")
                .query((rs, n) -> byDatabase.put(
                        rs.getString("kind") + rs.getString("cause"),
                        new Volume(rs.getBigDecimal("um3").toBigIntegerExact())))
                .list();
        Report report = yield.report(new Question(by, null, null));
        Map<YieldFigure, String> names = Map.of(
                YieldFigure.PARTS, "PART",
                YieldFigure.KERF, "WASTEKERF",
                YieldFigure.BEVEL, "WASTEBEVEL",
                YieldFigure.EDGE, "WASTEEDGE",
                YieldFigure.TRIM, "WASTETRIM",
                YieldFigure.PLANING, "WASTEPLANING",
                YieldFigure.SMALL_RESTS, "WASTEREST",
                YieldFigure.SPOILT, "WASTESPOILT",
                YieldFigure.UNEXPLAINED, "UNEXPLAINED");
        names.forEach((figure, name) -> {
            Volume lines = report.lines().stream().map(l -> l.sums().of(figure)).reduce(Volume.ZERO, Volume::plus);
            assertThat(lines).as("%s by %s", figure, by).isEqualTo(byDatabase.getOrDefault(name, Volume.ZERO));
            assertThat(report.total().of(figure)).isEqualTo(lines);
        });
        assertThat(report.closes()).isTrue();
        BigDecimal lost = jdbc.sql(
                        "select sum(volume_before_um3 - volume_after_um3) from act where kind in ('CUT', 'UNDONE')")
                .query(BigDecimal.class)
                .single();
        assertThat(report.taken().um3()).isEqualTo(lost.toBigIntegerExact());
        assertThat(book.faults()).isEmpty();
        partsOfMonths(by, random);
        rowsPageByPage(by);
        rowsBesideThePlan(by, random);
        rowsOfADot(by);
    }

    private static Outcome spoilt(Outcome part) {
        return Outcome.spoilt(
                part.fromPiece(),
                Objects.requireNonNull(part.neck()),
                Objects.requireNonNull(part.size()),
                part.volume(),
                part.planned());
    }

    /** Added up by the database, outcome by outcome: what stands of the days, with what its plan said. */
    private Volume database(String what, String which, LocalDate from, LocalDate to) {
        return new Volume(jdbc.sql(
                        "select coalesce(sum(" + what + "), 0) from outcome o join entry e on e.id = o.entry_id"
                                + " where e.undoes is null and e.acted_at >= :from and e.acted_at < :to"
                                + " and not exists (select 1 from entry u where u.undoes = e.id) and " + which)
                .param("from", from.atStartOfDay(clock.getZone()).toOffsetDateTime())
                .param("to", to.plusDays(1).atStartOfDay(clock.getZone()).toOffsetDateTime())
                .query(BigDecimal.class)
                .single()
                .toBigIntegerExact());
    }

    /** What the plans said, and what really came of it, of all lines together and line by line, row by row. */
    private void rowsBesideThePlan(By by, Random random) {
        String part = "(o.kind = 'PART' or o.cause = 'SPOILT')";
        String waste = "o.kind in ('WASTE', 'UNEXPLAINED')";
        // No plan has an unexplained difference; where there is a plan, none was planned.
        String hadPlan = "(o.planned_um3 is not null or o.kind = 'UNEXPLAINED' and exists (select 1 from outcome s"
                + " where s.entry_id = o.entry_id and s.from_piece = o.from_piece and s.planned_um3 is not null))";
        for (int i = 0; i < 6; i++) {
            LocalDate from = LocalDate.of(2026, 10, 1).plusDays(i == 0 ? 0 : random.nextInt(60));
            LocalDate to = i == 0 ? LocalDate.of(2026, 12, 31) : from.plusDays(random.nextInt(60));
            Question question = new Question(by, from, to);
            YieldSums total = yield.report(question).total();
            assertThat(total.plannedOf(YieldFigure.PARTS)).isEqualTo(database("o.planned_um3", part, from, to));
            assertThat(total.plannedOf(YieldFigure.WASTE))
                    .isEqualTo(database("o.planned_um3", waste + " and coalesce(o.cause, '') <> 'SPOILT'", from, to));
            assertThat(total.comparableOf(YieldFigure.PARTS))
                    .isEqualTo(database("o.volume_um3", "o.kind = 'PART' and " + hadPlan, from, to));
            assertThat(total.comparableOf(YieldFigure.WASTE))
                    .isEqualTo(database("o.volume_um3", waste + " and " + hadPlan, from, to));
            for (YieldFigure figure : YieldFigure.values()) {
                addsUpBesideThePlan(new Wanted(question, null, figure, true, null), total);
                for (Line line : yield.report(question).lines()) {
                    addsUpBesideThePlan(new Wanted(question, line.key(), figure, true, null), line.sums());
                }
            }
        }
    }

    private void addsUpBesideThePlan(Wanted wanted, YieldSums sums) {
        Yield.Rows rows = yield.rows(wanted, 1, Yield.LARGEST_PAGE);
        assertThat(rows.rows())
                .as(wanted.toString())
                .hasSize((int) rows.total())
                .allMatch(r -> r.planned() != null);
        assertThat(rows.sum())
                .as(wanted.toString())
                .isEqualTo(sums.comparableOf(wanted.figure()))
                .isEqualTo(rows.rows().stream().map(Yield.Row::counted).reduce(Volume.ZERO, Volume::plus));
        assertThat(rows.planned())
                .as(wanted.toString())
                .isEqualTo(sums.plannedOf(wanted.figure()))
                .isEqualTo(rows.rows().stream()
                        .map(r -> Objects.requireNonNull(r.planned()))
                        .reduce(Volume.ZERO, Volume::plus));
    }

    /** Each dot of the chart is the waste of one entry, as the database adds it up. */
    private void rowsOfADot(By by) {
        Question question = new Question(by, null, null);
        List<Yield.Dot> dots = yield.report(question).dots();
        assertThat(dots).isNotEmpty();
        for (Yield.Dot dot : dots) {
            Yield.Rows rows = yield.rows(new Wanted(question, null, YieldFigure.WASTE, false, dot.entry()), 1, 500);
            assertThat(rows.sum())
                    .isEqualTo(dot.real())
                    .isEqualTo(rows.rows().stream().map(Yield.Row::counted).reduce(Volume.ZERO, Volume::plus))
                    .isEqualTo(ofEntry("volume_um3", "kind in ('WASTE', 'UNEXPLAINED')", dot.entry()));
            assertThat(rows.planned())
                    .isEqualTo(dot.planned())
                    .isEqualTo(ofEntry("planned_um3", "kind = 'WASTE' and cause <> 'SPOILT'", dot.entry()));
            assertThat(rows.rows()).allMatch(r -> r.entry() == dot.entry());
        }
    }

    private Volume ofEntry(String what, String which, long entry) {
        return new Volume(
                jdbc.sql("select coalesce(sum(" + what + "), 0) from outcome where entry_id = :entry and " + which)
                        .param("entry", entry)
                        .query(BigDecimal.class)
                        .single()
                        .toBigIntegerExact());
    }

    /** Days that cut months in two: the total is what the database adds up over the entries that stand. */
    private void partsOfMonths(By by, Random random) {
        for (int i = 0; i < 12; i++) {
            LocalDate from = LocalDate.of(2026, 10, 1).plusDays(random.nextInt(92));
            LocalDate to = from.plusDays(random.nextInt(70));
            Report report = yield.report(new Question(by, from, to));
            BigDecimal input = jdbc.sql("select coalesce(sum(o.volume_um3), 0) from outcome o join entry e"
                            + " on e.id = o.entry_id where o.kind <> 'SOLD' and e.undoes is null and e.acted_at >= :from"
                            + " and e.acted_at < :to and not exists (select 1 from entry u where u.undoes = e.id)")
                    .param("from", from.atStartOfDay(clock.getZone()).toOffsetDateTime())
                    .param("to", to.plusDays(1).atStartOfDay(clock.getZone()).toOffsetDateTime())
                    .query(BigDecimal.class)
                    .single();
            assertThat(report.total().of(YieldFigure.INPUT).um3()).isEqualTo(input.toBigIntegerExact());
            assertThat(report.closes()).isTrue();
            for (YieldFigure figure : YieldFigure.values()) {
                Volume lines =
                        report.lines().stream().map(l -> l.sums().of(figure)).reduce(Volume.ZERO, Volume::plus);
                assertThat(lines)
                        .as("%s by %s from %s to %s", figure, by, from, to)
                        .isEqualTo(report.total().of(figure));
            }
            for (Line line : report.lines()) {
                Yield.Rows rows = yield.rows(new Wanted(report.question(), line.key(), YieldFigure.WASTE), 1, 500);
                Volume sum = rows.rows().stream().map(Yield.Row::counted).reduce(Volume.ZERO, Volume::plus);
                assertThat(sum).isEqualTo(line.sums().of(YieldFigure.WASTE)).isEqualTo(rows.sum());
            }
        }
    }

    /** Pages put together are all rows, in their order, each once. */
    private void rowsPageByPage(By by) {
        for (Question question : List.of(
                new Question(by, null, null),
                new Question(by, LocalDate.of(2026, 10, 20), LocalDate.of(2026, 12, 12)))) {
            for (YieldFigure figure : List.of(YieldFigure.INPUT, YieldFigure.KERF, YieldFigure.RESCUED)) {
                Wanted wanted = new Wanted(question, null, figure);
                List<Yield.Row> all = new ArrayList<>();
                yield.each(wanted, all::add);
                List<Yield.Row> paged = new ArrayList<>();
                Yield.Rows page = yield.rows(wanted, 1, 7);
                for (int i = 1; i <= page.pages(); i++) {
                    page = yield.rows(wanted, i, 7);
                    assertThat(page.page()).isEqualTo(i);
                    assertThat(page.total()).isEqualTo(all.size());
                    paged.addAll(page.rows());
                }
                assertThat(paged).as("%s by %s", figure, by).containsExactlyInAnyOrderElementsOf(all);
                assertThat(paged).isSortedAccordingTo((a, b) -> b.at().compareTo(a.at()));
            }
        }
    }
}
