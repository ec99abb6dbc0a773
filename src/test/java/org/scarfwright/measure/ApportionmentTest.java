package org.scarfwright.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ApportionmentTest {
    private static List<BigInteger> whole(long... values) {
        return java.util.Arrays.stream(values).mapToObj(BigInteger::valueOf).toList();
    }

    /** Worked by hand: 100 · 1 / 6 = 16.67, 100 · 2 / 6 = 33.33, 100 · 3 / 6 = 50; the one left over goes to .67. */
    @Test
    void theUnitThatIsOverGoesToTheLargestRemainder() {
        assertThat(Apportionment.of(BigInteger.valueOf(100), whole(1, 2, 3))).isEqualTo(whole(17, 33, 50));
    }

    @Test
    void ofLikeRemaindersTheEarlierGetsTheUnit() {
        assertThat(Apportionment.of(BigInteger.valueOf(100), whole(1, 1, 1))).isEqualTo(whole(34, 33, 33));
    }

    @Test
    void whatIsTakenBackIsSharedAsItWasGiven() {
        assertThat(Apportionment.of(BigInteger.valueOf(-100), whole(1, 2, 3))).isEqualTo(whole(-17, -33, -50));
    }

    @Test
    void refusesToShareByNothing() {
        assertThatThrownBy(() -> Apportionment.of(BigInteger.TEN, List.of()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Apportionment.of(BigInteger.TEN, whole(0, 0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Apportionment.of(BigInteger.TEN, whole(2, -1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The method's known property: no other sharing out in whole units is nearer, taken by the sum of distances. */
    @Test
    void noOtherSharingOutIsNearer() {
        Random random = new Random(20261126);
        for (int round = 0; round < 500; round++) {
            int amount = random.nextInt(13);
            long[] weights = {random.nextInt(9), random.nextInt(9), 1 + random.nextInt(9)};
            long sum = Stream.of(weights[0], weights[1], weights[2])
                    .mapToLong(w -> w)
                    .sum();
            List<BigInteger> shares = Apportionment.of(BigInteger.valueOf(amount), whole(weights));
            assertThat(shares.stream().reduce(BigInteger.ZERO, BigInteger::add)).isEqualTo(BigInteger.valueOf(amount));
            long nearest = Long.MAX_VALUE;
            for (int a = 0; a <= amount; a++) {
                for (int b = 0; a + b <= amount; b++) {
                    nearest = Math.min(nearest, distance(new long[] {a, b, amount - a - b}, weights, amount, sum));
                }
            }
            assertThat(distance(
                            shares.stream()
                                    .mapToLong(BigInteger::longValueExact)
                                    .toArray(),
                            weights,
                            amount,
                            sum))
                    .isEqualTo(nearest);
        }
    }

    /** Σ |share − amount · w / Σw|, times Σw so that it stays whole. */
    private static long distance(long[] shares, long[] weights, long amount, long sum) {
        long distance = 0;
        for (int i = 0; i < shares.length; i++) {
            distance += Math.abs(shares[i] * sum - amount * weights[i]);
        }
        return distance;
    }
}
