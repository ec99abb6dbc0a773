package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** Every figure leads to a formula, a source and a test that exist, on the page and in the document alike. */
@OnH2
class SciencePageTest {
    private static final Path DOCUMENT = Path.of("src/docs/science.md");
    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Pattern LINK = Pattern.compile("href=\"/science#([^\"]*)\"");
    private static final Pattern NAMED = Pattern.compile("source :: of\\('([^']*)'");
    private static final Pattern ID = Pattern.compile("<tr id=\"([^\"]+)\"");

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    SciencePage page;

    @Test
    void everyRowNamesClassesAndTestsThatExist() {
        assertThat(rows()).hasSizeGreaterThan(30).allSatisfy(row -> {
            assertThat(row.classes()).as("classes of %s", row.anchor()).isNotEmpty();
            assertThat(row.proofs()).as("tests of %s", row.anchor()).isNotEmpty();
            row.classes()
                    .forEach(name -> assertThat(exists(name))
                            .as("class %s of %s", name, row.anchor())
                            .isTrue());
            row.proofs()
                    .forEach(proof -> assertThat(exists(proof.test()))
                            .as("test %s of %s", proof.test(), row.anchor())
                            .isTrue());
            assertThat(row.proofs())
                    .allSatisfy(proof -> assertThat(proof.test()).matches(".*(Test|Contract|IT)"));
        });
    }

    @Test
    void everyRowSaysWhatItIsAndWhoSaysSo() {
        assertThat(rows()).allSatisfy(row -> {
            assertThat(row.anchor()).matches("[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(row.what()).isNotBlank();
            assertThat(row.formula()).isNotBlank();
            assertThat(row.source()).isNotBlank();
        });
        assertThat(rows()).extracting(ScienceRow::anchor).doesNotHaveDuplicates();
        assertThat(page.sections()).extracting(ScienceSection::place).doesNotHaveDuplicates();
    }

    /** To write the tables anew after rows were changed: {@code mvn test -Dtest=SciencePageTest -Dscience.write}. */
    @Test
    void theDocumentStatesWhatThePageStates() throws IOException {
        String document = Files.readString(DOCUMENT);
        String head = document.substring(0, document.indexOf("\n## ") + 1);
        if (System.getProperty("science.write") != null) {
            Files.writeString(DOCUMENT, head + page.markdown());
        }
        assertThat(Files.readString(DOCUMENT)).isEqualTo(head + page.markdown());
    }

    @Test
    void thePageShowsEveryRow() throws Exception {
        String html = html("/science");

        assertThat(ID.matcher(html).results().map(r -> r.group(1)))
                .containsExactlyElementsOf(rows().map(ScienceRow::anchor).toList());
        assertThat(html).contains("front + t·cot a", "<code>ScarfJointPolygonTest</code>");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/joint", "/wood", "/shop"})
    void everyLinkOfAPageLeadsToARow(String address) throws Exception {
        assertThat(anchors()).containsAll(found(LINK, html(address)));
    }

    @Test
    void everyRowATemplateNamesExists() throws IOException {
        try (Stream<Path> all = Files.walk(TEMPLATES)) {
            for (Path template : all.filter(p -> p.toString().endsWith(".html")).toList()) {
                assertThat(anchors())
                        .as("rows named by %s", template)
                        .containsAll(found(NAMED, Files.readString(template)));
            }
        }
    }

    private Stream<ScienceRow> rows() {
        return page.sections().stream().flatMap(s -> s.rows().stream());
    }

    private Set<String> anchors() {
        return rows().map(ScienceRow::anchor).collect(Collectors.toSet());
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(r -> r.group(1)).distinct().toList();
    }

    private static boolean exists(String name) {
        String base = SciencePageTest.class.getPackageName().replaceFirst("\\.web$", "");
        try {
            Class.forName(base + "." + name, false, SciencePageTest.class.getClassLoader());
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private String html(String address) throws Exception {
        return mvc.perform(get(URI.create(address)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
