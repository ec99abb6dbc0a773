package org.scarfwright.necks.web;

import java.util.List;
import java.util.function.Function;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.Bevel;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.shop.Saw;

/**
 * What one angle of a design asks of wood, for both arrangements: the pieces as they come to the saw, with the design's
 * allowances and the truing allowance of one saw. A bevel runs through the whole thickness at the saw, so thicker stock needs
 * longer pieces.
 */
final class WoodNeeds {
    private final NeckDesign design;
    private final Stock stock;
    private final Saw saw;
    private final Shown shown;

    /**
     * Thickness at the saw.
     *
     * @param neck not less than the design's neck
     * @param head not less than the design's head
     */
    record Stock(Length neck, Length head) {}

    /** One line; a dash where an arrangement cannot be. */
    record Row(String label, String underlaid, String overlaid) {}

    WoodNeeds(NeckDesign design, Stock stock, Saw saw, Shown shown) {
        this.design = design;
        this.stock = stock;
        this.saw = saw;
        this.shown = shown;
    }

    List<Row> rows(Angle angle) {
        Length side = design.sideAllowance().length();
        return List.of(
                row("Neck piece, long side", angle, j -> shown.length(longSide(j.neckShort(), stock.neck(), angle))),
                row(
                        "Neck piece, width",
                        angle,
                        j -> shown.length(design.neckWidth().plus(side))),
                row("Head piece, long side", angle, j -> shown.length(longSide(j.headShort(), stock.head(), angle))),
                row(
                        "Head piece, width",
                        angle,
                        j -> shown.length(design.headWidth().length().plus(side))),
                row("Both from one blank of the neck stock, with its cut", angle, j -> shown.length(oneBlank(j))));
    }

    private Length longSide(Length shortSide, Length sawn, Angle angle) {
        return Bevel.longSide(shortSide.plus(allowance()), sawn, angle);
    }

    private Length oneBlank(ScarfJoint joint) {
        return joint.onePieceLength(stock.neck(), saw.kerf()).plus(allowance().times(2));
    }

    private Length allowance() {
        return design.endAllowance().length().plus(saw.truing());
    }

    private Row row(String label, Angle angle, Function<ScarfJoint, String> figure) {
        return new Row(label, cell(Arrangement.UNDERLAID, angle, figure), cell(Arrangement.OVERLAID, angle, figure));
    }

    private String cell(Arrangement arrangement, Angle angle, Function<ScarfJoint, String> figure) {
        var input = design.jointInput(arrangement, angle);
        return ScarfJoint.refusals(input).isEmpty() ? figure.apply(ScarfJoint.of(input)) : "–";
    }
}
