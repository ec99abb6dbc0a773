package org.scarfwright.necks.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.web.Choice;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** The strings on the joint's page: {@code necks/strings.html} with its fields and its answer. */
@Component
class StringsSection {
    private final SpeciesCatalog catalog;

    StringsSection(SpeciesCatalog catalog) {
        this.catalog = catalog;
    }

    /** @return null when no string was given or anything was refused; the reasons are then the query's errors */
    StringsForm.@Nullable StringSet read(QueryText query, LengthUnit unit) {
        return StringsForm.read(query, catalog.all(), unit);
    }

    /** Puts the fields, and the answer where there is one, into the page's model. */
    void show(Model model, QueryText query, StringsForm.@Nullable StringSet set, @Nullable Angle tilt) {
        List<Choice> woods = new ArrayList<>();
        woods.add(new Choice("", "none"));
        for (Species wood : catalog.all()) {
            woods.add(new Choice(wood.id(), wood.commonName()));
        }
        model.addAttribute("stringsForm", StringsForm.typed(query));
        model.addAttribute("stringsWoods", woods);
        if (set != null && tilt != null) {
            model.addAttribute("stringsSheet", StringsSheet.of(set, tilt));
        }
    }
}
