package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchResult.Group;
import org.scarfwright.matching.search.SearchResult.Layout;
import org.scarfwright.matching.search.SearchResult.Pair;

/**
 * A plan in the words of the master program.
 *
 * @param layouts how often each layout is cut
 * @param prepared how many pieces are cut under each preparation, by its index
 * @param flows how often each flow is used, by its index
 */
@SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
record Choice(Map<SiteLayout, Integer> layouts, int[] prepared, int[] flows) {

    /** A plan as a choice. */
    static Choice of(RackModel model, CutPlan plan) {
        int[] bundleOf = model.bundleOfPiece;
        Map<SiteLayout, Integer> layouts = new LinkedHashMap<>();
        int[] prepared = new int[model.prepared.size()];
        for (Layout layout : plan.layouts()) {
            for (Prepared r : model.bundles.get(bundleOf[layout.piece()]).preparations()) {
                if (r.preparation() != layout.preparation()) {
                    continue;
                }
                prepared[r.index()]++;
                for (Site site : r.sites()) {
                    List<Group> groups = layout.segments().get(site.segment()).groups();
                    if (!groups.isEmpty()) {
                        layouts.merge(onSite(model, site, groups), 1, Integer::sum);
                    }
                }
            }
        }
        int[] flows = new int[model.flows.size()];
        for (Pair pair : plan.pairs()) {
            Option o = model.problem.lines().get(pair.line()).options().get(pair.option());
            int neck = model.supply(model.kindOfNeed[o.neck()], bundleOf[pair.neckPiece()]);
            int head = model.supply(model.kindOfNeed[o.head()], bundleOf[pair.headPiece()]);
            flows[model.indexOf(new Flow(model.teamOfLine[pair.line()], neck, head))]++;
        }
        return new Choice(layouts, prepared, flows);
    }

    private static SiteLayout onSite(RackModel model, Site site, List<Group> groups) {
        int[] counts = new int[model.kinds];
        for (Group g : groups) {
            for (int need : g.needs()) {
                counts[model.kindOfNeed[need]]++;
            }
        }
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < site.menu().size(); i++) {
            if (counts[site.menu().kinds()[i]] > 0) {
                at.add(i);
            }
        }
        return new SiteLayout(
                site,
                at.stream().mapToInt(Integer::intValue).toArray(),
                at.stream().mapToInt(i -> counts[site.menu().kinds()[i]]).toArray());
    }
}
