package org.scarfwright.rack;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/**
 * Shares an amount out by volume so that the shares add up to it.
 *
 * <p>Share i is amount · v_i / Σv, rounded down to a hundredth; the hundredths that are over go to the largest remainders, the
 * earlier one where two are alike. <b>Source:</b> the method of largest remainders, as it is used to give out seats by votes.
 */
final class CostShares {
    private CostShares() {}

    /**
     * @param amount not negative
     * @param volumes none negative, at least one positive
     */
    static List<Money> of(Money amount, List<Volume> volumes) {
        BigInteger sum = volumes.stream().map(Volume::um3).reduce(BigInteger.ZERO, BigInteger::add);
        if (sum.signum() <= 0) {
            throw new IllegalArgumentException("nothing to share out by");
        }
        long[] shares = new long[volumes.size()];
        List<BigInteger> remainders = new ArrayList<>();
        long over = amount.cents();
        for (int i = 0; i < shares.length; i++) {
            BigInteger[] parts = BigInteger.valueOf(amount.cents())
                    .multiply(volumes.get(i).um3())
                    .divideAndRemainder(sum);
            shares[i] = parts[0].longValueExact();
            remainders.add(parts[1]);
            over -= shares[i];
        }
        List<Integer> largest = IntStream.range(0, shares.length)
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> remainders.get(i)).reversed())
                .toList();
        for (int i = 0; i < over; i++) {
            shares[largest.get(i)]++;
        }
        return Arrays.stream(shares).mapToObj(Money::new).toList();
    }
}
