package org.scarfwright.measure;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Shares a whole amount out in whole units so that the shares add up to it.
 *
 * <p>Share i is amount · w_i / Σw, rounded toward zero; the units that are over go to the largest remainders, the earlier one
 * where two are alike. <b>Source:</b> the method of largest remainders, as it is used to give out seats by votes.
 */
public final class Apportionment {
    private Apportionment() {}

    /**
     * @param amount negative where something is taken back; its shares then are what those of the positive amount are, negative
     * @param weights none negative, at least one positive
     * @throws IllegalArgumentException when there is nothing to share out by
     */
    public static List<BigInteger> of(BigInteger amount, List<BigInteger> weights) {
        BigInteger sum = weights.stream().reduce(BigInteger.ZERO, BigInteger::add);
        if (sum.signum() <= 0 || weights.stream().anyMatch(w -> w.signum() < 0)) {
            throw new IllegalArgumentException("nothing to share out by");
        }
        List<BigInteger> shares = new ArrayList<>();
        List<BigInteger> remainders = new ArrayList<>();
        BigInteger over = amount.abs();
        for (BigInteger weight : weights) {
            BigInteger[] parts = amount.abs().multiply(weight).divideAndRemainder(sum);
            shares.add(parts[0]);
            remainders.add(parts[1]);
            over = over.subtract(parts[0]);
        }
        // Fewer units are over than there are weights, so none gets two of them.
        IntStream.range(0, shares.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> remainders.get(i)).reversed())
                .limit(over.intValueExact())
                .forEach(i -> shares.set(i, shares.get(i).add(BigInteger.ONE)));
        return amount.signum() < 0 ? shares.stream().map(BigInteger::negate).toList() : List.copyOf(shares);
    }
}
