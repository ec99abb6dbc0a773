package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

class CostSharesTest {
    private static Volume cm3(String cm3) {
        return Volume.parseCm3(cm3);
    }

    /** By hand: 10.00 over 500, 300 and 200 cm³; and over three alike, where the cent that is over goes to the first. */
    @Test
    void sharesWorkedByHand() {
        assertThat(CostShares.of(new Money(1000), List.of(cm3("500"), cm3("300"), cm3("200"))))
                .containsExactly(new Money(500), new Money(300), new Money(200));
        assertThat(CostShares.of(new Money(1000), List.of(cm3("1"), cm3("1"), cm3("1"))))
                .containsExactly(new Money(334), new Money(333), new Money(333));
        assertThat(CostShares.of(new Money(1), List.of(cm3("1"), cm3("2"))))
                .containsExactly(new Money(0), new Money(1));
    }

    /** Against exact fractions: every share is its fraction rounded down or up to a cent, and together they are the cost. */
    @Test
    void sharesAreWithinACentOfTheirFractionsAndAddUp() {
        Random random = new Random(120);
        for (int round = 0; round < 2_000; round++) {
            List<Volume> volumes = new ArrayList<>();
            for (int i = 1 + random.nextInt(6); i > 0; i--) {
                volumes.add(new Volume(BigInteger.valueOf(1 + random.nextLong(1L << 50))));
            }
            Money cost = new Money(random.nextInt(100_000));
            List<Money> shares = CostShares.of(cost, volumes);
            BigInteger sum = volumes.stream().map(Volume::um3).reduce(BigInteger.ZERO, BigInteger::add);
            for (int i = 0; i < shares.size(); i++) {
                BigInteger exact =
                        BigInteger.valueOf(cost.cents()).multiply(volumes.get(i).um3());
                BigInteger over =
                        BigInteger.valueOf(shares.get(i).cents()).multiply(sum).subtract(exact);
                assertThat(over.abs()).isLessThan(sum);
            }
            assertThat(shares.stream().map(Money::toDecimal).reduce(BigDecimal.ZERO, BigDecimal::add))
                    .isEqualByComparingTo(cost.toDecimal());
        }
    }
}
