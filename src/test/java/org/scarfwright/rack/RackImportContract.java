package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.ImportResult.Outcome;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

/** What happens to a rack file, good and bad; every refusal with the sentence a person reads. */
@Transactional
abstract class RackImportContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    RackImport rackImport;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Rack rack;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

    private static final String MIXED = """
            Note;CODE;wood;Thickness;width;LENGTH;unit;moisture;twist;lamination;defects
            ;IM-1;Sugar maple;7/8;3;25 3/8;in;8,5;;;
            =HYPERLINK("x");IM-2;maple_sugar;22;70;640,5;;;1/16 in;;check 0-35
            ;im-3;;23;75;62 cm;mm;;;maple_sugar 34 | walnut_black 7 | maple_sugar 34;
            ;;walnut_black;25;80;700;;;;;
            ;;walnut_black;25;80;700;;;;;
            """;

    @Test
    void readsAFileAsPeopleWriteIt() {
        ImportResult result = rackImport.save("\ufeff" + MIXED);
        assertThat(result.errors()).isEmpty();
        assertThat(result.saved()).isTrue();
        assertThat(result.added()).isEqualTo(5);

        Piece one = rack.find("IM-1").orElseThrow();
        assertThat(one.length().typed()).isEqualTo("25 3/8");
        assertThat(one.length().length().um()).isEqualTo(644_525);
        assertThat(one.width().typed()).isEqualTo("3 in");
        assertThat(one.wood()).isEqualTo(new PieceWood.Solid("maple_sugar"));
        assertThat(one.moisture()).isNotNull();
        Piece two = rack.find("IM-2").orElseThrow();
        assertThat(two.note()).isEqualTo("=HYPERLINK(\"x\")");
        assertThat(two.length().length().um()).isEqualTo(640_500);
        assertThat(two.warp().twist().um()).isEqualTo(1_588);
        assertThat(two.defects()).hasSize(1);
        assertThat(rack.find("IM-3").orElseThrow().wood().speciesIds())
                .containsExactly("maple_sugar", "walnut_black", "maple_sugar");
    }

    @Test
    void previewSavesNothing() {
        ImportResult result = rackImport.preview(MIXED);
        assertThat(result.added()).isEqualTo(5);
        assertThat(result.saved()).isFalse();
        assertThat(rack.find("IM-1")).isEmpty();
    }

    @Test
    void sameFileAgainAddsNothing() {
        rackImport.save(MIXED);
        long before = count();
        ImportResult again = rackImport.save(MIXED);
        assertThat(again.errors()).isEmpty();
        assertThat(again.unchanged()).isEqualTo(5);
        assertThat(count()).isEqualTo(before);
    }

    @Test
    void equalRowsWithoutACodeAreAsManyPieces() {
        String row = "cherry_black,500,60,20\n";
        rackImport.save("wood,length,width,thickness\n" + row + row);
        ImportResult three = rackImport.save("wood,length,width,thickness\n" + row + row + row);
        assertThat(three.unchanged()).isEqualTo(2);
        assertThat(three.added()).isEqualTo(1);
        // Written another way it is still the same piece.
        ImportResult other = rackImport.save("thickness;width;length;wood\n2 cm;6 cm;50 cm;Black cherry\n");
        assertThat(other.unchanged()).isEqualTo(1);
    }

    @Test
    void codeOnTheRackWithOtherFiguresIsAnErrorThatSaysWhatDiffers() {
        rackImport.save("code,wood,length,width,thickness\nIM-5,maple_sugar,640,70,22\n");
        ImportResult result = rackImport.save(
                "code,wood,length,width,thickness\nIM-5,maple_sugar,640,72,22\nIM-6,maple_sugar,640,70,22\n");
        assertThat(result.saved()).isFalse();
        assertThat(result.errors()).extracting(FieldError::pointer).containsExactly("/rows/2/code");
        assertThat(result.errors().get(0).message())
                .contains("“IM-5” is on the rack already and differs: width 70 mm on the rack, 72 mm in the file");
        assertThat(rack.find("IM-6")).isEmpty();
    }

    @Test
    void pieceMeasuredAgainOrMovedSinceIsUnchanged() {
        String file = "code,wood,length,width,thickness,bow,moisture,place\nIM-7,maple_sugar,640,70,22,1,9,Shelf A\n";
        rackImport.save(file);
        Piece piece = rack.find("IM-7").orElseThrow();
        pieces.change(
                piece,
                PieceWords.cells(piece)
                        .put(PieceField.BOW, "2.5")
                        .put(PieceField.MOISTURE, "7.5")
                        .put(PieceField.PLACE, "Shelf B"),
                LengthUnit.MM);
        ImportResult again = rackImport.save(file);
        assertThat(again.errors()).isEmpty();
        assertThat(again.rows().get(0).outcome()).isEqualTo(Outcome.UNCHANGED);
        assertThat(again.rows().get(0).remark()).isEqualTo("The rack keeps its own place for it: Shelf B.");
        assertThat(rack.find("IM-7").orElseThrow().warp().bow().um()).isEqualTo(2_500);
    }

    @Test
    void namesEveryBadCellAndShowsTheRest() {
        String file = """
                code,wood,length,width,thickness,unit,moisture,bow,lamination,defects,cost,measured_on,grain_slope
                OK-1,maple_sugar,640,70,22,,,,,,,,
                ,mapel_sugar,640,70,22,,,,,,,,
                ,maple_sugar,,0,-22,,,,,,,,

                ,maple_sugar,3 km,70,22,,,,,,,,
                ,maple_sugar,25 38,70,22,,,,,,,,
                ,maple_sugar,640,70,22,ell,,,,,,,
                ,maple_sugar,640,70,22,,850,,,,,,
                ,maple_sugar,640,70,22,,,65,,,,,
                ,maple_sugar,640,70,22,,,,,knot 630-660,,,
                ,maple_sugar,640,70,22,,,,,knot 100-120 x 60-80,,,
                ,maple_sugar,640,70,22,,,,maple_sugar 30 | wenge 30,,,,
                ,maple_sugar,640,70,22,,,,maple_sugar 30 | wengue 40,,,,
                ok-1,maple_sugar,640,70,22,,,,,,,,
                ,maple_sugar,640,70,22,,,,,,cheap,02.03.2026,1 in 500
                ,maple_sugar,640,70,22,,,,,knot 4 3/8-6,,,
                ,maple_sugar,7 m,1201,301,,,,,,,,
                """;
        ImportResult result = rackImport.save(file);
        assertThat(result.saved()).isFalse();
        assertThat(rack.find("OK-1")).isEmpty();
        assertThat(result.rows()).filteredOn(r -> r.outcome() == Outcome.NEW).hasSize(1);
        assertThat(result.errors().stream().map(e -> e.pointer() + " " + e.sentence()))
                .containsExactlyInAnyOrder(
                        "/rows/3/wood Row 3, wood “mapel_sugar” is no wood the shop knows; did you mean maple_sugar?",
                        "/rows/4/length Row 4, length is missing; write for example 640, 64 cm or 25 3/8 in.",
                        "/rows/4/width Row 4, width “0” is less than 1 mm, the least the rack takes.",
                        "/rows/4/thickness Row 4, thickness “-22” is negative; write for example 640, 64 cm or 25 3/8 in"
                                + " (at most 300 mm).",
                        "/rows/6/length Row 6, length “3 km” is more than 6000 mm, the most the rack takes.",
                        "/rows/7/length Row 7, length “25 38” can be read two ways; write 2538, or a fraction such as"
                                + " 25 3/8 in (at most 6000 mm).",
                        "/rows/8/unit Row 8, unit “ell” is no unit; write mm, cm, m or in.",
                        "/rows/9/moisture Row 9, moisture “850” is not a moisture content in percent; write for example"
                                + " 8.5.",
                        "/rows/10/bow Row 10, bow “65” is more than a tenth of the length, 640 mm; write the rise over"
                                + " the whole piece, and cut a piece that bent in two.",
                        "/rows/11/defects Row 11, defects has “knot 630-660”: “630-660” lies outside the piece, whose"
                                + " length is 640 mm.",
                        "/rows/12/defects Row 12, defects has “knot 100-120 x 60-80”: “60-80” lies outside the piece,"
                                + " whose width is 70 mm.",
                        "/rows/13/lamination Row 13, lamination has strips of 60 mm together; they must add up to the"
                                + " width, 70 mm.",
                        "/rows/14/lamination Row 14, lamination has as strip 2 “wengue 40”: “wengue” is no wood the"
                                + " shop knows; did you mean Wenge?",
                        "/rows/15/code Row 15, code “OK-1” stands in row 2 too; a code names one piece, so change one of"
                                + " them or take it out.",
                        "/rows/16/cost Row 16, cost “cheap” is not a number; write for example 18 or 18.50.",
                        "/rows/16/measured_on Row 16, measured on “02.03.2026” is not a day; write year-month-day, for"
                                + " example 2026-03-02.",
                        "/rows/16/grain_slope Row 16, grain slope “1 in 500” is no slope of grain; write 1 in how much,"
                                + " from 1 to 100, for example 1 in 15.",
                        "/rows/17/defects Row 17, defects has “knot 4 3/8-6”: “4 3/8-6” can be read in more than one"
                                + " way; write for example 4 3/8 in to 6 in.",
                        "/rows/18/length Row 18, length “7 m” is more than 6000 mm, the most the rack takes.",
                        "/rows/18/width Row 18, width “1201” is more than 1200 mm, the most the rack takes.",
                        "/rows/18/thickness Row 18, thickness “301” is more than 300 mm, the most the rack takes.");
    }

    @Test
    void refusesAFiveMegabyteCellAndStillReadsTheRest() {
        String file = "wood,length,width,thickness,note\nmaple_sugar,640,70,22," + "x".repeat(5 * 1024 * 1024)
                + "\nmaple_sugar,650,70,22,\n";
        ImportResult result = rackImport.preview(file);
        assertThat(result.errors()).hasSize(1);
        assertThat(result.errors().get(0).sentence())
                .isEqualTo("Row 2, note is 5242880 characters long; a cell holds at most 2000.");
        assertThat(result.errors().get(0).value()).hasSizeLessThan(100);
        assertThat(result.added()).isEqualTo(1);
    }

    @Test
    void refusesAFileWithMoreRowsThanItTakes() {
        String file = "wood,length,width,thickness\n" + "maple_sugar,640,70,22\n".repeat(100_000);
        refused(() -> rackImport.save(file), error -> {
            assertThat(error.pointer()).isEqualTo("/file");
            assertThat(error.sentence()).contains("has more than 20000 rows of data; split it into smaller files");
        });
    }

    @Test
    void refusesOtherEncodings() {
        String file = "wood,length,width,thickness,note\nmaple_sugar,640,70,22,Wölbung\n";
        refused(
                () -> rackImport.save(file.getBytes(StandardCharsets.ISO_8859_1)),
                error -> assertThat(error.sentence())
                        .isEqualTo(
                                "File is not UTF-8: line 2 has a byte that is no UTF-8 character; save it again as CSV"
                                        + " UTF-8."));
        refused(
                () -> rackImport.save(file.getBytes(StandardCharsets.UTF_16)),
                error -> assertThat(error.sentence()).contains("is written in UTF-16; save it again as CSV UTF-8"));
    }

    @Test
    void refusesAFileThatIsNoTableOfPieces() {
        refused(
                () -> rackImport.save(""),
                error -> assertThat(error.sentence())
                        .isEqualTo("File is empty; its first row names the columns: wood, length, width, thickness."));
        refused(
                () -> rackImport.save("wood,length,width\nmaple_sugar,1,2\n"),
                error -> assertThat(error.sentence()).contains("has no column “thickness”"));
        refused(
                () -> rackImport.save("wood,lenght,width,thickness\nmaple_sugar,1,2,3\n"),
                error -> assertThat(error.sentence()).contains("did you mean length?"));
    }

    @Test
    void lotIsReadyOnOneDay() {
        String header = "code,wood,length,width,thickness,lot,lot_ready_on\n";
        assertThat(rackImport
                        .save(header + "LT-1,maple_sugar,640,70,22,L-9,2026-05-01\n"
                                + "LT-2,maple_sugar,640,70,22,l-9,2026-06-01\n")
                        .errors())
                .extracting(FieldError::sentence)
                .containsExactly(
                        "Row 3, lot ready on “2026-06-01” is not the day row 2 gives for lot “l-9”, 2026-05-01.");
        assertThat(rackImport
                        .save(header + "LT-1,maple_sugar,640,70,22,L-9,2026-05-01\n")
                        .saved())
                .isTrue();
        assertThat(rackImport
                        .save(header + "LT-2,maple_sugar,640,70,22,L-9,2026-06-01\n")
                        .errors())
                .extracting(FieldError::sentence)
                .containsExactly("Row 2, lot ready on “2026-06-01” is not the day the rack has for lot “L-9”,"
                        + " 2026-05-01; leave the cell empty or write that day.");
        assertThat(rackImport
                        .save(header + "LT-2,maple_sugar,640,70,22,,2026-06-01\n")
                        .errors())
                .extracting(FieldError::pointer)
                .containsExactly("/rows/2/lot");
    }

    @Test
    void readsTheExampleOfTheDocumentation() throws Exception {
        String doc = java.nio.file.Files.readString(java.nio.file.Path.of("src/docs/rack-file.md"));
        String example = doc.substring(doc.indexOf("## Example"))
                .lines()
                .filter(l -> l.startsWith("    "))
                .map(String::strip)
                .collect(java.util.stream.Collectors.joining("\n"));
        ImportResult result = rackImport.preview(example);
        assertThat(result.errors()).isEmpty();
        assertThat(result.added()).isEqualTo(4);
    }

    private long count() {
        return pieces.list(PieceFilter.ALL, PieceFilter.Sort.CODE, 1, 1).total();
    }

    private static void refused(Runnable act, Consumer<FieldError> claim) {
        assertThatThrownBy(act::run)
                .isInstanceOfSatisfying(
                        InvalidInputException.class,
                        e -> assertThat(e.errors())
                                .satisfies(errors ->
                                        claim.accept(List.copyOf(errors).get(0))));
    }
}
