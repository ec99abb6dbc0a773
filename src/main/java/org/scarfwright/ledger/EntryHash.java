package org.scarfwright.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/**
 * The hash of an entry: SHA-256 over everything that is stored of it and over the hash of the entry before, so that no stored
 * value can be changed, left out or put in without breaking the chain from there on.
 *
 * <p>Each value goes in as the length of its UTF-8 form, a colon and that form; a value that is null as a hyphen. So no two
 * different entries give the same bytes. The order is that of the calls below; a table's rows follow a word that names it.
 *
 * <p><b>Source:</b> SHA-256 is FIPS 180-4; the length before each value is the netstring form.
 */
final class EntryHash {
    /** What stands before the first entry. */
    static final String FIRST = "0".repeat(64);

    private final MessageDigest digest;

    EntryHash(String before) {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
        put(before);
    }

    EntryHash put(@Nullable Object value) {
        if (value == null) {
            digest.update((byte) '-');
            return this;
        }
        byte[] bytes = (value instanceof Instant at ? at.getEpochSecond() + "." + at.getNano() : value.toString())
                .getBytes(StandardCharsets.UTF_8);
        digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
        digest.update(bytes);
        return this;
    }

    /** Of everything that was put. */
    String hex() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
