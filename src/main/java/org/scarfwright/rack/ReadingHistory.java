package org.scarfwright.rack;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.MoistureChange;

/** What was measured on a piece from the first day to the last, and what the moisture did between. */
public final class ReadingHistory {
    private ReadingHistory() {}

    /**
     * Readings of one day. Warp and moisture read on the same day stand together.
     *
     * @param warp empty on a day only moisture was read
     * @param moisture empty on a day only warp was read
     * @param moistureChange since the last reading of moisture before; empty for the first and without moisture
     * @param warpChange since the last reading of warp before; empty for the first and without warp
     */
    public record Row(
            LocalDate day,
            @Nullable Warp warp,
            @Nullable MoistureReading moisture,
            @Nullable MoistureChange moistureChange,
            @Nullable WarpChange warpChange) {}

    /** How much each kind of warp grew; negative where it went down. */
    public record WarpChange(Length bow, Length crook, Length cup, Length twist) {}

    /** What happened to a piece between two days on which both warp and moisture were read, one after the other. */
    public record Span(Row from, Row to, MoistureChange moisture, WarpChange warp) {}

    /**
     * @param warps the newest first, as the rack keeps them
     * @param moistures the newest first
     * @return the oldest first
     */
    public static List<Row> of(List<Warp> warps, List<MoistureReading> moistures) {
        List<Row> bare = new ArrayList<>();
        List<MoistureReading> left = new ArrayList<>(reversed(moistures));
        for (Warp warp : reversed(warps)) {
            LocalDate day = Objects.requireNonNull(warp.readOn(), "a reading has a day");
            MoistureReading same = left.stream()
                    .filter(m -> m.readOn().equals(day))
                    .findFirst()
                    .orElse(null);
            left.remove(same);
            bare.add(new Row(day, warp, same, null, null));
        }
        left.forEach(m -> bare.add(new Row(m.readOn(), null, m, null, null)));
        bare.sort(
                Comparator.comparing(Row::day)); // stable: two readings of one day stay in the order they were written
        return withChanges(bare);
    }

    private static List<Row> withChanges(List<Row> bare) {
        List<Row> rows = new ArrayList<>();
        Warp lastWarp = null;
        MoistureReading lastMoisture = null;
        for (Row row : bare) {
            Warp warp = row.warp();
            MoistureReading moisture = row.moisture();
            rows.add(new Row(
                    row.day(),
                    warp,
                    moisture,
                    moisture == null || lastMoisture == null
                            ? null
                            : moisture.content().minus(lastMoisture.content()),
                    warp == null || lastWarp == null ? null : change(lastWarp, warp)));
            lastWarp = warp == null ? lastWarp : warp;
            lastMoisture = moisture == null ? lastMoisture : moisture;
        }
        return List.copyOf(rows);
    }

    /** From each day with both readings to the next such day; the oldest first. */
    public static List<Span> spans(List<Row> rows) {
        List<Row> both = rows.stream()
                .filter(r -> r.warp() != null && r.moisture() != null)
                .toList();
        List<Span> spans = new ArrayList<>();
        for (int i = 1; i < both.size(); i++) {
            Row from = both.get(i - 1);
            Row to = both.get(i);
            spans.add(new Span(
                    from,
                    to,
                    Objects.requireNonNull(to.moisture())
                            .content()
                            .minus(Objects.requireNonNull(from.moisture()).content()),
                    change(Objects.requireNonNull(from.warp()), Objects.requireNonNull(to.warp()))));
        }
        return List.copyOf(spans);
    }

    private static WarpChange change(Warp before, Warp after) {
        return new WarpChange(
                after.bow().minus(before.bow()),
                after.crook().minus(before.crook()),
                after.cup().minus(before.cup()),
                after.twist().minus(before.twist()));
    }

    private static <T> List<T> reversed(List<T> list) {
        List<T> turned = new ArrayList<>(list);
        java.util.Collections.reverse(turned);
        return turned;
    }
}
