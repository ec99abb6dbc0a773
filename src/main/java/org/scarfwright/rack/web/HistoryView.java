package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.rack.MiddleReading;
import org.scarfwright.rack.MoistureReading;
import org.scarfwright.rack.ReadingHistory;
import org.scarfwright.rack.Warp;
import org.scarfwright.web.Formats;

/**
 * Every reading of a piece, the oldest first, and what its moisture did between them; every text ready to print.
 *
 * @param told from each day with both readings to the next, a sentence
 */
record HistoryView(List<Row> rows, List<String> told) {

    /**
     * Readings of one day; what was not read is a dash.
     *
     * @param counts the reading of warp that counts now
     */
    record Row(
            String day,
            String moisture,
            String moistureChange,
            Figure bow,
            Figure crook,
            Figure cup,
            Figure twist,
            String middle,
            boolean counts) {}

    /** @param change since the reading before, with its sign; empty for the first and where nothing changed */
    record Figure(String value, String change) {}

    static HistoryView of(List<ReadingHistory.Row> history, Warp now, Formats formats) {
        return new HistoryView(
                history.stream().map(r -> row(r, now, formats)).toList(),
                ReadingHistory.spans(history).stream()
                        .map(s -> sentence(s, formats))
                        .toList());
    }

    private static Row row(ReadingHistory.Row row, Warp now, Formats formats) {
        Warp warp = row.warp();
        ReadingHistory.WarpChange change = row.warpChange();
        MoistureReading moisture = row.moisture();
        return new Row(
                formats.day(row.day()),
                moisture == null ? "–" : PieceView.moisture(moisture),
                row.moistureChange() == null || row.moistureChange().hundredths() == 0
                        ? ""
                        : signed(row.moistureChange()),
                figure(warp == null ? null : warp.bow(), change == null ? null : change.bow()),
                figure(warp == null ? null : warp.crook(), change == null ? null : change.crook()),
                figure(warp == null ? null : warp.cup(), change == null ? null : change.cup()),
                figure(warp == null ? null : warp.twist(), change == null ? null : change.twist()),
                warp == null ? "–" : middle(warp.middle()),
                now.equals(warp));
    }

    private static Figure figure(@Nullable Length value, @Nullable Length change) {
        return new Figure(
                value == null ? "–" : PieceView.MM.number(value),
                change == null || change.um() == 0 ? "" : signed(change));
    }

    private static String middle(MiddleReading middle) {
        if (middle.isNone()) {
            return "–";
        }
        return Stream.of(over("bow", middle.bow()), over("crook", middle.crook()), over("twist", middle.twist()))
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private static String over(String name, @Nullable Length read) {
        return read == null ? "" : name + " " + PieceView.MM.number(read);
    }

    private static String signed(Length change) {
        return (change.um() > 0 ? "+" : "−") + PieceView.MM.number(Length.ofUm(Math.abs(change.um())));
    }

    private static String signed(MoistureChange change) {
        return (change.hundredths() > 0 ? "+" : "−") + change.abs();
    }

    private static String sentence(ReadingHistory.Span span, Formats formats) {
        List<String> changes = new ArrayList<>();
        grew(changes, "bow", span.warp().bow());
        grew(changes, "crook", span.warp().crook());
        grew(changes, "cup", span.warp().cup());
        grew(changes, "twist", span.warp().twist());
        int points = span.moisture().hundredths();
        String moisture = points == 0
                ? "its moisture stayed the same"
                : "it " + (points > 0 ? "took up " : "dried by ")
                        + span.moisture().abs();
        return "From " + formats.day(span.from().day()) + " to "
                + formats.day(span.to().day()) + " " + moisture
                + (changes.isEmpty()
                        ? ", and its warp stayed as it was."
                        : ", and its " + String.join(", its ", changes) + ".");
    }

    private static void grew(List<String> changes, String name, Length by) {
        if (by.um() != 0) {
            changes.add(name
                    + (by.um() > 0 ? " grew by " : " went down by ")
                    + PieceView.MM.print(Length.ofUm(Math.abs(by.um()))));
        }
    }
}
