package org.scarfwright.necks.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.joint.GluedBlank;
import org.scarfwright.joint.JointInput;
import org.scarfwright.joint.ScarfJoint;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.web.Choice;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** The strings on the joint's page: {@code necks/strings.html} with its fields and its answer. */
@Component
class StringsSection {
    /** Within the usual limits for gluing. */
    private static final Moisture WEIGHED_AT = new Moisture(800);

    private final SpeciesCatalog catalog;

    StringsSection(SpeciesCatalog catalog) {
        this.catalog = catalog;
    }

    /** @return null when no string was given or anything was refused; the reasons are then the query's errors */
    StringsForm.@Nullable StringSet read(QueryText query, LengthUnit unit) {
        return StringsForm.read(query, catalog.all(), unit);
    }

    /** Puts the fields, and the answer where there is one, into the page's model. */
    void show(Model model, QueryText query, StringsForm.@Nullable StringSet set, @Nullable JointInput joint) {
        List<Choice> woods = new ArrayList<>();
        woods.add(new Choice("", "none"));
        List<Species> known = catalog.all();
        for (Species wood : known) {
            woods.add(new Choice(wood.id(), wood.commonName()));
        }
        model.addAttribute("stringsForm", StringsForm.typed(query));
        model.addAttribute("stringsWoods", woods);
        if (joint != null) {
            StringsForm.wood(query, known).ifPresent(wood -> model.addAttribute("blankWeight", weight(wood, joint)));
        }
        if (set != null && joint != null) {
            model.addAttribute("stringsSheet", StringsSheet.of(set, joint.angle()));
        }
    }

    /** What both parts weigh together, either way round. */
    private static String weight(Species wood, JointInput joint) {
        List<String> ways = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            JointInput in = joint.with(arrangement);
            if (ScarfJoint.refusals(in).isEmpty()) {
                Density.grams(wood, WEIGHED_AT, GluedBlank.volume(ScarfJoint.of(in)))
                        .ifPresent(grams -> ways.add(grams.toPlainString() + " g " + arrangement.word()));
            }
        }
        String blank = "in " + wood.commonName() + " at " + WEIGHED_AT;
        return ways.isEmpty()
                ? blank + ": not known, since it follows from figures that are not known."
                : blank + ": about " + String.join(", ", ways)
                        + ", before anything is carved; a single board can easily be a tenth lighter or heavier.";
    }
}
