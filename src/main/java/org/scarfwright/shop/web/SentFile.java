package org.scarfwright.shop.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;

/** A shop file on its way in or out, on disk and not in memory; gone when it is closed. Only its owner may read it. */
final class SentFile implements AutoCloseable {
    private final Path path;

    SentFile() throws IOException {
        path = Files.createTempFile("scarfwright-shop-", ".zip");
    }

    Path path() {
        return path;
    }

    /** @throws InvalidInputException when it is larger than a shop file may be */
    static SentFile of(InputStream in) throws IOException {
        SentFile file = new SentFile();
        try (OutputStream out = Files.newOutputStream(file.path)) {
            byte[] some = new byte[1 << 16];
            long size = 0;
            for (int n = in.read(some); n >= 0; n = in.read(some)) {
                size += n;
                if (size > ShopFiles.MOST_BYTES) {
                    throw new InvalidInputException(new FieldError(
                            "/file",
                            "The file",
                            "",
                            "is larger than the " + (ShopFiles.MOST_BYTES >> 30) + " GB a shop file may have"));
                }
                out.write(some, 0, n);
            }
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
        return file;
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(path);
    }
}
