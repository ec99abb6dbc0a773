package org.scarfwright.matching;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.measure.Money;

/**
 * How much more book value a near-equal plan may spend than the plan it is near to.
 *
 * @param hundredths hundredths of the shop's currency, or of a per cent of what the other plan spends
 * @param percent whether it is per cent
 */
public record ExtraCost(long hundredths, boolean percent) {
    /** Twice the wood is not near. */
    public static final int MOST_PERCENT = 100;

    /** @throws org.scarfwright.measure.MeasureFormatException with a sentence that says what would be right */
    public static ExtraCost parse(String text) {
        String typed = text.strip();
        boolean percent = typed.endsWith("%");
        Money read = Money.parse(percent ? typed.substring(0, typed.length() - 1) : typed);
        if (percent && read.cents() > MOST_PERCENT * 100L) {
            throw new MeasureFormatException(
                    "“" + typed + "” is more than " + MOST_PERCENT + " %; write for example 5 %");
        }
        return new ExtraCost(read.cents(), percent);
    }

    /**
     * In the shop's currency.
     *
     * @param spent what the other plan spends; nothing is the least
     * @return rounded down to whole hundredths
     */
    public BigDecimal of(BigDecimal spent) {
        BigDecimal own = BigDecimal.valueOf(hundredths, 2);
        return percent
                ? own.multiply(spent.max(BigDecimal.ZERO)).movePointLeft(2).setScale(2, RoundingMode.FLOOR)
                : own;
    }

    /** Such as 2.50 EUR or 5 %. */
    public String words(String currency) {
        BigDecimal own = BigDecimal.valueOf(hundredths, 2);
        return percent ? own.stripTrailingZeros().toPlainString() + " %" : own.toPlainString() + " " + currency;
    }
}
