package org.scarfwright.shop.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.LabelPaper;
import org.scarfwright.shop.LabelSheet;
import org.scarfwright.shop.LabelSheet.Grid;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;
import org.scarfwright.web.Choice;

/**
 * A label sheet as text.
 *
 * @param shownUnit the unit the page's labels named when it was filled in, which a bare number is in
 */
record LabelSheetForm(
        String version,
        String shownUnit,
        String code,
        String name,
        String paper,
        String across,
        String down,
        String left,
        String top,
        String pitchAcross,
        String pitchDown,
        String width,
        String height) {
    /** Those of the keys that may be left out: a single label has no grid, a single row or column no pitch. */
    static final List<String> OPTIONAL_KEYS =
            List.of("across", "down", "leftMm", "topMm", "pitchAcrossMm", "pitchDownMm");

    static final List<String> JSON_KEYS = List.of(
            "code",
            "name",
            "paper",
            "across",
            "down",
            "leftMm",
            "topMm",
            "pitchAcrossMm",
            "pitchDownMm",
            "widthMm",
            "heightMm");

    static final List<Choice> PAPERS = List.of(
            new Choice(LabelPaper.A4.word(), "A4"),
            new Choice(LabelPaper.LETTER.word(), "Letter"),
            new Choice(LabelPaper.SINGLE.word(), "Single labels, each a page"));

    /** The address of the page that adds one; no label sheet can be called so. */
    static final String NEW = "new";

    private static final Pattern CODE = Pattern.compile("[a-z0-9][a-z0-9-]{0,19}");
    private static final int LONGEST_NAME = 80;
    private static final Range SIDE = new Range(10_000, 300_000);
    private static final Map<String, String> NAMES = Map.of(
            "width", "Width of a label",
            "height", "Height of a label",
            "across", "Labels across",
            "down", "Labels down",
            "left", "Left margin",
            "top", "Top margin",
            "pitchAcross", "Pitch across",
            "pitchDown", "Pitch down");

    LabelSheetForm {
        version = text(version);
        shownUnit = text(shownUnit);
        code = text(code);
        name = text(name);
        paper = text(paper);
        across = text(across);
        down = text(down);
        left = text(left);
        top = text(top);
        pitchAcross = text(pitchAcross);
        pitchDown = text(pitchDown);
        width = text(width);
        height = text(height);
    }

    static LabelSheetForm empty(LengthUnit unit) {
        String usual = unit == LengthUnit.INCH ? LabelPaper.LETTER.word() : LabelPaper.A4.word();
        return new LabelSheetForm("", unit.symbol(), "", "", usual, "", "", "", "", "", "", "", "");
    }

    static LabelSheetForm of(long version, LabelSheet sheet, LengthUnit unit) {
        Grid grid = sheet.grid();
        boolean single = sheet.paper() == LabelPaper.SINGLE;
        return new LabelSheetForm(
                Long.toString(version),
                unit.symbol(),
                sheet.code(),
                sheet.name(),
                sheet.paper().word(),
                single ? "" : Integer.toString(grid.across()),
                single ? "" : Integer.toString(grid.down()),
                single ? "" : Entries.typed(grid.left(), unit),
                single ? "" : Entries.typed(grid.top(), unit),
                grid.across() == 1 ? "" : Entries.typed(grid.pitchAcross(), unit),
                grid.down() == 1 ? "" : Entries.typed(grid.pitchDown(), unit),
                Entries.typed(sheet.width(), unit),
                Entries.typed(sheet.height(), unit));
    }

    static LabelSheetForm of(JsonTexts json) {
        return new LabelSheetForm(
                "",
                LengthUnit.MM.symbol(),
                json.text("code"),
                json.text("name"),
                json.text("paper"),
                json.text("across"),
                json.text("down"),
                json.length("left"),
                json.length("top"),
                json.length("pitchAcross"),
                json.length("pitchDown"),
                json.length("width"),
                json.length("height"));
    }

    LabelSheetForm withVersion(String seen) {
        return new LabelSheetForm(
                seen, shownUnit, code, name, paper, across, down, left, top, pitchAcross, pitchDown, width, height);
    }

    /** The same entries for the label sheet of that code: a code is chosen once. */
    LabelSheetForm withCode(String chosen) {
        return new LabelSheetForm(
                version,
                shownUnit,
                chosen,
                name,
                paper,
                across,
                down,
                left,
                top,
                pitchAcross,
                pitchDown,
                width,
                height);
    }

    LengthUnit unitShown() {
        return switch (shownUnit) {
            case "in" -> LengthUnit.INCH;
            case "cm" -> LengthUnit.CM;
            default -> LengthUnit.MM;
        };
    }

    Entry codeEntry() {
        return new Entry("code", "Code", code);
    }

    /** @throws org.scarfwright.web.InvalidInputException with every error */
    LabelSheet read(Entries entries) {
        String plainCode = code.strip().toLowerCase(Locale.ROOT);
        if (!CODE.matcher(plainCode).matches() || plainCode.equals(NEW)) {
            entries.refuse(
                    codeEntry(),
                    (plainCode.isEmpty() ? "is empty" : "“" + code.strip() + "” cannot be used")
                            + "; write up to 20 letters a to z, digits and -, for example a4-24");
        }
        String plainName = entries.text(new Entry("name", "Name", name), LONGEST_NAME);
        LabelPaper on = paperOf(paper);
        if (on == null) {
            entries.refuse(
                    new Entry("paper", "Paper", paper), "“" + paper + "” is no paper; write A4, Letter or single");
            on = LabelPaper.SINGLE;
        }
        Length wide = entries.length(entry("width", width), SIDE);
        Length high = entries.length(entry("height", height), SIDE);
        Grid grid = on == LabelPaper.SINGLE ? Grid.ONE : readGrid(entries);
        entries.throwIfRefused();
        LabelSheet sheet = new LabelSheet(plainCode, plainName, on, grid, wide, high);
        for (LabelSheet.Flaw flaw : sheet.flaws()) {
            Entry entry = entry(flaw.field(), typed(flaw.field()));
            boolean counts = flaw.field().equals("across") || flaw.field().equals("down");
            entries.refuse(counts ? entry : entries.asLength(entry), flaw.message());
        }
        entries.throwIfRefused();
        return sheet;
    }

    private Grid readGrid(Entries entries) {
        int columns = entries.whole(entry("across", across), new Range(1, 20));
        int rows = entries.whole(entry("down", down), new Range(1, 40));
        return new Grid(
                columns,
                rows,
                entries.length(entry("left", left), new Range(0, 150_000)),
                entries.length(entry("top", top), new Range(0, 200_000)),
                columns == 1 && pitchAcross.isBlank()
                        ? Length.ZERO
                        : entries.length(entry("pitchAcross", pitchAcross), new Range(0, 220_000)),
                rows == 1 && pitchDown.isBlank()
                        ? Length.ZERO
                        : entries.length(entry("pitchDown", pitchDown), new Range(0, 300_000)));
    }

    private String typed(String field) {
        return switch (field) {
            case "width" -> width;
            case "height" -> height;
            case "across" -> across;
            case "down" -> down;
            case "pitchAcross" -> pitchAcross;
            default -> pitchDown;
        };
    }

    private static Entry entry(String field, String typed) {
        return new Entry(field, NAMES.getOrDefault(field, field), typed);
    }

    private static @Nullable LabelPaper paperOf(String word) {
        for (LabelPaper paper : LabelPaper.values()) {
            if (paper.word().equalsIgnoreCase(word.strip())) {
                return paper;
            }
        }
        return null;
    }

    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent;
    }
}
