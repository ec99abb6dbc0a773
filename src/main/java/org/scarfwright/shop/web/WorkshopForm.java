package org.scarfwright.shop.web;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;

/** What the shop has to work with, as text; a field that was not sent is an empty one. */
record WorkshopForm(String version, Map<String, String> texts) {
    static final String HANDS = "hands";
    static final String PEOPLE = "people";
    static final String CLAMPS = "clampSets";
    static final String CELSIUS = "celsius";
    static final String GLUE = "glue";
    static final String SET_UP = "setUpMinutes";

    /** Names of the fields and keys of the API. */
    static final List<String> KEYS = Stream.of(
                    Stream.of(DayOfWeek.values()).map(WorkshopForm::key),
                    Stream.of(HANDS, PEOPLE, CLAMPS, CELSIUS, GLUE, SET_UP),
                    Stream.of(StepKind.values()).map(WorkshopForm::key))
            .flatMap(s -> s)
            .toList();

    /** Those that may be empty or left out: closed days, names, the glue. */
    static final List<String> OPTIONAL = Stream.concat(
                    Stream.of(DayOfWeek.values()).map(WorkshopForm::key), Stream.of(PEOPLE, GLUE))
            .toList();

    private static final int LONGEST_PEOPLE = 200;
    private static final Range MINUTES = new Range(1, 480);

    WorkshopForm {
        texts = Map.copyOf(texts);
    }

    /** A field of the page. */
    record Field(String name, String label) {}

    static List<Field> days() {
        return Stream.of(DayOfWeek.values())
                .map(d -> new Field(key(d), d.getDisplayName(TextStyle.FULL, Locale.ENGLISH)))
                .toList();
    }

    static List<Field> steps() {
        return Stream.of(StepKind.values())
                .map(k -> new Field(key(k), sentence(k)))
                .toList();
    }

    static WorkshopForm of(long version, Workshop w) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            texts.put(key(day), OpeningText.of(w.hours().getOrDefault(day, List.of())));
        }
        texts.put(HANDS, Integer.toString(w.hands()));
        texts.put(PEOPLE, w.people());
        texts.put(CLAMPS, Integer.toString(w.clampSets()));
        texts.put(CELSIUS, Entries.number(w.celsius()));
        texts.put(GLUE, w.glue().orElse(""));
        texts.put(SET_UP, Integer.toString(w.setUpMinutes()));
        for (StepKind kind : StepKind.values()) {
            texts.put(key(kind), Integer.toString(w.minutesOf(kind)));
        }
        return new WorkshopForm(Long.toString(version), texts);
    }

    static WorkshopForm of(JsonTexts json) {
        Map<String, String> texts = new LinkedHashMap<>();
        KEYS.forEach(key -> texts.put(key, json.text(key)));
        return new WorkshopForm("", texts);
    }

    WorkshopForm withVersion(long seen) {
        return new WorkshopForm(Long.toString(seen), texts);
    }

    public String text(String name) {
        return texts.getOrDefault(name, "");
    }

    Entry glueEntry() {
        return new Entry(GLUE, "The shop’s glue", text(GLUE));
    }

    /** @throws org.scarfwright.web.InvalidInputException with every error */
    Workshop read(Entries entries) {
        Map<DayOfWeek, List<Stretch>> hours = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            String label = day.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
            hours.put(day, OpeningText.read(new Entry(key(day), label, text(key(day))), entries));
        }
        int hands = entries.whole(new Entry(HANDS, "Hands", text(HANDS)), new Range(1, 20));
        String people =
                text(PEOPLE).isBlank() ? "" : entries.text(new Entry(PEOPLE, "People", text(PEOPLE)), LONGEST_PEOPLE);
        int clamps = entries.whole(new Entry(CLAMPS, "Sets of clamps", text(CLAMPS)), new Range(0, 99));
        BigDecimal celsius = entries.tenths(new Entry(CELSIUS, "Temperature", text(CELSIUS)), new Range(-100, 500));
        int setUp = entries.whole(new Entry(SET_UP, "Set-up", text(SET_UP)), new Range(0, 240));
        Map<StepKind, Integer> minutes = new EnumMap<>(StepKind.class);
        for (StepKind kind : StepKind.values()) {
            minutes.put(kind, entries.whole(new Entry(key(kind), sentence(kind), text(key(kind))), MINUTES));
        }
        entries.throwIfRefused();
        return new Workshop(
                hours,
                hands,
                people,
                clamps,
                celsius,
                Optional.of(text(GLUE).strip()).filter(g -> !g.isEmpty()),
                setUp,
                minutes);
    }

    private static String sentence(StepKind kind) {
        return kind.words().substring(0, 1).toUpperCase(Locale.ROOT)
                + kind.words().substring(1);
    }

    private static String key(DayOfWeek day) {
        return day.name().toLowerCase(Locale.ROOT);
    }

    private static String key(StepKind kind) {
        return switch (kind) {
            case FLATTEN -> "flattenMinutes";
            case CUT -> "cutMinutes";
            case TRUE -> "trueMinutes";
            case FIT -> "fitMinutes";
            case GLUE -> "glueMinutes";
            case UNCLAMP -> "unclampMinutes";
            case SQUARE_UP -> "squareUpMinutes";
        };
    }
}
