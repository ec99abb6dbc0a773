package org.scarfwright.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the content security policy and the house style forbid in pages, found before a browser finds it. */
class TemplatesTest {
    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Path STATIC = Path.of("src/main/resources/static");

    private static final Map<String, Pattern> FORBIDDEN = Map.of(
            "inline style", Pattern.compile("\\s(?:th:)?style(?:append)?\\s*=|<style", Pattern.CASE_INSENSITIVE),
            "inline script",
                    Pattern.compile("<script(?![^>]*\\ssrc\\s*=|[^>]*\\sth:src\\s*=)", Pattern.CASE_INSENSITIVE),
            "inline handler", Pattern.compile("\\s(?:th:)?on[a-z]+\\s*=|\\shx-on", Pattern.CASE_INSENSITIVE),
            "script address", Pattern.compile("javascript:", Pattern.CASE_INSENSITIVE),
            "unescaped text", Pattern.compile("th:utext|\\[\\(\\s*[$*#@~]\\{"),
            "number input", Pattern.compile("type\\s*=\\s*[\"']number[\"']", Pattern.CASE_INSENSITIVE),
            "link to nowhere", Pattern.compile("href\\s*=\\s*[\"']#[\"']", Pattern.CASE_INSENSITIVE),
            "address of another host", Pattern.compile("(?:src|href|action)\\s*=\\s*[\"'](?:https?:)?//"));

    @Test
    void noTemplateHoldsAnythingForbidden() {
        List<Path> templates = files(TEMPLATES, ".html");
        assertThat(templates).as("templates").hasSizeGreaterThan(3);
        assertThat(templates.stream().flatMap(t -> findings(t.toString(), text(t)).stream()))
                .isEmpty();
    }

    @Test
    void noStyleSheetAsksAnotherHost() {
        List<Path> sheets = files(STATIC, ".css");
        assertThat(sheets).as("style sheets").isNotEmpty();
        assertThat(sheets).allSatisfy(s -> assertThat(text(s)).doesNotContain("//fonts", "http:", "https:", "@import"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            inline style            | <p style="color:red">
            inline style            | <p th:style="${x}">
            inline style            | <style>p{}</style>
            inline script           | <script>go()</script>
            inline script           | <script defer>go()</script>
            inline handler          | <a onclick="go()">
            inline handler          | <a th:onclick="go()">
            inline handler          | <a hx-on:click="go()">
            script address          | <a href="javascript:go()">
            unescaped text          | <p th:utext="${x}">
            unescaped text          | <p>[(${x})]</p>
            number input            | <input type="number">
            link to nowhere         | <a href="#">
            address of another host | <img src="https://pictures.example/a.png">
            """)
    void eachKindIsCaught(String kind, String planted) {
        assertThat(findings("planted", planted)).singleElement().asString().contains(kind);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script defer src=\"/a.js\"></script>",
                "<script defer th:src=\"@{/a.js}\"></script>",
                "<a href=\"#page\">",
                "<p>[[${x}]]</p>",
                "<input type=\"text\" inputmode=\"decimal\">",
                "<tr><th scope=\"col\">on order = 3</th>"
            })
    void whatIsAllowedPasses(String fine) {
        assertThat(findings("fine", fine)).isEmpty();
    }

    private static List<String> findings(String where, String text) {
        List<String> found = new ArrayList<>();
        FORBIDDEN.forEach((kind, pattern) -> {
            Matcher m = pattern.matcher(text);
            while (m.find()) {
                found.add(where + ": " + kind + ": " + m.group().strip());
            }
        });
        return found;
    }

    private static List<Path> files(Path folder, String ending) {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(p -> p.toString().endsWith(ending)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
