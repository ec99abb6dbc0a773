package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;

/** What a second reading says about a piece, in sentences: whether its warp is even, and what it counts as where it is not. */
public final class MiddleWords {
    /** Closer than anybody reads a straightedge. */
    private static final Length ALIKE = Length.ofUm(100);

    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private MiddleWords() {}

    /** One sentence for each kind of warp that was read over the middle half too. */
    public static List<String> of(Warp warp) {
        List<String> sentences = new ArrayList<>();
        rise(sentences, "bow", warp.bow(), warp.middle().bow());
        rise(sentences, "crook", warp.crook(), warp.middle().crook());
        twist(sentences, warp.twist(), warp.middle().twist());
        return List.copyOf(sentences);
    }

    private static void rise(List<String> sentences, String name, Length whole, @Nullable Length middle) {
        if (middle == null) {
            return;
        }
        String read = "Over the middle half the " + name + " is " + MM.print(middle);
        Length counts = WarpLaw.asEvenRise(whole, middle);
        if (!counts.minus(whole).isLongerThan(ALIKE)) {
            sentences.add(read + ", as one even arc would show.");
            return;
        }
        String even = ", where one even arc would show " + MM.print(Length.nearestMm(whole.mm() / 4)) + ": ";
        if (middle.times(2).isLongerThan(whole)) {
            sentences.add(read + even + "that is more than half of the whole, so one of the two readings is too small. "
                    + "The whole counts as " + MM.print(middle.times(2)) + ", and parts as cut from an even " + name
                    + " of "
                    + MM.print(counts) + ".");
            return;
        }
        String where = middle.times(4).isLongerThan(whole) ? "the middle is" : "the ends are";
        sentences.add(read + even + where + " bent more. Parts count as cut from an even " + name + " of "
                + MM.print(counts) + ", and none as more than " + MM.print(whole) + " out.");
    }

    private static void twist(List<String> sentences, Length whole, @Nullable Length middle) {
        if (middle == null) {
            return;
        }
        String read = "Over the middle half the twist is " + MM.print(middle);
        Length counts = WarpLaw.asEvenTwist(whole, middle);
        if (!counts.minus(whole).isLongerThan(ALIKE)) {
            sentences.add(read + ", as an even twist would show.");
            return;
        }
        String where = middle.times(2).isLongerThan(whole) ? "the middle is" : "the ends are";
        sentences.add(
                read + ", where an even twist would show " + MM.print(Length.nearestMm(whole.mm() / 2)) + ": " + where
                        + " twisted more. Parts count as cut from an even twist of " + MM.print(counts)
                        + ", and none as more than "
                        + MM.print(whole.max(middle)) + " twisted.");
    }
}
