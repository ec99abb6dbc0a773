package org.scarfwright.shop;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.measure.Length;

/**
 * A sheet of labels that lie in a grid, or a single label that is a page of its own.
 *
 * @param code short name, unique in the shop
 * @param width of one label
 * @param height of one label
 */
public record LabelSheet(String code, String name, LabelPaper paper, Grid grid, Length width, Length height) {
    /**
     * The least label: a QR code of 29 modules with its quiet zone, a module three dots of 203 to the inch wide, and beside it
     * a code 5 mm high with three lines below, or all of that under the QR code.
     */
    public static final Length LEAST_WIDTH = Length.ofMm(38);

    /** See {@link #LEAST_WIDTH}. */
    public static final Length LEAST_HEIGHT = Length.ofMm(17);

    /** The least of a label that holds the code under the QR code. */
    public static final Length LEAST_UPRIGHT_WIDTH = Length.ofMm(24);

    /** See {@link #LEAST_UPRIGHT_WIDTH}. */
    public static final Length LEAST_UPRIGHT_HEIGHT = Length.ofMm(32);

    /**
     * How labels lie on their paper.
     *
     * @param across labels in a row
     * @param down rows
     * @param left from the paper's left edge to the first label
     * @param top from the paper's top edge to the first label
     * @param pitchAcross from a label's left edge to the next one's; says nothing in a single column
     * @param pitchDown from a label's top edge to the next one's; says nothing in a single row
     */
    public record Grid(int across, int down, Length left, Length top, Length pitchAcross, Length pitchDown) {
        /** One label that is its own paper. */
        public static final Grid ONE = new Grid(1, 1, Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO);

        private long acrossTo(int column) {
            return left.um() + column * pitchAcross.um();
        }

        private long downTo(int row) {
            return top.um() + row * pitchDown.um();
        }
    }

    /** What is wrong with a grid: the name of the value and a message that reads on from it. */
    public record Flaw(String field, String message) {}

    public Length paperWidth() {
        return paper == LabelPaper.SINGLE ? width : paper.width();
    }

    public Length paperHeight() {
        return paper == LabelPaper.SINGLE ? height : paper.height();
    }

    /** How many labels a page holds. */
    public int onPage() {
        return grid.across() * grid.down();
    }

    /** @param place of a label on its page, counted from 0 in reading order */
    public Length leftOf(int place) {
        return Length.ofUm(grid.acrossTo(place % grid.across()));
    }

    /** @param place of a label on its page, counted from 0 in reading order */
    public Length topOf(int place) {
        return Length.ofUm(grid.downTo(place / grid.across()));
    }

    /** Why labels cannot lie like this; empty when they can. */
    public List<Flaw> flaws() {
        List<Flaw> flaws = new ArrayList<>();
        boolean lying = width.compareTo(LEAST_WIDTH) >= 0 && height.compareTo(LEAST_HEIGHT) >= 0;
        boolean upright = width.compareTo(LEAST_UPRIGHT_WIDTH) >= 0 && height.compareTo(LEAST_UPRIGHT_HEIGHT) >= 0;
        if (!lying && !upright) {
            flaws.add(new Flaw(
                    width.compareTo(LEAST_UPRIGHT_WIDTH) < 0 || height.compareTo(LEAST_HEIGHT) >= 0
                            ? "width"
                            : "height",
                    "makes a label of " + width + " by " + height
                            + ", too small for a code 5 mm high and a QR code with its quiet zone; a label is at least "
                            + LEAST_WIDTH + " wide and " + LEAST_HEIGHT + " high, or " + LEAST_UPRIGHT_WIDTH
                            + " wide and " + LEAST_UPRIGHT_HEIGHT + " high"));
        }
        if (paper == LabelPaper.SINGLE) {
            return flaws;
        }
        if (grid.across() > 1 && grid.pitchAcross().compareTo(width) < 0) {
            flaws.add(new Flaw(
                    "pitchAcross",
                    "is " + grid.pitchAcross() + ", less than the width of a label, so labels would overlap; write "
                            + width + " or more"));
        }
        if (grid.down() > 1 && grid.pitchDown().compareTo(height) < 0) {
            flaws.add(new Flaw(
                    "pitchDown",
                    "is " + grid.pitchDown() + ", less than the height of a label, so labels would overlap; write "
                            + height + " or more"));
        }
        Length right = Length.ofUm(grid.acrossTo(grid.across() - 1) + width.um());
        if (right.compareTo(paperWidth()) > 0) {
            flaws.add(new Flaw(
                    "across",
                    "makes the labels reach " + right + " from the left edge, past " + paper.word() + ", which is "
                            + paperWidth() + " wide; take fewer or narrower labels, or a smaller margin or pitch"));
        }
        Length bottom = Length.ofUm(grid.downTo(grid.down() - 1) + height.um());
        if (bottom.compareTo(paperHeight()) > 0) {
            flaws.add(new Flaw(
                    "down",
                    "makes the labels reach " + bottom + " from the top edge, past " + paper.word() + ", which is "
                            + paperHeight() + " high; take fewer or lower labels, or a smaller margin or pitch"));
        }
        return flaws;
    }
}
