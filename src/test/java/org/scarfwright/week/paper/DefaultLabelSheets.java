package org.scarfwright.week.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.measure.Length;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;

/** The label sheets a new shop begins with, read from the migration that inserts them. */
final class DefaultLabelSheets {
    private static final Pattern ROW = Pattern.compile("\\('([a-z0-9-]+)', '([^']+)', '([A-Z0-9]+)', ([0-9, ]+)\\)");

    private DefaultLabelSheets() {}

    static List<LabelSheet> all() {
        try {
            Matcher row = ROW.matcher(Files.readString(Path.of("db/migration/V105__label_sheets.sql")));
            List<LabelSheet> sheets = new ArrayList<>();
            while (row.find()) {
                String[] n = row.group(4).split(", ", -1);
                sheets.add(new LabelSheet(
                        row.group(1),
                        row.group(2),
                        LabelPaper.valueOf(row.group(3)),
                        new LabelSheet.Grid(
                                Integer.parseInt(n[0]), Integer.parseInt(n[1]), um(n[2]), um(n[3]), um(n[4]), um(n[5])),
                        um(n[6]),
                        um(n[7])));
            }
            if (sheets.size() < 8) {
                throw new AssertionError("only " + sheets.size() + " label sheets were read");
            }
            return sheets;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Length um(String text) {
        return Length.ofUm(Long.parseLong(text));
    }
}
