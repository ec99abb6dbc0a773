package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.ClassPathResource;

/** A brace that is missing hides every rule after it from the screen, and a browser says nothing. */
class StylesheetTest {
    @Test
    void everyMediaRuleStandsByItselfAndEveryBraceIsClosed() throws IOException {
        String css = new ClassPathResource("static/scarfwright.css")
                .getContentAsString(StandardCharsets.UTF_8)
                .replaceAll("(?s)/\\*.*?\\*/", "")
                .replaceAll("\"[^\"]*\"", "\"\"");
        int depth = 0;
        List<String> nested = new ArrayList<>();
        for (String line : css.split("\n", -1)) {
            if (line.strip().startsWith("@media") && depth > 0) {
                nested.add(line);
            }
            for (int i = 0; i < line.length(); i++) {
                depth += line.charAt(i) == '{' ? 1 : line.charAt(i) == '}' ? -1 : 0;
            }
            assertThat(depth).as(line).isNotNegative();
        }
        assertThat(nested).as("media rules inside another rule").isEmpty();
        assertThat(depth).as("braces that are still open at the end").isZero();
    }
}
