package org.scarfwright.rack;

import java.math.BigInteger;
import java.util.List;
import org.scarfwright.measure.Apportionment;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/** Shares an amount out by volume so that the shares add up to it; see {@link Apportionment}. */
final class CostShares {
    private CostShares() {}

    /**
     * @param amount not negative
     * @param volumes none negative, at least one positive
     */
    static List<Money> of(Money amount, List<Volume> volumes) {
        return Apportionment.of(
                        BigInteger.valueOf(amount.cents()),
                        volumes.stream().map(Volume::um3).toList())
                .stream()
                .map(share -> new Money(share.longValueExact()))
                .toList();
    }
}
