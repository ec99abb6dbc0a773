package org.scarfwright.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A data folder of its own for one context, below the build folder so that a clean build removes it. */
public final class FreshHome {
    private FreshHome() {}

    public static Path create() {
        try {
            Path parent = Files.createDirectories(Path.of("target", "homes"));
            return Files.createTempDirectory(parent, "home-").toAbsolutePath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
