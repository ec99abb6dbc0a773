package org.scarfwright.shop;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The shop file: everything a shop has, in one file that another Scarfwright reads into an empty shop. What it looks like stands
 * in {@code src/docs/shop-file.md}.
 */
public interface ShopFiles {
    /** The version this program writes, and the newest it reads. */
    int VERSION = 1;

    /** The largest file that is read, in bytes: 2 GiB. */
    long MOST_BYTES = 2L << 30;

    /** Writes the shop as it is at one moment, while others go on working. */
    Contents write(Path into);

    /**
     * Reads a shop file into an empty shop: all of it or nothing.
     *
     * @throws org.scarfwright.web.InvalidInputException when the file is not whole or not right, with the list and the line
     * @throws org.scarfwright.web.ConflictException when the shop holds anything already
     */
    Contents read(Path file);

    /** True while a shop file can be read: nobody entered anything but rules, saws and the like. */
    boolean isEmpty();

    /** When the shop was read from a file, if it was. */
    @Nullable
    Instant readAt();

    /**
     * What a file holds.
     *
     * @param sha256 of the whole file, in hexadecimal digits
     * @param again true when the shop had been read from this very file before, and nothing was done now
     */
    record Contents(Instant writtenAt, String sha256, List<Count> lists, boolean again) {
        public Contents {
            lists = List.copyOf(lists);
        }

        /** How many lines a list has; 0 for one that is not there. */
        public long lines(String list) {
            return lists.stream()
                    .filter(l -> l.name().equals(list))
                    .mapToLong(Count::lines)
                    .sum();
        }
    }

    /** A list and how many lines it has. */
    record Count(String name, long lines) {}
}
