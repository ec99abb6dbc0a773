package org.scarfwright.necks.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.NeckOrder;

class OrderReaderTest {
    private final OrderReader reader = new OrderReader(new TreeSet<>(List.of("OSIER-B", "WITHY-6")));

    private NeckOrder read(Draft draft) {
        Reading<NeckOrder> reading = reader.read(draft);
        assertThat(reading.flaws()).isEmpty();
        return reading.value().orElseThrow();
    }

    private void refuses(OrderField field, String text, String sentence) {
        assertThat(reader.read(Drafts.order().with(field, text)).flaws())
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.field()).isEqualTo(field);
                    assertThat(field.label() + " " + f.message()).isEqualTo(sentence);
                });
    }

    @Test
    void takesTheWeekFromTheDueDayAndTheUsualPriority() {
        NeckOrder order = read(Drafts.order());
        assertThat(order.due()).isEqualTo(LocalDate.of(2026, 12, 4));
        assertThat(order.week()).hasToString("2026-W49");
        assertThat(order.priority()).isEqualTo(5);
        assertThat(order.customerNote()).isEmpty();
    }

    @Test
    void readsTheDesignInAnyCaseAndKeepsAWeekOfItsOwn() {
        NeckOrder order = read(Drafts.order()
                .with(OrderField.DESIGN, " withy-6 ")
                .with(OrderField.WEEK, "2026-w48")
                .with(OrderField.PRIORITY, "9")
                .with(OrderField.NOTE, "Left-handed"));
        assertThat(order.designCode()).isEqualTo("WITHY-6");
        assertThat(order.week()).hasToString("2026-W48");
        assertThat(read(OrderText.draftOf(order))).isEqualTo(order);
    }

    @Test
    void refusesAnOrderWithoutDesign() {
        refuses(OrderField.DESIGN, "", "Design is empty; an order needs the code of a design, for example OSIER-B");
        refuses(OrderField.DESIGN, "WITHI-6", "Design “WITHI-6” is no design; did you mean WITHY-6?");
        refuses(
                OrderField.DESIGN,
                "QQQQQQQQ",
                "Design “QQQQQQQQ” is no design; enter the design first, or write one there is, for example OSIER-B");
        assertThat(new OrderReader(Set.of()).read(Drafts.order()).flaws())
                .extracting(Flaw::message)
                .containsExactly("“WITHY-6” is no design; there is no design yet; enter it first");
    }

    @Test
    void refusesQuantitiesAndPrioritiesOutOfRange() {
        refuses(OrderField.QUANTITY, "", "Quantity is empty; write a whole number from 1 to 999");
        refuses(OrderField.QUANTITY, "0", "Quantity is 0; write a whole number from 1 to 999");
        refuses(OrderField.QUANTITY, "1000", "Quantity is 1000; write a whole number from 1 to 999");
        refuses(OrderField.QUANTITY, "-2", "Quantity “-2” is negative; write a whole number from 1 to 999");
        refuses(OrderField.QUANTITY, "1.5", "Quantity “1.5” is not a whole number; write a whole number from 1 to 999");
        refuses(
                OrderField.QUANTITY,
                "99999999999",
                "Quantity “99999999999” is not a whole number; write a whole number from 1 to 999");
        refuses(OrderField.PRIORITY, "10", "Priority is 10; write a whole number from 1 to 9");
    }

    @Test
    void refusesDaysAndWeeksThatAreNotThere() {
        refuses(OrderField.DUE, "", "Due is empty; write a day as year-month-day, for example 2026-12-04");
        refuses(
                OrderField.DUE,
                "4.12.2026",
                "Due “4.12.2026” is not a day of the calendar; write year-month-day, for example 2026-12-04");
        refuses(
                OrderField.DUE,
                "2026-02-29",
                "Due “2026-02-29” is not a day of the calendar; write year-month-day, for example 2026-12-04");
        refuses(OrderField.DUE, "1026-12-04", "Due is 1026-12-04; it lies between 2000-01-01 and 2999-12-31");
        refuses(OrderField.WEEK, "49", "Week “49” is not a week; write for example 2026-W49");
        refuses(
                OrderField.WEEK,
                "2027-W53",
                "Week is not there: the year 2027 has no week 53; its weeks run from W01 to W52");
    }

    @Test
    void tellsEverythingThatIsWrongAtOnce() {
        assertThat(reader.read(new Draft(Map.of(), LengthUnit.MM)).flaws())
                .extracting(Flaw::field)
                .containsExactly(OrderField.DESIGN, OrderField.QUANTITY, OrderField.DUE);
    }

    @Test
    void makesCodesWithoutLettersThatLookAlike() {
        assertThat(OrderCodes.LETTERS).doesNotContain("O", "0", "I", "1", "L", "B", "8", "S", "5", "Z", "2", "G", "6");
        OrderCodes codes = new OrderCodes(new Random(7));
        Set<String> taken = new TreeSet<>();
        for (int i = 0; i < 5_000; i++) {
            String code = codes.next(taken::contains);
            assertThat(code).matches("[" + OrderCodes.LETTERS + "]{4,}");
            assertThat(taken.add(code)).isTrue();
        }
        assertThat(codes.next(code -> code.length() == 4)).hasSize(5);
    }
}
