package org.scarfwright.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;

/**
 * How a wood is drawn: a tone and a line pattern, never the tone alone.
 *
 * @param tone 1 (lightest) to 6 (darkest)
 * @param pattern 1 to 6
 */
public record WoodLook(int tone, int pattern) {
    private static final int CHOICES = 6;
    private static final Map<String, WoodLook> KNOWN = read();

    public WoodLook {
        if (tone < 1 || tone > CHOICES || pattern < 1 || pattern > CHOICES) {
            throw new IllegalArgumentException("no such look: tone " + tone + ", pattern " + pattern);
        }
    }

    /** The look of a wood by its short name; a wood the legend does not name gets one that stays the same. */
    public static WoodLook of(String wood) {
        WoodLook known = KNOWN.get(wood);
        if (known != null) {
            return known;
        }
        int spread = Math.floorMod(wood.hashCode(), CHOICES * CHOICES);
        return new WoodLook(spread / CHOICES + 1, spread % CHOICES + 1);
    }

    private static Map<String, WoodLook> read() {
        Properties lines = new Properties();
        try (InputStream in = Objects.requireNonNull(WoodLook.class.getResourceAsStream("/wood-looks.properties"))) {
            lines.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, WoodLook> looks = new HashMap<>();
        lines.forEach((wood, look) -> {
            String[] numbers = look.toString().strip().split(" ", -1);
            looks.put(wood.toString(), new WoodLook(Integer.parseInt(numbers[0]), Integer.parseInt(numbers[1])));
        });
        return Map.copyOf(looks);
    }
}
