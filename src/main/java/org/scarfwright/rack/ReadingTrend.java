package org.scarfwright.rack;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** How moisture and warp went over time, from every reading that stands. */
public interface ReadingTrend {
    /** What was measured. */
    enum Measure {
        MOISTURE("Moisture"),
        BOW("Bow"),
        CROOK("Crook"),
        CUP("Cup"),
        TWIST("Twist");

        private final String title;

        Measure(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }

    /** Months that have readings, the earliest first. */
    List<Month> months(Question question);

    /**
     * Readings, the latest first; at most {@code most}.
     *
     * @param month empty for all
     */
    List<Reading> readings(Question question, @Nullable YearMonth month, int most);

    /** All of them, the latest first, handed on one by one. */
    void each(Question question, @Nullable YearMonth month, Consumer<Reading> taker);

    /** Woods of pieces that were ever on the rack, by name. */
    List<WoodName> woods();

    /** The code of a lot as it is written, however it was typed; empty when there is none. */
    Optional<String> lot(String typed);

    /**
     * @param wood id of a wood: pieces of it alone, laminations aside; empty for all
     * @param lot code as it is written; empty for all
     * @param piece code; empty for all
     */
    record Question(
            Measure measure,
            @Nullable String wood,
            @Nullable String lot,
            @Nullable String piece) {}

    /**
     * Moisture in hundredths of a percent, warp in micrometres over the whole piece.
     *
     * @param median the middle reading, or the mean of the middle two
     */
    record Month(YearMonth month, long readings, long least, BigDecimal median, long most) {}

    /** Moisture in hundredths of a percent, warp in micrometres over the whole piece. */
    record Reading(String piece, LocalDate day, long value) {}

    /** A wood to choose. */
    record WoodName(String id, String name) {}
}
