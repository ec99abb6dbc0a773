package org.scarfwright.rack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The rack's worked examples as files: a citation in the first line, then a header, then figures. */
final class PublishedRack {
    private PublishedRack() {}

    /** The rows of figures; fails when there are none or nobody is cited. */
    static List<String[]> rows(String file) {
        try (InputStream in = Objects.requireNonNull(PublishedRack.class.getResourceAsStream("/published/" + file))) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            if (lines.size() < 3 || !lines.get(0).startsWith("# ")) {
                throw new IllegalStateException(file + " has no citation or no figures");
            }
            return lines.stream().skip(2).map(l -> l.split(",", -1)).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
