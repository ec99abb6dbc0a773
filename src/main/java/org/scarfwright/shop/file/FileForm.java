package org.scarfwright.shop.file;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopList.Field;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** What the parts of a shop file are called and how a line of a list is written and read. */
final class FileForm {
    static final String ABOUT = "about.json";
    static final String CONTENTS = "contents.json";
    static final String FORMAT = "scarfwright shop file";

    /** Longer than any plan's document that was seen; keeps a made-up line from filling the memory. */
    static final int MOST_LINE_BYTES = 64 << 20;

    private static final Pattern DIGITS = Pattern.compile("-?(0|[1-9]\\d{0,30})");
    private static final Pattern DECIMAL = Pattern.compile("-?\\d{1,15}(\\.\\d{1,10})?");
    private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
    private static final Pattern MOMENT = Pattern.compile("\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,6})?Z");
    private static final int SHOWN = 80;

    private static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxStringLength(MOST_LINE_BYTES)
                    .maxNestingDepth(4)
                    .build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    /** For the two small parts that are no lists. */
    static final JsonMapper MAPPER = JsonMapper.builder(JSON)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    private FileForm() {}

    /** The first part: what kind of file it is. */
    record About(String format, int version, Instant writtenAt) {}

    /** The last part: what each list must come to. */
    record Contents(List<Sum> lists) {}

    /** A list, its lines and the SHA-256 of its bytes. */
    record Sum(String name, long lines, String sha256) {}

    /** What is wrong with a line; reads on from where it stands. */
    static final class LineException extends Exception {
        private static final long serialVersionUID = 1L;

        LineException(String message) {
            super(message);
        }
    }

    static String partName(ShopList list) {
        return list.name() + ".jsonl";
    }

    /** @param values as {@link #read} gives them, null for what is left out */
    static byte[] write(ShopList list, @Nullable Object[] values) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
        try (JsonGenerator out = MAPPER.createGenerator(bytes)) {
            out.writeStartObject();
            int i = 0;
            for (Field field : list.fields()) {
                Object value = values[i++];
                if (value != null) {
                    out.writeName(field.name());
                    write(out, value);
                }
            }
            out.writeEndObject();
        }
        bytes.write('\n');
        return bytes.toByteArray();
    }

    private static void write(JsonGenerator out, Object value) {
        if (value instanceof Long whole) {
            out.writeNumber(whole);
        } else if (value instanceof Boolean yes) {
            out.writeBoolean(yes);
        } else if (value instanceof BigDecimal number) {
            out.writeString(number.toPlainString());
        } else {
            out.writeString(value.toString()); // texts, days and moments, which write themselves as ISO 8601 says
        }
    }

    /** The values of a line, in the order of the list's fields. */
    static @Nullable Object[] read(ShopList list, byte[] line) throws LineException {
        Map<String, Integer> places = new HashMap<>();
        for (Field field : list.fields()) {
            places.put(field.name(), places.size());
        }
        @Nullable Object[] values = new @Nullable Object[places.size()];
        try (JsonParser in = MAPPER.createParser(line)) {
            if (in.nextToken() != JsonToken.START_OBJECT) {
                throw new LineException("is no object in braces");
            }
            for (String name = in.nextName(); name != null; name = in.nextName()) {
                Integer place = places.get(name);
                if (place == null) {
                    throw new LineException("has a field “" + cut(name) + "”, which this list does not know");
                }
                in.nextToken();
                values[place] = value(list, list.fields().get(place), in);
            }
            if (in.currentToken() != JsonToken.END_OBJECT || in.nextToken() != null) {
                throw new LineException("does not end where its object ends");
            }
        } catch (JacksonException e) {
            throw new LineException("cannot be read as JSON: " + cut(String.valueOf(e.getOriginalMessage())));
        }
        for (int i = 0; i < values.length; i++) {
            Field field = list.fields().get(i);
            if (values[i] == null && !field.optional()) {
                throw new LineException("leaves out " + field.name() + "; it must hold "
                        + article(field.kind().words()));
            }
        }
        return values;
    }

    private static @Nullable Object value(ShopList list, Field field, JsonParser in) throws LineException {
        JsonToken token = in.currentToken();
        String text = token.isScalarValue() ? in.getString() : "{…}";
        boolean quoted = token == JsonToken.VALUE_STRING;
        @Nullable
        Object value = switch (field.kind()) {
            case WHOLE -> token == JsonToken.VALUE_NUMBER_INT ? whole(text) : null;
            case DIGITS -> quoted && DIGITS.matcher(text).matches() ? new BigDecimal(text) : null;
            case DECIMAL -> quoted && DECIMAL.matcher(text).matches() ? new BigDecimal(text) : null;
            case TEXT -> quoted && text.indexOf('\0') < 0 ? text : null;
            case YES -> token.isBoolean() ? (Object) (token == JsonToken.VALUE_TRUE) : null;
            case DAY -> quoted && DAY.matcher(text).matches() ? day(text) : null;
            case MOMENT -> quoted && MOMENT.matcher(text).matches() ? moment(text) : null;
        };
        if (value == null) {
            throw new LineException(field.name() + " is “" + cut(text) + "” and must be "
                    + article(field.kind().words()));
        }
        Consumer<String> check = list.checks().get(field.name());
        if (check != null) {
            try {
                check.accept(text);
            } catch (RuntimeException e) {
                throw new LineException(field.name() + " is “" + cut(text) + "”, which this program cannot read there");
            }
        }
        return value;
    }

    private static @Nullable Object whole(String text) {
        try {
            return Long.valueOf(text);
        } catch (NumberFormatException e) {
            return null; // larger than any number the program keeps
        }
    }

    private static @Nullable Object day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            return null; // the 31st of February
        }
    }

    private static @Nullable Object moment(String text) {
        try {
            return Instant.parse(text).truncatedTo(ChronoUnit.MICROS);
        } catch (DateTimeException e) {
            return null;
        }
    }

    private static String article(String words) {
        return words.equals("true or false") || words.startsWith("digits") ? words : "a " + words;
    }

    static String cut(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() > SHOWN ? line.substring(0, SHOWN) + "…" : line;
    }

    static ShopFiles.Contents contents(About about, Contents contents, String sha256) {
        return new ShopFiles.Contents(
                about.writtenAt(),
                sha256,
                contents.lists().stream()
                        .map(s -> new ShopFiles.Count(s.name(), s.lines()))
                        .toList(),
                false);
    }
}
