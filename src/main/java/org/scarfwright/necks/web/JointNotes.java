package org.scarfwright.necks.web;

import java.util.ArrayList;
import java.util.List;
import org.scarfwright.joint.DesignRules;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.JointRefusal;

/** What is unusual about a joint that can be made. */
final class JointNotes {
    private JointNotes() {}

    static List<String> of(JointInput input) {
        List<String> notes = new ArrayList<>();
        DesignRules.headThickerThanNeckStock(input.headThickness(), input.neckThickness())
                .map(JointNotes::sentence)
                .ifPresent(notes::add);
        DesignRules.angleOutOfRange(input.angle()).map(JointNotes::sentence).ifPresentOrElse(notes::add, () -> {
            if (!DesignRules.usual(input.angle())) {
                notes.add("Angle is " + input.angle() + "; usual are " + DesignRules.USUAL_FROM + " to "
                        + DesignRules.USUAL_TO + ".");
            }
        });
        return notes;
    }

    private static String sentence(JointRefusal refusal) {
        return JointForm.label(refusal.field()) + " " + refusal.reason() + ".";
    }
}
