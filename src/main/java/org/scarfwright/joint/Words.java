package org.scarfwright.joint;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;

/** Numbers inside sentences and drawings. */
final class Words {
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private static final BigDecimal TENTH = new BigDecimal("0.1");

    private Words() {}

    /** Nearest tenth of a millimetre, such as 115.2 mm. */
    static String mm(double mm) {
        return MM.print(Length.nearestMm(mm));
    }

    /** The next tenth of a millimetre that is more, so that a limit that must be passed is passed when it is followed. */
    static String mmMore(double mm) {
        return BigDecimal.valueOf(mm).setScale(1, RoundingMode.FLOOR).add(TENTH).toPlainString() + " mm";
    }

    /** The next tenth of a millimetre that is not less. */
    static String mmAtLeast(double mm) {
        return BigDecimal.valueOf(mm).setScale(1, RoundingMode.CEILING).toPlainString() + " mm";
    }

    /** The next tenth of a millimetre that is not more. */
    static String mmAtMost(double mm) {
        return BigDecimal.valueOf(mm).setScale(1, RoundingMode.FLOOR).toPlainString() + " mm";
    }

    /** The next tenth of a degree that is more. */
    static String degreesMore(double radians) {
        return BigDecimal.valueOf(Math.toDegrees(radians))
                        .setScale(1, RoundingMode.FLOOR)
                        .add(TENTH)
                        .toPlainString()
                + "°";
    }

    static String plain(Length length) {
        return length.toString();
    }

    static String plain(Angle angle) {
        return angle.toString();
    }
}
