package org.scarfwright.shop.web;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.scarfwright.shop.LearnedMinutes;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.Workshop;
import org.scarfwright.shop.Workshop.Stretch;
import org.scarfwright.shop.web.Entries.Entry;
import org.scarfwright.shop.web.Entries.Range;
import org.scarfwright.web.Choice;

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
                    Stream.of(StepKind.values()).map(WorkshopForm::key),
                    Stream.of(StepKind.values()).map(WorkshopForm::from))
            .flatMap(s -> s)
            .toList();

    /** Those that may be empty or left out: closed days, names, the glue, where the minutes come from. */
    static final List<String> OPTIONAL = Stream.of(
                    Stream.of(DayOfWeek.values()).map(WorkshopForm::key),
                    Stream.of(PEOPLE, GLUE),
                    Stream.of(StepKind.values()).map(WorkshopForm::from))
            .flatMap(s -> s)
            .toList();

    /** Steps are laid with the minutes learned, once there are enough records. */
    static final String LEARNED = "learned";

    /** Steps are laid with the shop's own minutes, whatever was recorded. */
    static final String OWN = "own";

    private static final int LONGEST_PEOPLE = 200;
    private static final Range MINUTES = new Range(1, 480);

    WorkshopForm {
        texts = Map.copyOf(texts);
    }

    /** A field of the page. */
    record Field(String name, String label) {}

    /**
     * The fields of one kind of step.
     *
     * @param learned what its records say, as a sentence
     * @param laidWith the minutes the week is laid with, as a sentence
     */
    record StepField(Field minutes, Field from, String learned, String laidWith) {}

    static List<Choice> sources() {
        return List.of(new Choice(LEARNED, "minutes learned"), new Choice(OWN, "these minutes"));
    }

    static List<Field> days() {
        return Stream.of(DayOfWeek.values())
                .map(d -> new Field(key(d), d.getDisplayName(TextStyle.FULL, Locale.ENGLISH)))
                .toList();
    }

    /** @param saved what holds now, whatever stands in the fields */
    static List<StepField> steps(Workshop saved, Map<StepKind, LearnedMinutes> learned) {
        return Stream.of(StepKind.values())
                .map(k -> new StepField(
                        new Field(key(k), sentence(k)),
                        new Field(from(k), "Laid with, to " + k.words()),
                        Optional.ofNullable(learned.get(k))
                                .map(WorkshopForm::sentence)
                                .orElse("Nobody recorded minutes yet."),
                        "Now laid with " + saved.laidWith(learned).minutesOf(k) + " min, "
                                + (saved.learns(k, learned) ? "learned." : "the shop’s own.")))
                .toList();
    }

    private static String sentence(LearnedMinutes l) {
        return l.records() == 1
                ? "Recorded once: " + l.minutes() + " min."
                : "Learned: " + l.minutes() + " min, the median of the last " + l.records() + " recorded ("
                        + (l.least() == l.most() ? "all the same" : l.least() + " to " + l.most() + " min") + ").";
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
            texts.put(from(kind), w.keepsMinutes().contains(kind) ? OWN : LEARNED);
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
        Set<StepKind> keepsMinutes = EnumSet.noneOf(StepKind.class);
        for (StepKind kind : StepKind.values()) {
            minutes.put(kind, entries.whole(new Entry(key(kind), sentence(kind), text(key(kind))), MINUTES));
            String from = text(from(kind)).strip();
            if (from.equals(OWN)) {
                keepsMinutes.add(kind);
            } else if (!from.isEmpty() && !from.equals(LEARNED)) {
                entries.refuse(
                        new Entry(from(kind), sentence(kind) + ", laid with", from),
                        "“" + from + "” is neither “" + LEARNED + "” nor “" + OWN + "”; write one of them");
            }
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
                minutes,
                keepsMinutes);
    }

    private static String sentence(StepKind kind) {
        return kind.words().substring(0, 1).toUpperCase(Locale.ROOT)
                + kind.words().substring(1);
    }

    private static String key(DayOfWeek day) {
        return day.name().toLowerCase(Locale.ROOT);
    }

    private static String from(StepKind kind) {
        return key(kind) + "From";
    }

    static String key(StepKind kind) {
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
