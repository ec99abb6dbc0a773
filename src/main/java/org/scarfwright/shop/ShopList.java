package org.scarfwright.shop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;

/**
 * One list of a shop file: the rows of one table in the file's own terms. The fields' names are part of the file's format; a
 * new one is a new version of it.
 *
 * @param name the list's name in the file: small letters and underscores
 * @param keys the columns rows are told apart by, in the order they are written in
 * @param only a condition in SQL on the rows that go into the file; empty for all of them
 * @param begins true when a new shop has rows of its own here, whose place the file's rows take
 * @param heavy true when a single row may take megabytes
 * @param least how many lines it must have at the least
 * @param about what the list holds, a sentence
 * @param checks what else must hold of a text, by field: throws when it does not
 */
public record ShopList(
        String name,
        String table,
        List<String> keys,
        List<Field> fields,
        String only,
        boolean begins,
        boolean heavy,
        long least,
        String about,
        Map<String, Consumer<String>> checks) {
    public ShopList {
        keys = List.copyOf(keys);
        fields = List.copyOf(fields);
        checks = Map.copyOf(checks);
    }

    /** How a value is written. */
    public enum Kind {
        /** a whole number */
        WHOLE("whole number"),
        /** a whole number that may be too large for other programs, as digits in quotes */
        DIGITS("digits in quotes"),
        /** a number with decimals, in quotes */
        DECIMAL("decimal in quotes"),
        TEXT("text"),
        /** true or false */
        YES("true or false"),
        /** year-month-day */
        DAY("day"),
        /** date and time in UTC, to a millionth of a second */
        MOMENT("moment");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One value of a row.
     *
     * @param name in the file and in the table
     * @param optional true when it may be left out
     * @param meaning what it says, where its name does not
     */
    public record Field(String name, Kind kind, boolean optional, String meaning) {}

    /**
     * A list whose rows are told apart by these columns.
     *
     * @param keys separated by blanks
     * @param fields a line each: name, kind (with a question mark when it may be left out), meaning
     */
    public static ShopList of(String name, String table, String keys, String fields) {
        List<Field> read = new ArrayList<>();
        fields.lines().map(String::strip).filter(l -> !l.isEmpty()).forEach(line -> {
            String[] words = line.split("\\s+", 3);
            boolean optional = words[1].endsWith("?");
            read.add(new Field(
                    words[0],
                    Kind.valueOf(words[1].replace("?", "").toUpperCase(Locale.ROOT)),
                    optional,
                    words.length > 2 ? words[2] : ""));
        });
        return new ShopList(name, table, List.of(keys.split(" ", -1)), read, "", false, false, 0, "", Map.of());
    }

    public ShopList about(String sentence) {
        return new ShopList(name, table, keys, fields, only, begins, heavy, least, sentence, checks);
    }

    public ShopList only(String condition) {
        return new ShopList(name, table, keys, fields, condition, begins, heavy, least, about, checks);
    }

    /** A new shop begins with rows here, and the file's take their place. */
    public ShopList inPlaceOfTheFirst() {
        return new ShopList(name, table, keys, fields, only, true, heavy, least, about, checks);
    }

    /** The program does not go on with fewer lines. */
    public ShopList atLeast(long lines) {
        return new ShopList(name, table, keys, fields, only, begins, heavy, lines, about, checks);
    }

    /** A row may take megabytes. */
    public ShopList ofLargeRows() {
        return new ShopList(name, table, keys, fields, only, begins, true, least, about, checks);
    }

    /** @param check throws when the field's text is not one the program can read */
    public ShopList checked(String field, Consumer<String> check) {
        Map<String, Consumer<String>> more = new HashMap<>(checks);
        more.put(field, check);
        return new ShopList(name, table, keys, fields, only, begins, heavy, least, about, more);
    }
}
