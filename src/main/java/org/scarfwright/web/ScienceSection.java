package org.scarfwright.web;

import java.util.List;

/**
 * The rows of one room on the page of sources.
 *
 * @param place among the sections, the lowest first
 * @param title such as Joint
 * @param note what holds for all its rows: symbols, limits
 * @param rows in the order they are shown
 */
public record ScienceSection(int place, String title, String note, List<ScienceRow> rows) {
    public ScienceSection {
        rows = List.copyOf(rows);
    }
}
