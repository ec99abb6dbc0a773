package org.scarfwright.ledger.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scarfwright.ledger.FamilyTree.Branch;
import org.scarfwright.ledger.FamilyTree.Kind;
import org.scarfwright.ledger.FamilyTree.Tree;
import org.scarfwright.measure.LengthFormat;

/**
 * A family tree as a drawing: every piece and part a strip, all to one scale, what came of it to its right.
 *
 * @param viewBox in units of its own, about a tenth of a millimetre of wood each
 */
record TreeDrawing(String viewBox, String description, List<Strip> strips, List<Line> lines) {
    private static final double ROW = 13;
    private static final double STRIP = 44;
    private static final double COLUMN = 78;
    private static final double TEXT = 3.2;
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    /** One piece or part: its outline and its two lines of text. */
    record Strip(String look, String data, String x, String nameY, String noteY, String name, String note) {}

    /** From a piece to what came of it. */
    record Line(String data) {}

    static TreeDrawing of(Tree tree) {
        Draughting d = new Draughting(STRIP / Math.max(1, tree.root().length().mm()));
        d.draw(tree.root(), 0, 0);
        String size =
                number((d.deepest + 1) * COLUMN) + " " + number(tree.root().ends() * ROW + 2);
        return new TreeDrawing("0 0 " + size, description(tree), d.strips, d.lines);
    }

    private static String description(Tree tree) {
        Branch root = tree.root();
        return "Piece " + root.name() + (tree.lot() == null ? "" : " of lot " + tree.lot())
                + (root.branches().isEmpty()
                        ? ". Nothing was cut from it."
                        : ". From it came "
                                + String.join(
                                        ", ",
                                        root.branches().stream()
                                                .map(Branch::name)
                                                .toList())
                                + ".");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** One drawing in the making. */
    private static final class Draughting {
        private final double scale;
        private final List<Strip> strips = new ArrayList<>();
        private final List<Line> lines = new ArrayList<>();
        private int deepest;

        Draughting(double scale) {
            this.scale = scale;
        }

        /** @return where the branch's middle lies */
        double draw(Branch branch, int column, double top) {
            deepest = Math.max(deepest, column);
            double y = top + 2;
            double x = column * COLUMN + 1;
            double length = Math.max(3, Math.min(STRIP, branch.length().mm() * scale));
            double width = Math.max(1.2, Math.min(5, branch.width().mm() * scale));
            double right = x + length;
            double middle = y + width / 2;
            double bottom = y + width;
            boolean part = branch.kind() != Kind.PIECE;
            double slant = part ? Math.min(length / 3, width) : 0;
            strips.add(new Strip(
                    look(branch),
                    "M" + number(x) + " " + number(y) + "L" + number(right - slant) + " " + number(y) + "L"
                            + number(right) + " " + number(bottom) + "L" + number(x) + " " + number(bottom) + "Z",
                    number(x),
                    number(bottom + TEXT),
                    number(bottom + 2 * TEXT + 0.4),
                    branch.name() + (branch.kind() == Kind.SPOILT ? ", spoilt" : ""),
                    note(branch)));
            double next = top;
            for (Branch child : branch.branches()) {
                double to = draw(child, column + 1, next);
                double childX = (column + 1) * COLUMN + 1;
                double bend = childX - 6;
                lines.add(new Line("M" + number(right + 1) + " " + number(middle) + "L" + number(bend) + " "
                        + number(middle) + "L" + number(bend) + " " + number(to) + "L" + number(childX - 1) + " "
                        + number(to)));
                next += child.ends() * ROW;
            }
            return middle;
        }

        private static String look(Branch branch) {
            return switch (branch.kind()) {
                case PIECE -> branch.branches().isEmpty() ? "d-rest" : "d-thick";
                case NECK -> "d-neck";
                case HEAD -> "d-head";
                case SPOILT -> "d-thin d-warn";
            };
        }

        private static String note(Branch branch) {
            return MM.number(branch.length()) + " × " + MM.number(branch.width()) + " mm"
                    + (branch.state().isEmpty() ? "" : ", " + branch.state());
        }
    }
}
