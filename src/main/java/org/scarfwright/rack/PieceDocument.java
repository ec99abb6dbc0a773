package org.scarfwright.rack;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Named values as text that two databases write alike: a line for each, name and value parted by the first equals sign. What is
 * null is left out.
 */
final class PieceDocument {
    private final Map<String, String> values = new LinkedHashMap<>();

    static PieceDocument read(String text) {
        PieceDocument document = new PieceDocument();
        for (String line : text.split("\n", -1)) {
            int at = line.indexOf('=');
            if (at > 0) {
                document.values.put(line.substring(0, at), plain(line.substring(at + 1)));
            }
        }
        return document;
    }

    PieceDocument put(String name, @Nullable Object value) {
        if (value != null) {
            values.put(name, value.toString());
        }
        return this;
    }

    @Nullable
    String get(String name) {
        return values.get(name);
    }

    /** Values whose names begin so, by the rest of their names, in their order. */
    Map<String, String> below(String prefix) {
        Map<String, String> found = new LinkedHashMap<>();
        values.forEach((name, value) -> {
            if (name.startsWith(prefix)) {
                found.put(name.substring(prefix.length()), value);
            }
        });
        return found;
    }

    String text() {
        StringBuilder text = new StringBuilder();
        values.forEach((name, value) ->
                text.append(name).append('=').append(oneLine(value)).append('\n'));
        return text.toString();
    }

    private static String oneLine(String value) {
        return value.indexOf('\\') < 0 && value.indexOf('\n') < 0
                ? value
                : value.replace("\\", "\\\\").replace("\n", "\\n");
    }

    private static String plain(String written) {
        if (written.indexOf('\\') < 0) {
            return written;
        }
        StringBuilder plain = new StringBuilder(written.length());
        for (int i = 0; i < written.length(); i++) {
            char c = written.charAt(i);
            if (c == '\\' && i + 1 < written.length()) {
                i++;
                plain.append(written.charAt(i) == 'n' ? '\n' : written.charAt(i));
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }
}
