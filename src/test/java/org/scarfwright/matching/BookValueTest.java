package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scarfwright.matching.Shelf.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.SearchProblem.RestValue;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.rack.Piece;

/** What pieces and rests are booked at. The amounts are worked by hand from the shares the class names. */
class BookValueTest {
    private static final StockStandards STANDARDS = new StockStandards(mm("570"), mm("78"));
    private static final BookValue VALUE = new BookValue(STANDARDS, Shelf.settings("1", "2"), Shelf.DAY);

    private static Shelf.PieceBuilder board(String length) {
        return Shelf.piece("B1", length, "100", "25");
    }

    @Test
    void booksALongPieceAtItsCost() {
        assertThat(VALUE.ofPiece(board("1000").cost(2400).build())).isEqualTo(2400);
    }

    @Test
    void booksAPieceOfUnknownCostByItsVolume() {
        // 1000 × 100 × 25 mm are 2.5 litres at 6.00.
        assertThat(VALUE.ofPiece(board("1000").build())).isEqualTo(1500);
    }

    @Test
    void booksWarpedShortAndOldWoodLower() {
        assertThat(VALUE.ofPiece(board("1000").cost(2400).setAside(false).build()))
                .isEqualTo(960); // 40 %
        assertThat(VALUE.ofPiece(board("500").cost(2400).build())).isEqualTo(1440); // 60 %
        assertThat(VALUE.ofPiece(board("1000")
                        .cost(2400)
                        .since(LocalDate.of(2023, 11, 29))
                        .build()))
                .isEqualTo(1920); // 80 %
        assertThat(VALUE.ofPiece(board("1000")
                        .cost(2400)
                        .since(LocalDate.of(2023, 11, 30))
                        .build()))
                .isEqualTo(2400);
    }

    @Test
    void aPieceWithoutALongClearStretchIsShort() {
        assertThat(VALUE.ofPiece(
                        board("1000").cost(2400).knot("495", "505", true).build()))
                .isEqualTo(1440);
    }

    @Test
    void restsAreWorthTheirLengthAndShortOnesLess() {
        List<RestValue> rests = VALUE.ofRests(board("1000").cost(2400).build());
        assertThat(rests).containsExactly(new RestValue(120_000, 1_440_000), new RestValue(570_000, 2_400_000));
        Segment segment = new Segment(1_000_000, new int[0], rests);
        assertThat(segment.restCents(119_999)).isZero();
        assertThat(segment.restCents(120_000)).isEqualTo(172); // 0.12 m of 14.40
        assertThat(segment.restCents(570_000)).isEqualTo(1368); // 0.57 m of 24.00
    }

    @Test
    void aPieceTooNarrowToGoBackHasNoRests() {
        assertThat(VALUE.ofRests(Shelf.piece("B1", "1000", "39.9", "25").build()))
                .isEmpty();
    }

    @Test
    void noRestsOfAPieceAreWorthMoreThanIt() {
        Random r = new Random(4);
        for (int i = 0; i < 2000; i++) {
            Shelf.PieceBuilder b = board(String.valueOf(130 + r.nextInt(1500))).cost(r.nextInt(9000));
            if (r.nextBoolean()) {
                b.setAside(false);
            }
            Piece piece = b.build();
            Segment segment = new Segment(piece.length().length().um(), new int[0], VALUE.ofRests(piece));
            assertThat(segment.restCents(piece.length().length().um())).isLessThanOrEqualTo(VALUE.ofPiece(piece));
            long cut = r.nextLong(piece.length().length().um());
            assertThat(segment.restCents(cut)
                            + segment.restCents(piece.length().length().um() - cut))
                    .isLessThanOrEqualTo(VALUE.ofPiece(piece));
        }
    }

    @Test
    void shortAndNarrowAreMeasuredAgainstTheDesignsOnFile() {
        // 570.426 underlaid and 78 mm wide; overlaid 484.04 and 60 mm would be enough, but the longer and the wider
        // count.
        StockStandards s = StockStandards.of(List.of(Shelf.design().build()), Shelf.bareShop());
        assertThat(s.shortUnder()).isEqualTo(mm("570.426"));
        assertThat(s.narrowUnder()).isEqualTo(mm("78"));
        assertThat(s.isRescue(board("570").build(), Shelf.bareShop())).isTrue();
        assertThat(s.isRescue(board("571").build(), Shelf.bareShop())).isFalse();
        assertThat(s.isRescue(Shelf.piece("B1", "900", "77", "25").build(), Shelf.bareShop()))
                .isTrue();
        assertThat(s.isRescue(board("900").setAside(false).build(), Shelf.bareShop()))
                .isTrue();
    }
}
