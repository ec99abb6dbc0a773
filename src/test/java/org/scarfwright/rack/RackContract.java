package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scarfwright.rack.TestPieces.mm;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Money;
import org.scarfwright.web.ConflictException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** What every room relies on when it asks the rack, whichever engine keeps its rows. */
@Transactional
abstract class RackContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    Rack rack;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    JdbcClient jdbc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Clock clock;

    static PieceCells cells(String code, String length, String width, String thickness) {
        return new PieceCells()
                .put(PieceField.CODE, code)
                .put(PieceField.WOOD, "maple_sugar")
                .put(PieceField.LENGTH, length)
                .put(PieceField.WIDTH, width)
                .put(PieceField.THICKNESS, thickness);
    }

    private Piece add(String code, String length, String width, String thickness) {
        return pieces.add(cells(code, length, width, thickness), LengthUnit.MM);
    }

    private Piece find(String code) {
        return rack.find(code).orElseThrow();
    }

    @Test
    void givesBackAllThatWasSaid() {
        pieces.add(
                cells("full-1", "25 3/8 in", "80", "1 in")
                        .put(PieceField.WOOD, "")
                        .put(PieceField.LAMINATION, "maple_sugar 35 quarter | Black walnut 10 | maple_sugar 35 quarter")
                        .put(PieceField.MOISTURE, "8.25 %")
                        .put(PieceField.METER, "pin")
                        .put(PieceField.MOISTURE_ON, "2026-03-01")
                        .put(PieceField.BOW, "1.5")
                        .put(PieceField.TWIST, "1/16 in")
                        .put(PieceField.WARP_ON, "2026-03-02")
                        .put(PieceField.DEFECTS, "knot 120-160 x 10-30 structural; stain 300-310")
                        .put(PieceField.TRIM_LEFT, "15")
                        .put(PieceField.TRIM_RIGHT, "10")
                        .put(PieceField.GRAIN, "quarter")
                        .put(PieceField.GRAIN_SLOPE, "1:18")
                        .put(PieceField.PLACE, "Shelf B2")
                        .put(PieceField.LOT, "L-07")
                        .put(PieceField.LOT_READY_ON, "2026-05-01")
                        .put(PieceField.COST, "18,50")
                        .put(PieceField.SET_ASIDE, "yes")
                        .put(PieceField.NECK_ALLOWED, "yes")
                        .put(PieceField.NOTE, "=1+1 is only text"),
                LengthUnit.MM);
        Piece piece = find("full-1");

        assertThat(piece.code()).isEqualTo("FULL-1");
        assertThat(piece.state()).isEqualTo(PieceState.ON_RACK);
        assertThat(piece.length().length().um()).isEqualTo(644_525);
        assertThat(piece.length().typed()).isEqualTo("25 3/8 in");
        assertThat(piece.width().typed()).isEqualTo("80 mm");
        assertThat(piece.thickness().length()).isEqualTo(mm("25.4"));
        assertThat(piece.wood())
                .isEqualTo(new PieceWood.Lamination(List.of(
                        new PieceWood.LaminationStrip("maple_sugar", mm("35"), GrainCut.QUARTER),
                        new PieceWood.LaminationStrip("walnut_black", mm("10"), GrainCut.UNKNOWN),
                        new PieceWood.LaminationStrip("maple_sugar", mm("35"), GrainCut.QUARTER))));
        assertThat(piece.moisture())
                .isEqualTo(new MoistureReading(new Moisture(825), LocalDate.of(2026, 3, 1), MoistureReading.Meter.PIN));
        assertThat(piece.warp())
                .isEqualTo(new Warp(mm("1.5"), mm("0"), mm("0"), mm("1.588"), LocalDate.of(2026, 3, 2)));
        assertThat(piece.defects())
                .containsExactly(
                        new Defect(Defect.Kind.KNOT, mm("120"), mm("160"), mm("10"), mm("30"), true),
                        new Defect(Defect.Kind.STAIN, mm("300"), mm("310"), mm("0"), mm("80"), false));
        assertThat(piece.trimLeft()).isEqualTo(mm("15"));
        assertThat(piece.trimRight()).isEqualTo(mm("10"));
        assertThat(piece.grain()).isEqualTo(GrainCut.QUARTER);
        assertThat(piece.grainSlope()).isEqualTo(18);
        assertThat(piece.place()).isEqualTo("Shelf B2");
        assertThat(piece.lot()).isEqualTo("L-07");
        assertThat(piece.lotReadyOn()).isEqualTo(LocalDate.of(2026, 5, 1));
        assertThat(piece.cost()).isEqualTo(new Money(1850));
        assertThat(piece.setAside()).isTrue();
        assertThat(piece.neckAllowed()).isTrue();
        assertThat(piece.note()).isEqualTo("=1+1 is only text");
    }

    @Test
    void pieceNobodyMeasuredCountsAsFlatAndSaysSo() {
        add("N-1", "600", "70", "22");
        assertThat(find("N-1").warp()).isEqualTo(Warp.UNMEASURED);
        assertThat(find("N-1").moisture()).isNull();
    }

    @Test
    void makesACodeNobodyCanMisread() {
        Piece piece = add("", "600", "70", "22");
        assertThat(piece.code()).matches("[CDFHJKMNPRTWXY3479]{3,}");
        assertThat(rack.find(piece.code())).contains(piece);
    }

    @Test
    void refusesACodeThatIsTaken() {
        add("M-1", "600", "70", "22");
        assertThatThrownBy(() -> add("m-1", "500", "70", "22"))
                .isInstanceOf(WrongPieceException.class)
                .hasMessageContaining("“M-1” is taken by another piece");
    }

    @Test
    void findsAPieceHoweverItsCodeIsWritten() {
        add("k7-a", "600", "70", "22");
        assertThat(rack.find(" K7-a")).isPresent();
        assertThat(rack.find("nothing here")).isEmpty();
        assertThat(rack.findAll(List.of("K7-A", "NONE", "k7-a"))).hasSize(1);
    }

    @Test
    void freePiecesComeInOrderOfTheirCodes() {
        add("ZZ-1", "600", "70", "22");
        add("AA-2", "600", "70", "22");
        add("A-10", "600", "70", "22");
        add("A1", "600", "70", "22");
        assertThat(rack.free().stream().map(Piece::code).filter(List.of("ZZ-1", "AA-2", "A-10", "A1")::contains))
                .containsExactly("A-10", "A1", "AA-2", "ZZ-1");
    }

    @Test
    void reservesAllOrNothing() {
        Piece one = add("R-1", "600", "70", "22");
        Piece two = add("R-2", "600", "70", "22");
        rack.reserve(41, List.of(new Rack.PieceStamp("R-1", one.version())));

        assertThatThrownBy(() -> rack.reserve(
                        42,
                        List.of(
                                new Rack.PieceStamp("R-1", one.version()),
                                new Rack.PieceStamp("R-2", two.version() + 1),
                                new Rack.PieceStamp("R-3", 0))))
                .isInstanceOfSatisfying(
                        PieceNotFreeException.class,
                        e -> assertThat(e.reasons())
                                .containsExactly(
                                        "Piece R-1 is reserved already.",
                                        "Piece R-2 was changed since; match again.",
                                        "Piece R-3 is not on the rack any more."));
    }

    @Test
    void reservedPieceIsNotFreeUntilItIsReleased() {
        Piece piece = add("R-4", "600", "70", "22");
        rack.reserve(7, List.of(new Rack.PieceStamp("R-4", piece.version())));
        assertThat(find("R-4").state()).isEqualTo(PieceState.RESERVED);
        assertThat(rack.free()).extracting(Piece::code).doesNotContain("R-4");

        rack.release(8);
        assertThat(find("R-4").state()).isEqualTo(PieceState.RESERVED);
        rack.release(7);
        assertThat(rack.free()).extracting(Piece::code).contains("R-4");
        rack.release(7);
        // The wood is what it was: a plan made before can still be accepted.
        rack.reserve(9, List.of(new Rack.PieceStamp("R-4", piece.version())));
    }

    @Test
    void databaseItselfRefusesASecondReservation() {
        Piece piece = add("R-5", "600", "70", "22");
        rack.reserve(7, List.of(new Rack.PieceStamp("R-5", piece.version())));
        assertThatThrownBy(() -> jdbc.sql("insert into reservation (piece_id, plan_id, reserved_at)"
                                + " select id, 8, current_timestamp from piece where code = 'R-5'")
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void editKeepsEveryReadingItEverHad() {
        pieces.add(
                cells("E-1", "600", "70", "22")
                        .put(PieceField.BOW, "1")
                        .put(PieceField.WARP_ON, "2026-03-02")
                        .put(PieceField.MOISTURE, "9")
                        .put(PieceField.MOISTURE_ON, "2026-03-02"),
                LengthUnit.MM);
        Piece march = find("E-1");
        pieces.change(
                march,
                PieceWords.cells(march).put(PieceField.BOW, "3").put(PieceField.WARP_ON, "2026-07-01"),
                LengthUnit.MM);
        Piece july = find("E-1");

        assertThat(july.version()).isEqualTo(march.version() + 1);
        assertThat(july.warp().bow()).isEqualTo(mm("3"));
        assertThat(july.moisture()).isEqualTo(march.moisture());
        assertThat(pieces.warpReadings("E-1")).containsExactly(july.warp(), march.warp());
        assertThat(pieces.moistureReadings("E-1")).hasSize(1);
    }

    @Test
    void olderReadingEnteredLateDoesNotReplaceANewerOne() {
        pieces.add(
                cells("E-2", "600", "70", "22").put(PieceField.BOW, "3").put(PieceField.WARP_ON, "2026-07-01"),
                LengthUnit.MM);
        Piece now = find("E-2");
        pieces.change(
                now,
                PieceWords.cells(now).put(PieceField.BOW, "1").put(PieceField.WARP_ON, "2026-03-02"),
                LengthUnit.MM);
        assertThat(find("E-2").warp().bow()).isEqualTo(mm("3"));
        assertThat(pieces.warpReadings("E-2")).hasSize(2);
    }

    @Test
    void editThatChangesNothingWritesNothing() {
        Piece piece = pieces.add(
                cells("E-3", "25 3/8 in", "70", "22")
                        .put(PieceField.DEFECTS, "knot 100-120; check 0-5.5 x 1-2 looks")
                        .put(PieceField.TWIST, "1/16 in")
                        .put(PieceField.MOISTURE, "8.25"),
                LengthUnit.MM);
        assertThat(pieces.change(piece, PieceWords.cells(piece), LengthUnit.MM)).isEqualTo(piece);
        assertThat(find("E-3")).isEqualTo(piece);
    }

    @Test
    void editOfAPieceSomebodyChangedIsRefused() {
        Piece seen = add("E-4", "600", "70", "22");
        pieces.change(seen, PieceWords.cells(seen).put(PieceField.LENGTH, "590"), LengthUnit.MM);
        assertThatThrownBy(
                        () -> pieces.change(seen, PieceWords.cells(seen).put(PieceField.LENGTH, "580"), LengthUnit.MM))
                .isInstanceOf(PieceChangedSinceException.class);
        assertThat(find("E-4").length().length()).isEqualTo(mm("590"));
    }

    @Test
    void reservedPieceKeepsItsShapeButMayMove() {
        Piece free = add("E-5", "600", "70", "22");
        rack.reserve(7, List.of(new Rack.PieceStamp("E-5", free.version())));
        Piece held = find("E-5");
        assertThatThrownBy(
                        () -> pieces.change(held, PieceWords.cells(held).put(PieceField.LENGTH, "590"), LengthUnit.MM))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("Undo the plan that holds it first");
        pieces.change(held, PieceWords.cells(held).put(PieceField.PLACE, "Bench"), LengthUnit.MM);
        assertThat(find("E-5").place()).isEqualTo("Bench");
    }

    @Test
    void measuringAgainAddsAReadingAndKeepsWhatWasNotRead() {
        pieces.add(
                cells("MA-1", "25 3/8 in", "80", "22")
                        .put(PieceField.BOW, "1")
                        .put(PieceField.CROOK, "0.5")
                        .put(PieceField.CUP, "0.2")
                        .put(PieceField.TWIST, "1")
                        .put(PieceField.MIDDLE_CROOK, "0.1")
                        .put(PieceField.MOISTURE, "9")
                        .put(PieceField.MEASURED_ON, "2026-03-02")
                        .put(PieceField.PLACE, "Shelf A1"),
                LengthUnit.MM);
        Piece march = find("MA-1");
        Piece now = pieces.measure(
                march,
                new PieceCells()
                        .put(PieceField.BOW, "3")
                        .put(PieceField.MIDDLE_BOW, "1.2")
                        .put(PieceField.MEASURED_ON, "2026-07-01")
                        .put(PieceField.LENGTH, "1")
                        .put(PieceField.PLACE, "nowhere"),
                LengthUnit.MM);

        assertThat(now.warp())
                .isEqualTo(new Warp(
                        mm("3"),
                        mm("0.5"),
                        mm("0.2"),
                        mm("1"),
                        new MiddleReading(mm("1.2"), null, null),
                        LocalDate.of(2026, 7, 1)));
        assertThat(now.moisture()).isEqualTo(march.moisture());
        assertThat(now.length()).isEqualTo(march.length());
        assertThat(now.place()).isEqualTo("Shelf A1");
        assertThat(now.version()).isEqualTo(march.version() + 1);
        assertThat(pieces.warpReadings("MA-1")).containsExactly(now.warp(), march.warp());
        assertThat(find("MA-1")).isEqualTo(now);
    }

    @Test
    void measuringMoistureAloneLeavesTheWarpAndTakesAReservedPieceToo() {
        Piece free = pieces.add(cells("MA-2", "600", "80", "22").put(PieceField.BOW, "1"), LengthUnit.MM);
        rack.reserve(7, List.of(new Rack.PieceStamp("MA-2", free.version())));
        Piece held = find("MA-2");
        Piece now = pieces.measure(held, new PieceCells().put(PieceField.MOISTURE, "8.1"), LengthUnit.MM);
        assertThat(now.warp()).isEqualTo(held.warp());
        assertThat(now.moisture())
                .isEqualTo(new MoistureReading(new Moisture(810), LocalDate.now(clock), MoistureReading.Meter.UNKNOWN));
        assertThatThrownBy(() -> pieces.measure(now, new PieceCells().put(PieceField.BOW, "2"), LengthUnit.MM))
                .isInstanceOf(ConflictException.class);
        assertThat(pieces.warpReadings("MA-2")).hasSize(1);
    }

    @Test
    void sameReadingOfTheSameDayIsNoNewOneAndOfAnotherDayIs() {
        Piece first = pieces.add(
                cells("MA-3", "600", "80", "22").put(PieceField.BOW, "1").put(PieceField.WARP_ON, "2026-03-02"),
                LengthUnit.MM);
        PieceCells same = new PieceCells().put(PieceField.BOW, "1.0").put(PieceField.WARP_ON, "2026-03-02");
        assertThat(pieces.measure(first, same, LengthUnit.MM)).isEqualTo(first);
        Piece later = pieces.measure(first, same.put(PieceField.WARP_ON, "2026-04-02"), LengthUnit.MM);
        assertThat(later.warp().readOn()).isEqualTo(LocalDate.of(2026, 4, 2));
        assertThat(pieces.warpReadings("MA-3")).hasSize(2);
    }

    @Test
    void measuringNothingAtAllIsRefused() {
        Piece piece = add("MA-4", "600", "80", "22");
        assertThatThrownBy(() ->
                        pieces.measure(piece, new PieceCells().put(PieceField.WARP_ON, "2026-03-02"), LengthUnit.MM))
                .isInstanceOf(WrongPieceException.class)
                .hasMessageContaining("is empty, and so is every other reading; write at least one");
    }

    @Test
    void faultsOfAPieceAreToldWithoutSavingIt() {
        add("MA-5", "600", "80", "22");
        assertThat(pieces.faults(cells("ma-5", "600", "80", "0"), LengthUnit.MM, null))
                .extracting(CellError::field)
                .containsExactly(PieceField.THICKNESS, PieceField.CODE);
        assertThat(pieces.faults(cells("ma-6", "600", "80", "22"), LengthUnit.MM, null))
                .isEmpty();
        assertThat(rack.find("MA-6")).isEmpty();
        assertThat(pieces.faults(cells("ma-6", "600", "80", "22"), LengthUnit.MM, find("MA-5")))
                .extracting(CellError::field)
                .containsExactly(PieceField.CODE);
    }

    @Test
    void pagesAreInOrderOfTheSignsOfTheirCodesOnEveryDatabase() {
        List<String> inOrder =
                List.of("QO", "QO-", "QO--1", "QO-1", "QO-10", "QO-A", "QO0", "QO0-1", "QO01", "QO1", "QOA");
        inOrder.stream()
                .sorted(java.util.Comparator.comparing(String::hashCode))
                .forEach(code -> add(code, "600", "70", "22"));
        for (int page = 1; page <= 4; page++) {
            int from = (page - 1) * 3;
            assertThat(pieces.list(filter("qo", null, null), PieceFilter.Sort.LONGEST, page, 3)
                            .pieces())
                    .extracting(Piece::code)
                    .containsExactlyElementsOf(inOrder.subList(from, Math.min(from + 3, inOrder.size())));
        }
        assertThat(codes(filter("qo", null, null))).isEqualTo(inOrder);
    }

    @Test
    void migrationSpellsTheOrderOfCodesAsTheProgramDoes() {
        add("T-00-9Z", "600", "70", "22");
        jdbc.sql(
                        "select code, code_order, replace(replace(code, '0', '01'), '-', '00') as spelled from piece order by id")
                .query(rs -> {
                    assertThat(rs.getString("code_order"))
                            .isEqualTo(rs.getString("spelled"))
                            .isEqualTo(PieceCodes.order(rs.getString("code")));
                });
    }

    @Test
    void placesAndLotsAreOneHoweverTheyAreWritten() {
        pieces.add(
                cells("P-1", "600", "70", "22")
                        .put(PieceField.PLACE, "Shelf B2")
                        .put(PieceField.LOT, "l-1"),
                LengthUnit.MM);
        pieces.add(
                cells("P-2", "600", "70", "22")
                        .put(PieceField.PLACE, "shelf  b2")
                        .put(PieceField.LOT, "L-1"),
                LengthUnit.MM);
        assertThat(find("P-2").place()).isEqualTo("Shelf B2");
        assertThat(find("P-2").lot()).isEqualTo("l-1");
        assertThat(pieces.places()).contains("Shelf B2").doesNotContain("shelf  b2");
    }

    @Test
    void listFiltersSortsAndPages() {
        pieces.add(
                cells("LF-1", "900", "70", "22").put(PieceField.NOTE, "100% clear_wood from the quarrel"),
                LengthUnit.MM);
        pieces.add(cells("LF-2", "700", "60", "20").put(PieceField.PLACE, "Quarrel shelf"), LengthUnit.MM);
        pieces.add(
                cells("LF-3", "500", "60", "30")
                        .put(PieceField.WOOD, "")
                        .put(PieceField.LAMINATION, "wenge 30 | maple_sugar 30"),
                LengthUnit.MM);

        assertThat(codes(filter("quarrel", null, null))).containsExactly("LF-1", "LF-2");
        assertThat(codes(filter("quarrel 100%", null, null))).containsExactly("LF-1");
        assertThat(codes(filter("q_arrel", null, null))).isEmpty();
        assertThat(codes(filter("lf- WENGE", null, null))).containsExactly("LF-3");
        assertThat(codes(filter("lf-", "wenge", null))).containsExactly("LF-3");
        assertThat(codes(filter("lf-", "maple_sugar", "650"))).containsExactly("LF-1", "LF-2");
        assertThat(codes(filter("o'; drop table piece; \0 --", null, null))).isEmpty();

        PieceList second = pieces.list(filter("lf-", null, null), PieceFilter.Sort.LONGEST, 2, 2);
        assertThat(second.pieces()).extracting(Piece::code).containsExactly("LF-3");
        assertThat(second.total()).isEqualTo(3);
        assertThat(second.pages()).isEqualTo(2);
        assertThat(pieces.list(filter("lf-", null, null), PieceFilter.Sort.LONGEST, 99, 2))
                .isEqualTo(second);
    }

    @Test
    void wordsAreFoundAsSoonAsTheyAreWritten() {
        Piece first = pieces.add(cells("WF-1", "900", "70", "22").put(PieceField.NOTE, "zebrine"), LengthUnit.MM);
        assertThat(codes(filter("zebrine", null, null))).containsExactly("WF-1");

        pieces.change(first, PieceWords.cells(first).put(PieceField.NOTE, "plain"), LengthUnit.MM);
        pieces.add(cells("WF-2", "900", "70", "22").put(PieceField.PLACE, "Zebrine shelf"), LengthUnit.MM);
        assertThat(codes(filter("zebrine", null, null))).containsExactly("WF-2");
        assertThat(codes(filter("wf plain", null, null))).containsExactly("WF-1");
        assertThat(pieces.meant("wf 2")).containsExactly("WF-2");
        assertThat(pieces.meant("wf 3")).isEmpty();

        add("WF-3", "900", "70", "22");
        assertThat(pieces.meant("wf 3")).containsExactly("WF-3");
    }

    /** Judged by the database: lists without words are its own. */
    @Test
    void wordsAndEverythingElseNarrowAListAlike() {
        Random random = new Random(5);
        for (int i = 0; i < 60; i++) {
            PieceCells cells =
                    cells("RF-" + i, 400 + random.nextInt(8) * 100 + "", 50 + random.nextInt(5) * 10 + "", "22");
            if (random.nextBoolean()) {
                cells.put(PieceField.NOTE, "A common word");
            }
            if (random.nextInt(3) == 0) {
                cells.put(PieceField.WOOD, "")
                        .put(PieceField.WIDTH, "50")
                        .put(PieceField.LAMINATION, "wenge 25 | maple_sugar 25");
            }
            cells.put(PieceField.PLACE, "Bay " + random.nextInt(3));
            pieces.add(cells, LengthUnit.MM);
        }
        for (int i = 0; i < 200; i++) {
            PieceFilter plain = new PieceFilter(
                    "",
                    any(random, "wenge", "maple_sugar"),
                    any(random, PieceState.ON_RACK, PieceState.SOLD),
                    any(random, "bay 1", "Bay  2"),
                    any(random, mm("500"), mm("800")),
                    any(random, mm("60"), mm("80")),
                    any(random, mm("22"), mm("30")),
                    any(random, PieceFilter.Can.NECK, PieceFilter.Can.HEAD));
            List<PieceFilter.Sort> sorts = List.of(PieceFilter.Sort.values());
            PieceFilter.Sort sort = sorts.get(random.nextInt(sorts.size()));
            assertThat(pieces.list(worded(plain, "common  WORD"), sort, 1, 500).pieces())
                    .isEqualTo(pieces.list(plain, sort, 1, 500).pieces().stream()
                            .filter(p -> p.note().contains("common word"))
                            .toList());
        }
    }

    @SafeVarargs
    private static <T> @org.jspecify.annotations.Nullable T any(Random random, T... of) {
        return random.nextInt(3) > 0 ? null : of[random.nextInt(of.length)];
    }

    private static PieceFilter worded(PieceFilter f, String words) {
        return new PieceFilter(words, f.wood(), f.state(), f.place(), f.length(), f.width(), f.thickness(), f.can());
    }

    private List<String> codes(PieceFilter filter) {
        return pieces.list(filter, PieceFilter.Sort.CODE, 1, 50).pieces().stream()
                .map(Piece::code)
                .toList();
    }

    private static PieceFilter filter(
            String words,
            @org.jspecify.annotations.Nullable String wood,
            @org.jspecify.annotations.Nullable String length) {
        return new PieceFilter(words, wood, null, null, length == null ? null : mm(length), null, null, null);
    }
}
