package org.scarfwright.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every published table says in its first line where it is from, and some test reads it. */
class PublishedTableTest {
    private static final Path TABLES = Path.of("src/test/resources/published");
    private static final Path TESTS = Path.of("src/test/java");

    @Test
    void everyTableBeginsWithItsCitation() throws IOException {
        assertThat(tables()).isNotEmpty().allSatisfy(table -> {
            assertThat(Files.readAllLines(table).get(0)).startsWith("# ").hasSizeGreaterThan(60);
            assertThat(PublishedTable.rows(table.getFileName().toString())).isNotEmpty();
        });
    }

    @Test
    void everyTableIsReadBySomeTest() throws IOException {
        List<Path> sources;
        try (Stream<Path> files = Files.walk(TESTS)) {
            sources = files.filter(f -> f.toString().endsWith(".java")).toList();
        }
        StringBuilder all = new StringBuilder();
        for (Path source : sources) {
            all.append(Files.readString(source));
        }
        for (Path table : tables()) {
            assertThat(all.indexOf("\"" + table.getFileName() + "\""))
                    .as("a test that reads %s", table.getFileName())
                    .isPositive();
        }
    }

    @Test
    void aTableThatIsNotThereFails() {
        assertThatThrownBy(() -> PublishedTable.rows("none.csv")).hasMessageContaining("no table none.csv");
    }

    private static List<Path> tables() throws IOException {
        try (Stream<Path> files = Files.list(TABLES)) {
            return files.sorted().toList();
        }
    }
}
