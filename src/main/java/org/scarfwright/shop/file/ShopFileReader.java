package org.scarfwright.shop.file;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.file.FileForm.LineException;
import org.scarfwright.shop.file.FileForm.Sum;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.InvalidInputException;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;

/**
 * Reads a shop file from its beginning to its end and gives its rows on, one at a time. Parts are known by their names and their
 * order; a name is never used as a path. What is wrong is said with the part and the line.
 */
final class ShopFileReader {
    /** More than any shop unpacks to; keeps a file that is all repetition from being unpacked for hours. */
    private static final long MOST_UNPACKED = 64L << 30;

    private static final int MOST_SMALL_PART = 1 << 16;
    private static final byte[] ZIP_BEGINS = {'P', 'K', 3, 4};
    private static final byte[] ZIP_ENDS = {'P', 'K', 5, 6};

    /** How long the end of a ZIP file without a comment is. Source: PKWARE, APPNOTE.TXT, 4.3.16. */
    private static final int ZIP_END_LENGTH = 22;

    private final List<ShopList> lists;

    ShopFileReader(List<ShopList> lists) {
        this.lists = lists;
    }

    /** Takes the rows of a file. */
    interface Rows {
        /** @param line counted from 1 */
        void row(ShopList list, long line, @Nullable Object[] values);

        /** The list has no more. */
        void end(ShopList list);
    }

    /** @throws InvalidInputException when the file is not whole or not right */
    ShopFiles.Contents read(Path file, Rows rows) {
        try {
            checkEnds(file);
            String sha256 = hash(file);
            try (InputStream bytes = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
                    ZipInputStream zip = new ZipInputStream(bytes)) {
                return new Reading(zip, rows).all(sha256);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void checkEnds(Path file) throws IOException {
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
            long length = bytes.length();
            if (length == 0) {
                throw refused("The file", "is empty; choose a shop file, which the shop file page writes");
            }
            if (length > ShopFiles.MOST_BYTES) {
                throw refused("The file", "has " + length + " bytes; at most " + ShopFiles.MOST_BYTES + " are read");
            }
            if (!Arrays.equals(at(bytes, 0, ZIP_BEGINS.length), ZIP_BEGINS)) {
                throw refused(
                        "The file", "is no shop file, which is a ZIP file; choose one that the shop file page wrote");
            }
            if (length < ZIP_END_LENGTH
                    || !Arrays.equals(at(bytes, length - ZIP_END_LENGTH, ZIP_ENDS.length), ZIP_ENDS)) {
                throw refused(
                        "The file",
                        "does not end as a shop file ends: it was cut short, or something was put after its end."
                                + " Copy it again from where it came from");
            }
        }
    }

    private static byte[] at(RandomAccessFile bytes, long position, int length) throws IOException {
        bytes.seek(position);
        byte[] read = new byte[length];
        int n = bytes.read(read);
        return n < length ? new byte[0] : read;
    }

    private static String hash(Path file) throws IOException {
        MessageDigest digest = ShopFileWriter.sha256();
        byte[] some = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(some); n >= 0; n = in.read(some)) {
                digest.update(some, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    static InvalidInputException refused(String where, String what) {
        return new InvalidInputException(new FieldError("/file", where, "", what));
    }

    static InvalidInputException refused(ShopList list, long line, String what) {
        return refused(FileForm.partName(list) + ", line " + line + ":", what);
    }

    /** One way through the file. */
    private final class Reading {
        private final ZipInputStream zip;
        private final Rows rows;
        private final byte[] some = new byte[1 << 16];
        private int from;
        private int to;
        private long unpacked;
        private String part = "The file";
        private long line;

        Reading(ZipInputStream zip, Rows rows) {
            this.zip = zip;
            this.rows = rows;
        }

        ShopFiles.Contents all(String sha256) throws IOException {
            try {
                begin(FileForm.ABOUT);
                FileForm.About about = about();
                List<Sum> found = new ArrayList<>();
                for (ShopList list : lists) {
                    begin(FileForm.partName(list));
                    found.add(list(list));
                    rows.end(list);
                }
                begin(FileForm.CONTENTS);
                FileForm.Contents contents = contents();
                compare(contents.lists(), found);
                if (next() != null) {
                    throw refused("The file", "has more parts after " + FileForm.CONTENTS + ", which must be the last");
                }
                return FileForm.contents(about, contents, sha256);
            } catch (EOFException e) {
                throw refused(part, "is cut short" + after() + "; copy the file again from where it came from");
            } catch (ZipException e) {
                throw refused(
                        part,
                        "cannot be unpacked" + after() + " (" + e.getMessage()
                                + "); copy the file again from where it came from");
            }
        }

        private String after() {
            return line == 0 ? "" : " after line " + line;
        }

        private @Nullable ZipEntry next() throws IOException {
            try {
                return zip.getNextEntry();
            } catch (IllegalArgumentException e) {
                throw refused("The file", "has a part after " + part + " whose name cannot be read");
            }
        }

        private void begin(String expected) throws IOException {
            ZipEntry entry = next();
            line = 0;
            from = 0;
            to = 0;
            if (entry == null) {
                throw refused("The file", "ends before its part " + expected);
            }
            if (!entry.getName().equals(expected)) {
                throw refused(
                        "The file",
                        "has “" + FileForm.cut(entry.getName()) + "” where its part " + expected
                                + (expected.equals(FileForm.ABOUT)
                                        ? " must stand first; it is no shop file"
                                        : " must stand"));
            }
            part = expected;
        }

        private FileForm.About about() throws IOException {
            FileForm.About about;
            try {
                JsonNode read = FileForm.MAPPER.readTree(small());
                if (!FileForm.FORMAT.equals(read.path("format").asString(""))) {
                    throw refused(part, "does not say that this is a " + FileForm.FORMAT);
                }
                int version = read.path("version").asInt(0);
                if (version > ShopFiles.VERSION) {
                    throw refused(
                            part,
                            "says that the file was written by a newer program: its form is version " + version
                                    + ", and this program reads up to version " + ShopFiles.VERSION
                                    + ". Read it with a program as new as the one that wrote it");
                }
                about = FileForm.MAPPER.treeToValue(read, FileForm.About.class);
            } catch (JacksonException e) {
                throw refused(part, "cannot be read: " + FileForm.cut(String.valueOf(e.getOriginalMessage())));
            }
            if (about.version() < 1) {
                throw refused(part, "has version " + about.version() + "; versions are counted from 1");
            }
            return about;
        }

        private FileForm.Contents contents() throws IOException {
            try {
                return FileForm.MAPPER.readValue(small(), FileForm.Contents.class);
            } catch (JacksonException e) {
                throw refused(part, "cannot be read: " + FileForm.cut(String.valueOf(e.getOriginalMessage())));
            }
        }

        private byte[] small() throws IOException {
            byte[] bytes = zip.readNBytes(MOST_SMALL_PART + 1);
            if (bytes.length > MOST_SMALL_PART) {
                throw refused(part, "is longer than the " + MOST_SMALL_PART + " bytes it may have");
            }
            return bytes;
        }

        private Sum list(ShopList list) throws IOException {
            MessageDigest digest = ShopFileWriter.sha256();
            for (byte[] bytes = line(digest); bytes != null; bytes = line(digest)) {
                line++;
                @Nullable Object[] values;
                try {
                    values = FileForm.read(list, bytes);
                } catch (LineException e) {
                    throw refused(list, line, String.valueOf(e.getMessage()));
                }
                rows.row(list, line, values);
            }
            if (line < list.least()) {
                throw refused(
                        part,
                        "has " + line + (line == 1 ? " line" : " lines") + "; at least " + list.least()
                                + " must be there");
            }
            return new Sum(list.name(), line, HexFormat.of().formatHex(digest.digest()));
        }

        /** The next line without its end; empty after the last. */
        private byte @Nullable [] line(MessageDigest digest) throws IOException {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(1024);
            while (true) {
                if (from == to) {
                    from = 0;
                    to = Math.max(0, zip.read(some));
                    digest.update(some, 0, to);
                    unpacked += to;
                    if (unpacked > MOST_UNPACKED) {
                        throw refused(
                                part, "unpacks to more than the " + (MOST_UNPACKED >> 30) + " GB a shop file may have");
                    }
                    if (to == 0) {
                        if (bytes.size() > 0) {
                            throw refused(part, "does not end with the end of a line" + after());
                        }
                        return null;
                    }
                }
                int end = from;
                while (end < to && some[end] != '\n') {
                    end++;
                }
                bytes.write(some, from, end - from);
                if (bytes.size() > FileForm.MOST_LINE_BYTES) {
                    throw refused(part, "has a line longer than " + (FileForm.MOST_LINE_BYTES >> 20) + " MB" + after());
                }
                boolean whole = end < to;
                from = whole ? end + 1 : end;
                if (whole) {
                    return bytes.toByteArray();
                }
            }
        }

        private void compare(List<Sum> said, List<Sum> found) {
            Set<String> names = new HashSet<>();
            for (Sum sum : said) {
                if (!names.add(sum.name())) {
                    throw refused(part, "names the list “" + FileForm.cut(sum.name()) + "” twice");
                }
            }
            for (Sum sum : found) {
                Sum expected = said.stream()
                        .filter(s -> s.name().equals(sum.name()))
                        .findFirst()
                        .orElseThrow(() -> refused(part, "does not name the list " + sum.name()));
                if (expected.lines() != sum.lines()) {
                    throw refused(
                            sum.name() + ".jsonl",
                            "has " + sum.lines() + " lines where " + part + " says " + expected.lines()
                                    + ": the file was altered");
                }
                if (!sum.sha256().equals(expected.sha256())) {
                    throw refused(
                            sum.name() + ".jsonl",
                            "is not what " + part + " says it is (its SHA-256 differs): the file was altered");
                }
            }
            if (names.size() != found.size()) {
                throw refused(part, "names lists this program does not know");
            }
        }
    }
}
