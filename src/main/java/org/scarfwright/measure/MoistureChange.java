package org.scarfwright.measure;

import java.math.BigDecimal;

/**
 * A difference between two moisture contents, in hundredths of a percentage point. A type of its own, because 3 points more
 * is not 3 %.
 *
 * @param hundredths hundredths of a point; negative when the wood dried
 */
public record MoistureChange(int hundredths) implements Comparable<MoistureChange> {
    public MoistureChange abs() {
        return new MoistureChange(Math.abs(hundredths));
    }

    public double points() {
        return hundredths / 100.0;
    }

    @Override
    public int compareTo(MoistureChange other) {
        return Integer.compare(hundredths, other.hundredths);
    }

    @Override
    public String toString() {
        String number = BigDecimal.valueOf(hundredths, 2).stripTrailingZeros().toPlainString();
        return number + (hundredths == 100 ? " point" : " points");
    }
}
