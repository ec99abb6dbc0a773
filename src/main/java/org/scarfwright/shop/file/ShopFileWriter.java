package org.scarfwright.shop.file;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.file.FileForm.Sum;

/** Writes a shop file, a row at a time. */
final class ShopFileWriter {
    private final ShopTables tables;

    ShopFileWriter(ShopTables tables) {
        this.tables = tables;
    }

    ShopFiles.Contents write(Path into, List<ShopList> lists, Instant now) {
        FileForm.About about = new FileForm.About(FileForm.FORMAT, ShopFiles.VERSION, now);
        MessageDigest whole = sha256();
        List<Sum> sums = new ArrayList<>();
        try (OutputStream file = new DigestOutputStream(Files.newOutputStream(into), whole);
                ZipOutputStream zip = new ZipOutputStream(new BufferedOutputStream(file, 1 << 16))) {
            begin(zip, FileForm.ABOUT, now);
            zip.write(FileForm.MAPPER.writeValueAsBytes(about));
            for (ShopList list : lists) {
                begin(zip, FileForm.partName(list), now);
                sums.add(write(zip, list));
            }
            begin(zip, FileForm.CONTENTS, now);
            zip.write(FileForm.MAPPER.writeValueAsBytes(new FileForm.Contents(sums)));
            zip.closeEntry();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return FileForm.contents(
                about, new FileForm.Contents(sums), HexFormat.of().formatHex(whole.digest()));
    }

    private Sum write(ZipOutputStream zip, ShopList list) {
        MessageDigest digest = sha256();
        long[] lines = {0};
        tables.rows(list, row -> {
            byte[] line = FileForm.write(list, row);
            digest.update(line);
            try {
                zip.write(line);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            lines[0]++;
        });
        return new Sum(list.name(), lines[0], HexFormat.of().formatHex(digest.digest()));
    }

    private static void begin(ZipOutputStream zip, String name, Instant now) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTime(now.toEpochMilli());
        zip.putNextEntry(entry);
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
