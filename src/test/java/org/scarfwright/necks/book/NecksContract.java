package org.scarfwright.necks.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.Designs;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.Orders;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.shop.DemoShopRequested;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.EditConditionException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import org.scarfwright.web.NotFoundException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** What the book of designs and orders keeps, whichever engine keeps its rows. */
@Transactional
@SuppressWarnings("NullAway.Init")
abstract class NecksContract {
    private static final IsoWeek W49 = new IsoWeek(2026, 49);

    @Autowired
    DesignBook designBook;

    @Autowired
    OrderBook orderBook;

    @Autowired
    Designs designs;

    @Autowired
    Orders orders;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ApplicationEventPublisher events;

    private NeckDesign enter(Draft draft) {
        return designBook.add(List.of(Entry.ofForm(draft))).get(0).value().orElseThrow();
    }

    private NeckOrder order(Draft draft) {
        return orderBook.add(List.of(Entry.ofForm(draft))).get(0).value().orElseThrow();
    }

    private List<Checked<NeckDesign>> designFile(String text) {
        return designBook.add(NeckFiles.designs(CsvTable.read(text, NeckFiles.designColumns(), NeckFiles.LIMITS)));
    }

    private List<Checked<NeckOrder>> orderFile(String text) {
        return orderBook.add(NeckFiles.orders(CsvTable.read(text, NeckFiles.orderColumns(), NeckFiles.LIMITS)));
    }

    private static List<FieldError> errorsOf(Runnable act) {
        try {
            act.run();
        } catch (InvalidInputException e) {
            return e.errors();
        }
        return List.of();
    }

    @Test
    void keepsADesignAsItWasEntered() {
        enter(Drafts.design()
                .with(DesignField.HEAD_LENGTH, "7 1/8 in")
                .with(DesignField.NECK_WOODS, "walnut_black maple_sugar")
                .with(DesignField.HEAD_WOODS, "sapele")
                .with(DesignField.MATCH, "same_lot")
                .with(DesignField.LINES_MEET, "yes")
                .with(DesignField.WINGS, "yes"));
        NeckDesign kept = designs.find("withy-6").orElseThrow();
        assertThat(kept.version()).isZero();
        assertThat(kept.headLength().typed()).isEqualTo("7 1/8 in");
        assertThat(kept.headLength().length().um()).isEqualTo(180_975);
        assertThat(kept.neckWoods()).containsExactly("walnut_black", "maple_sugar");
        assertThat(kept.headWoods()).containsExactly("sapele");
        assertThat(kept.linesMeet()).isTrue();
        assertThat(kept.wingsAllowed()).isTrue();
        assertThat(designs.all()).containsExactly(kept);
        assertThat(designs.find("NONE")).isEmpty();
    }

    @Test
    void changesADesignForWhoeverSawItLast() {
        enter(Drafts.design());
        Entry change = Entry.ofForm(Drafts.design()
                .with(DesignField.ANGLE, "12")
                .with(DesignField.ARRANGEMENTS, "overlaid")
                .with(DesignField.CODE, ""));
        NeckDesign changed = designBook.change("WITHY-6", 0, change);
        assertThat(changed.version()).isEqualTo(1);
        assertThat(changed.angles()).hasSize(1);
        assertThat(changed.arrangements()).hasSize(1);
        assertThatThrownBy(() -> designBook.change("WITHY-6", 0, change)).isInstanceOf(EditConditionException.class);
        assertThatThrownBy(() -> designBook.change("NONE", 0, change))
                .isInstanceOf(NotFoundException.class)
                .hasMessage("There is no design “NONE”.");
        assertThat(errorsOf(() -> designBook.change(
                        "WITHY-6", 1, Entry.ofForm(Drafts.design().with(DesignField.CODE, "OTHER")))))
                .extracting(FieldError::sentence)
                .containsExactly("Code cannot be changed; this design stays “WITHY-6”.");
    }

    @Test
    void doesNotDoubleADesignAndSaysWhatDiffers() {
        enter(Drafts.design());
        Checked<NeckDesign> again = designBook
                .add(List.of(Entry.ofForm(Drafts.design().with(DesignField.NECK_LENGTH, "45.7 cm"))))
                .get(0);
        assertThat(again.fate()).isEqualTo(Fate.UNCHANGED);
        assertThat(errorsOf(() -> enter(
                        Drafts.design().with(DesignField.NECK_LENGTH, "460").with(DesignField.WINGS, "yes"))))
                .singleElement()
                .satisfies(e -> {
                    assertThat(e.pointer()).isEqualTo("/code");
                    assertThat(e.sentence())
                            .isEqualTo(
                                    "Code “WITHY-6” is taken: neck length is 457 mm there and 460 mm here, wings is no"
                                            + " there and yes here; edit that design, or give this one a code of its own.");
                });
        assertThat(designs.all()).hasSize(1);
    }

    @Test
    void readsAFileOfDesignsAllOrNothing() {
        String head = "code,name,neck_length,nut_width,heel_width,neck_thickness,head_length,head_width,head_thickness,"
                + "angle,arrangements,finish,neck_woods,unit\n";
        String good = "A-1,One,457,43,57,20,180,76,15,10,both,opaque,maple_sugar,mm\n";
        String inches = "A-2,Two,18,1 3/4,2 1/4,1,7 1/8,3,5/8,13,overlaid,clear,,in\n";
        String bad = "A-3,Three,3 km,43,57,20,180,76,25,90,none,shiny,maple_shugar,yard\n";
        List<FieldError> errors = errorsOf(() -> designFile(head + good + bad));
        assertThat(errors)
                .extracting(FieldError::pointer)
                .containsExactlyInAnyOrder(
                        "/rows/3/unit",
                        "/rows/3/neck_length",
                        "/rows/3/head_thickness",
                        "/rows/3/angle",
                        "/rows/3/arrangements",
                        "/rows/3/finish",
                        "/rows/3/neck_woods");
        assertThat(errors).extracting(FieldError::value).contains("3 km", "25", "90", "yard");
        assertThat(designs.all()).isEmpty();

        assertThat(designFile(head + good + inches)).extracting(Checked::fate).containsExactly(Fate.NEW, Fate.NEW);
        assertThat(designFile(head + good + inches))
                .extracting(Checked::fate)
                .containsExactly(Fate.UNCHANGED, Fate.UNCHANGED);
        assertThat(designs.all()).hasSize(2);
        assertThat(designs.find("A-2").orElseThrow().nutWidth().typed()).isEqualTo("1 3/4");
        assertThat(errorsOf(() -> designFile(head + good.replace("457", "458"))))
                .extracting(FieldError::pointer)
                .containsExactly("/rows/2/code");
        assertThat(errorsOf(() -> designFile(head
                        + good.replace("A-1", "B-1")
                        + good.replace("A-1", "B-1").replace("457", "458"))))
                .extracting(FieldError::pointer)
                .containsExactly("/rows/3/code");
    }

    @Test
    void keepsOrdersByWeekPriorityAndDay() {
        enter(Drafts.design());
        order(Drafts.order().with(OrderField.CODE, "A-3").with(OrderField.DUE, "2026-12-03"));
        order(Drafts.order().with(OrderField.CODE, "A-1").with(OrderField.DUE, "2026-12-03"));
        order(Drafts.order().with(OrderField.CODE, "A-2").with(OrderField.DUE, "2026-12-01"));
        order(Drafts.order().with(OrderField.CODE, "A-9").with(OrderField.PRIORITY, "9"));
        order(Drafts.order().with(OrderField.CODE, "B-1").with(OrderField.DUE, "2027-01-03"));
        assertThat(orders.inWeek(W49)).extracting(NeckOrder::code).containsExactly("A-9", "A-2", "A-1", "A-3");
        assertThat(orders.weeks()).extracting(IsoWeek::toString).containsExactly("2026-W49", "2026-W53");
        assertThat(orders.find("b-1")).isPresent();
        assertThat(orders.find("b-2")).isEmpty();
    }

    @Test
    void leavesACancelledOrderOnFileAndOutOfItsWeek() {
        enter(Drafts.design());
        order(Drafts.order());
        assertThat(orderBook.cancel("A-101").cancelled()).isTrue();
        assertThat(orderBook.cancel("A-101").order().version()).isEqualTo(1);
        assertThat(orders.inWeek(W49)).isEmpty();
        assertThat(orders.weeks()).isEmpty();
        assertThat(orderBook.weeksOnFile()).containsExactly(W49);
        assertThat(orderBook.entries(Optional.of(W49)))
                .singleElement()
                .satisfies(e -> assertThat(e.cancelled()).isTrue());
        assertThatThrownBy(() -> orderBook.change("A-101", 1, Entry.ofForm(Drafts.order())))
                .isInstanceOf(ConflictException.class)
                .hasMessage("Order A-101 is cancelled; restore it first.");
        assertThat(orderBook.restore("A-101").cancelled()).isFalse();
        assertThat(orders.inWeek(W49)).hasSize(1);
        assertThatThrownBy(() -> orderBook.cancel("NONE")).isInstanceOf(NotFoundException.class);
    }

    @Test
    void changesAnOrderForWhoeverSawItLast() {
        enter(Drafts.design());
        order(Drafts.order());
        Entry change =
                Entry.ofForm(Drafts.order().with(OrderField.QUANTITY, "5").with(OrderField.WEEK, "2026-W48"));
        assertThat(orderBook.change("A-101", 0, change).order().quantity()).isEqualTo(5);
        assertThat(orders.inWeek(new IsoWeek(2026, 48))).hasSize(1);
        assertThatThrownBy(() -> orderBook.change("A-101", 0, change)).isInstanceOf(EditConditionException.class);
        assertThat(errorsOf(() ->
                        orderBook.change("A-101", 1, Entry.ofForm(Drafts.order().with(OrderField.DESIGN, "OTHER")))))
                .extracting(FieldError::pointer)
                .containsExactly("/design");
    }

    @Test
    void refusesAnOrderWithoutDesign() {
        assertThat(errorsOf(() -> order(Drafts.order())))
                .extracting(FieldError::sentence)
                .containsExactly("Design “WITHY-6” is no design; there is no design yet; enter it first.");
        assertThat(orders.weeks()).isEmpty();
    }

    @Test
    void readsTheSameFileOfOrdersTwiceWithoutDoubling() {
        enter(Drafts.design());
        String file = """
                code,design,quantity,due,note
                A-1,WITHY-6,1,2026-12-01,
                ,WITHY-6,2,2026-12-02,twin
                ,WITHY-6,2,2026-12-02,twin
                """;
        List<Checked<NeckOrder>> first = orderFile(file);
        assertThat(first).extracting(Checked::fate).containsOnly(Fate.NEW);
        assertThat(first)
                .extracting(c -> c.value().orElseThrow().code())
                .doesNotHaveDuplicates()
                .doesNotContain("");
        assertThat(orderFile(file)).extracting(Checked::fate).containsOnly(Fate.UNCHANGED);
        assertThat(orders.inWeek(W49)).hasSize(3);
        assertThat(orderFile(file + ",WITHY-6,2,2026-12-02,twin\n"))
                .extracting(Checked::fate)
                .containsExactly(Fate.UNCHANGED, Fate.UNCHANGED, Fate.UNCHANGED, Fate.NEW);
        assertThat(errorsOf(() -> orderFile("code,design,quantity,due\nA-1,WITHY-6,7,2026-12-01\n,,0,soon\n")))
                .extracting(FieldError::pointer)
                .containsExactly("/rows/2/code", "/rows/3/design", "/rows/3/quantity", "/rows/3/due");
        assertThat(orders.inWeek(W49)).hasSize(4);
    }

    @Test
    void entersTwoOrdersThatSayTheSameWhenTheyComeFromAForm() {
        enter(Drafts.design());
        Draft draft = Drafts.order().with(OrderField.CODE, "");
        assertThat(order(draft).code()).isNotEqualTo(order(draft).code());
        assertThat(orders.inWeek(W49)).hasSize(2);
    }

    @Test
    void holdsItsRowsToTheRules() {
        enter(Drafts.design());
        order(Drafts.order());
        assertThatThrownBy(() -> jdbc.sql("update neck_order set quantity = 0").update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void holdsADesignThatIsOrdered() {
        enter(Drafts.design());
        order(Drafts.order());
        assertThatThrownBy(() -> {
                    jdbc.sql("delete from neck_design_angle").update();
                    jdbc.sql("delete from neck_design_arrangement").update();
                    jdbc.sql("delete from neck_design").update();
                })
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void holdsTheHeadToTheNeckStock() {
        enter(Drafts.design());
        assertThatThrownBy(() -> jdbc.sql("update neck_design set head_thickness_um = neck_thickness_um + 1")
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    @Test
    void loadsTheDemoShopsDesignsAndOrdersForOneWeek() throws Exception {
        events.publishEvent(new DemoShopRequested());
        assertThat(designs.all()).hasSize(8);
        assertThat(orders.weeks()).containsExactly(W49);
        List<NeckOrder> week = orders.inWeek(W49);
        assertThat(week).hasSize(12).allSatisfy(o -> {
            assertThat(IsoWeek.of(o.due())).isEqualTo(W49);
            assertThat(designs.find(o.designCode())).isPresent();
        });
        byte[] file = getClass().getResourceAsStream("/demo-data/designs.csv").readAllBytes();
        assertThat(designFile(new String(file, StandardCharsets.UTF_8)))
                .extracting(Checked::fate)
                .containsOnly(Fate.UNCHANGED);
    }

    @Test
    void readsADraftInTheShopsUnit() {
        Draft inches = new Draft(Drafts.design().texts(), LengthUnit.INCH)
                .with(DesignField.NECK_LENGTH, "18")
                .with(DesignField.NUT_WIDTH, "1 3/4")
                .with(DesignField.HEEL_WIDTH, "2 1/4")
                .with(DesignField.NECK_THICKNESS, "1")
                .with(DesignField.HEAD_LENGTH, "7.5")
                .with(DesignField.HEAD_WIDTH, "3")
                .with(DesignField.HEAD_THICKNESS, "5/8");
        assertThat(enter(inches).neckLength().typed()).isEqualTo("18 in");
        assertThat(designs.find("WITHY-6").orElseThrow().headLength().length().um())
                .isEqualTo(190_500);
    }
}
