package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * An amount of the shop's one currency in whole hundredths. Which currency is a setting of the shop and never converted.
 *
 * @param cents hundredths
 */
public record Money(long cents) implements Comparable<Money> {
    public static final Money ZERO = new Money(0);

    /** @throws MeasureFormatException with a sentence that says what would be right */
    public static Money parse(String text) {
        BigDecimal value = Decimals.parse(text, "18 or 18.50");
        if (value.compareTo(BigDecimal.valueOf(1_000_000_000)) > 0) {
            throw new MeasureFormatException(Decimals.quote(text) + " is too large; write for example 18.50");
        }
        return new Money(Decimals.whole(value.movePointRight(2)));
    }

    public Money plus(Money other) {
        return new Money(Math.addExact(cents, other.cents));
    }

    public Money minus(Money other) {
        return new Money(Math.subtractExact(cents, other.cents));
    }

    public BigDecimal toDecimal() {
        return BigDecimal.valueOf(cents, 2);
    }

    @Override
    public int compareTo(Money other) {
        return Long.compare(cents, other.cents);
    }

    @Override
    public String toString() {
        return toDecimal().toPlainString();
    }
}
