package org.scarfwright.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.PieceFilter;
import org.scarfwright.rack.PieceUses;
import org.scarfwright.rack.PieceUses.Asked;
import org.scarfwright.rack.PieceUses.Use;
import org.scarfwright.rack.Pieces;
import org.scarfwright.rack.Rack;
import org.scarfwright.shop.ShopStart;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** What the rack learns from the rules of plans, on the demo shop's designs and orders, whichever engine keeps them. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class RackUsesContract {
    private static final Clock WEDNESDAY = Clock.fixed(Instant.parse("2026-11-25T10:00:00Z"), ZoneOffset.UTC);

    @Autowired
    ShopStart start;

    @Autowired
    PlanService.Rooms rooms;

    @Autowired
    JdbcPlans jdbcPlans;

    @Autowired
    Plans plans;

    @Autowired
    Pieces pieces;

    @Autowired
    Rack rack;

    @Autowired
    PieceUses asTheProgramHasThem;

    @Autowired
    JdbcClient jdbc;

    private PieceUses uses;

    @BeforeEach
    void onAFixedDay() {
        uses = new RackUses(rooms, jdbcPlans, WEDNESDAY);
    }

    private Piece add(String code, String length, String width, String thickness) {
        return pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, code)
                        .put(PieceField.WOOD, "maple_sugar")
                        .put(PieceField.LENGTH, length)
                        .put(PieceField.WIDTH, width)
                        .put(PieceField.THICKNESS, thickness),
                LengthUnit.MM);
    }

    private List<String> able(PieceFilter.Can can) {
        return pieces
                .list(new PieceFilter("ft-", null, null, null, null, null, null, can), PieceFilter.Sort.CODE, 1, 50)
                .pieces()
                .stream()
                .map(Piece::code)
                .toList();
    }

    private Use ofDesign(Piece piece, String design) {
        return uses.coming(piece).stream()
                .filter(u -> u.design().equals(design))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void withoutDesignsAndOrdersNothingIsSaid() {
        Piece piece = add("FT-1", "720", "90", "30");
        assertThat(uses.coming(piece)).isEmpty();
        assertThat(uses.designs(piece)).isEmpty();
        assertThat(uses.standard().of(piece)).isEqualTo(new PieceUses.Fitness(false, false));
        assertThat(able(PieceFilter.Can.NECK)).isEmpty();
    }

    @Test
    void everyPieceOfAPlanFitsWhatThePlanMakesOfIt() {
        start.loadDemo();
        Plan plan = plans.make(Shelf.WEEK);
        assertThat(plan.pairings()).hasSizeGreaterThan(10).allSatisfy(p -> {
            Use neck = ofDesign(rack.find(p.neck().piece()).orElseThrow(), p.design());
            Use head = ofDesign(rack.find(p.head().piece()).orElseThrow(), p.design());
            assertThat(neck.neck().fits())
                    .as("%s as the neck of %s", p.neck().piece(), p.design())
                    .isTrue();
            assertThat(neck.neck().words()).startsWith("fits ");
            assertThat(head.head().fits())
                    .as("%s as the head of %s", p.head().piece(), p.design())
                    .isTrue();
        });
    }

    @Test
    void listsWhatIsStillToBeMadeInTheOrderPlansFillIt() {
        start.loadDemo();
        Piece piece = rack.find("M-01").orElseThrow();
        List<Use> all = uses.coming(piece);
        assertThat(all)
                .extracting(Use::week)
                .isSorted()
                .contains("2026-W49")
                .allMatch(w -> w.compareTo("2026-W48") >= 0);
        assertThat(ofDesign(piece, "WITHY-6").orders()).contains(new Asked("A-101", LocalDate.of(2026, 11, 30), 2));

        Plan plan = plans.make(Shelf.WEEK);
        plans.accept(plan.id());
        assertThat(uses.coming(piece))
                .extracting(Use::design)
                .as("the plan made all of them but one")
                .doesNotContain("WITHY-6");
        assertThat(new RackUses(rooms, jdbcPlans, Clock.fixed(Instant.parse("2026-11-01T10:00:00Z"), ZoneOffset.UTC))
                        .coming(piece))
                .as("a week that is five weeks away is not looked at")
                .isEmpty();
    }

    @Test
    void refusalNamesTheWayThatComesClosestAndByHowMuchItIsShort() {
        start.loadDemo();
        // WITHY-6 overlaid takes least at 13°: 486.1 mm with allowances and kerf; too short by what is missing to it.
        Piece shortPiece = add("FT-2", "470", "80", "26");
        PieceUses.Answer neck = ofDesign(shortPiece, "WITHY-6").neck();
        assertThat(neck.fits()).isFalse();
        assertThat(neck.words()).contains("too short overlaid at 13°");
        assertThat(neck.shortBy()).isNotNull();
        assertThat(uses.designs(shortPiece))
                .filteredOn(d -> d.design().equals("WITHY-6") && d.neck())
                .singleElement()
                .satisfies(d -> {
                    assertThat(d.needs())
                            .extracting(PieceUses.Needed::arrangement)
                            .containsExactly("underlaid", "overlaid");
                    assertThat(d.needs().get(1).length().minus(Shelf.mm("470"))).isEqualTo(neck.shortBy());
                    assertThat(d.thickness()).isEqualTo(Shelf.mm("20"));
                    assertThat(d.answer()).isEqualTo(neck);
                });
        assertThat(ofDesign(shortPiece, "WITHY-6").head().words()).startsWith("fits underlaid at 10°, taking ");
        assertThat(ofDesign(shortPiece, "SALLOW-7").neck().words())
                .isEqualTo("it is Hard maple (sugar), and the neck asks for Black walnut");
    }

    @Test
    void onePieceThatMustGiveBothIsAskedForBoth() {
        start.loadDemo();
        Use wenge = ofDesign(rack.find("G-01").orElseThrow(), "FURZE-12");
        assertThat(wenge.neck().fits()).isFalse();
        assertThat(wenge.neck()).isEqualTo(wenge.head());
        assertThat(wenge.neck().words())
                .isEqualTo("it gives the neck or the head, and this design wants both from one piece");
    }

    @Test
    void filterOfWhatAPieceCanBeFollowsThePiecesAndTheShop() {
        add("FT-1", "720", "90", "30");
        assertThat(able(PieceFilter.Can.NECK)).as("no design is on file").isEmpty();
        jdbc.sql("delete from moisture_reading").update();
        jdbc.sql("delete from warp_reading").update();
        jdbc.sql("delete from piece").update();
        start.loadDemo();
        add("FT-1", "720", "90", "30");
        add("FT-2", "200", "90", "20");
        add("FT-3", "720", "90", "9");

        assertThat(able(PieceFilter.Can.NECK)).containsExactly("FT-1");
        assertThat(able(PieceFilter.Can.HEAD)).containsExactly("FT-1", "FT-2");
        assertThat(able(PieceFilter.Can.NECK)).as("asked again").containsExactly("FT-1");

        pieces.measure(rack.find("FT-1").orElseThrow(), new PieceCells().put(PieceField.BOW, "9"), LengthUnit.MM);
        assertThat(able(PieceFilter.Can.NECK)).as("it is out of straight now").isEmpty();
        assertThat(able(PieceFilter.Can.HEAD)).containsExactly("FT-1", "FT-2");
        assertThat(rack.find("FT-2").orElseThrow().version())
                .as("judging is no change")
                .isZero();

        jdbc.sql("update piece set state = 'USED_UP' where code = 'FT-2'").update();
        assertThat(able(PieceFilter.Can.HEAD)).containsExactly("FT-1");
        jdbc.sql("update shop_settings set planing_per_face_um = 10000").update();
        assertThat(able(PieceFilter.Can.HEAD))
                .as("the shop planes more than there is")
                .isEmpty();
    }

    @Test
    void filterSaysTheSameAsTheRulesForEveryPieceOfTheDemoShop() {
        start.loadDemo();
        PieceUses.Standard standard = asTheProgramHasThem.standard();
        for (PieceFilter.Can can : PieceFilter.Can.values()) {
            List<String> listed = pieces
                    .list(new PieceFilter("", null, null, null, null, null, null, can), PieceFilter.Sort.CODE, 1, 500)
                    .pieces()
                    .stream()
                    .map(Piece::code)
                    .toList();
            List<String> judged = rack.free().stream()
                    .filter(p -> asTheProgramHasThem.designs(p).stream()
                            .anyMatch(d -> d.neck() == (can == PieceFilter.Can.NECK)
                                    && d.answer().fits()))
                    .map(Piece::code)
                    .toList();
            assertThat(listed).isNotEmpty().isEqualTo(judged);
        }
        assertThat(standard.key())
                .hasSize(64)
                .isEqualTo(asTheProgramHasThem.standard().key());
    }
}
