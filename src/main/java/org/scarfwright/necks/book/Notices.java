package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.DesignRules;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.necks.FaceFinish;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;

/** What is allowed but worth a second look, in whole sentences. */
public final class Notices {
    private static final LengthFormat MM = LengthFormat.mm(Locale.ROOT);

    private Notices() {}

    /** Empty when nothing about the design is unusual. */
    public static List<String> of(NeckDesign design) {
        List<String> notices = new ArrayList<>();
        for (Angle angle : design.angles()) {
            if (!DesignRules.usual(angle)) {
                notices.add("An angle of " + angle + " is unusual; " + DesignRules.USUAL_FROM + " to "
                        + DesignRules.USUAL_TO + " is common practice.");
            }
        }
        if (design.heelWidth().length().isShorterThan(design.nutWidth().length())) {
            notices.add("The heel is narrower than the nut; were the two widths swapped?");
        }
        if (design.arrangements().contains(Arrangement.UNDERLAID)) {
            underlaid(design, notices);
        }
        return notices;
    }

    private static void underlaid(NeckDesign design, List<String> notices) {
        List<ScarfJoint> joints = design.angles().stream()
                .map(a -> ScarfJoint.of(design.jointInput(Arrangement.UNDERLAID, a)))
                .toList();
        Length wing = joints.get(0).wingWidth();
        boolean wings = wing.isPositive() && design.wingsAllowed();
        if (design.finish() == FaceFinish.CLEAR) {
            String where = joints.stream()
                    .map(j -> MM.print(Length.nearestMm(j.seamFromNutMm())) + " from the nut at "
                            + j.input().angle())
                    .collect(Collectors.joining(", "));
            notices.add("Underlaid, a seam will show on the clear face, " + where
                    + (wings ? ", and the seams of the two wings beside the neck wood with it" : "")
                    + ". Overlaid, no seam shows there.");
        }
        if (wing.isPositive() && !design.wingsAllowed()) {
            notices.add("Underlaid, the head is " + MM.print(wing.times(2)) + " wider than the neck and wings are not "
                    + "allowed: only neck pieces at least "
                    + MM.print(design.headWidth().length()) + " wide will do.");
        }
    }

    /** Empty when nothing about the order is unusual. */
    public static List<String> of(NeckOrder order) {
        IsoWeek dueWeek = IsoWeek.of(order.due());
        if (order.week().compareTo(dueWeek) > 0) {
            return List.of("It is planned for " + order.week() + ", after its due day in " + dueWeek + ".");
        }
        return List.of();
    }
}
