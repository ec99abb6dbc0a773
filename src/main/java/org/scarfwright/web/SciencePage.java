package org.scarfwright.web;

import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;

/** The page of sources, and the same as the table of {@code src/docs/science.md}. */
@Component
public class SciencePage {
    private final List<ScienceSection> sections;

    SciencePage(List<Science> rooms) {
        sections = rooms.stream()
                .map(Science::section)
                .sorted(Comparator.comparingInt(ScienceSection::place))
                .toList();
    }

    public List<ScienceSection> sections() {
        return sections;
    }

    /** Every section as Markdown, each with its table. */
    public String markdown() {
        StringBuilder text = new StringBuilder();
        for (ScienceSection section : sections) {
            text.append("## ").append(section.title()).append("\n\n");
            text.append(section.note()).append("\n\n");
            text.append("| what | formula | source | class | test |\n|---|---|---|---|---|\n");
            for (ScienceRow row : section.rows()) {
                text.append(line(row)).append('\n');
            }
            text.append('\n');
        }
        return text.toString().stripTrailing() + "\n";
    }

    private static String line(ScienceRow row) {
        List<String> classes =
                row.shownClasses().stream().map(c -> "`" + c + "`").toList();
        List<String> tests = row.proofs().stream()
                .map(p -> "`" + p.shownTest() + "`" + (p.how().isEmpty() ? "" : ": " + cell(p.how())))
                .toList();
        return "| <a id=\"" + row.anchor() + "\"></a>" + cell(row.what()) + " | " + cell(row.formula()) + " | "
                + cell(row.source()) + " | " + String.join(", ", classes) + " | " + String.join("; ", tests) + " |";
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }
}
