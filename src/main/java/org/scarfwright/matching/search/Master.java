package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.matching.search.RackModel.Bundle;
import org.scarfwright.matching.search.RackModel.Flow;
import org.scarfwright.matching.search.RackModel.Prepared;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.RackModel.Team;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * The program over chosen layouts, with the levels before its objective held at what they reached.
 *
 * <pre>
 *   x  how often a layout is cut          y  pieces cut under a preparation of several segments
 *   f  necks made by a flow               z  a set-up is used (only where set-ups count)
 *                                         c  pieces of a bundle that are cut (only on racks of many pieces)
 *
 *   supply     sum(parts x) - sum(f) = 0
 *   piece      sum(x of single segments) + sum(y) = c &lt;= pieces in the bundle
 *   segment    sum(x on it) &lt;= y,   y &lt;= sum(x of the preparation)
 *   team       sum(f) &lt;= quantity
 *   set-up     sum(x that use it, by bundle or by segment) &lt;= pieces * z
 *              sum(parts of one role of a line at it) &lt;= parts the role can take * z
 *   held       sum(w f) &gt;= filled, book value &lt;= …, pieces &lt;= …, set-ups &lt;= …
 * </pre>
 *
 * Source: derived here; the column formulation of cutting stock after Gilmore and Gomory, 1961 (cited from memory).
 */
final class Master {
    private static final double FREE = Double.POSITIVE_INFINITY;
    /** With more bundles than this, whether one is cut is a question of its own for the solver to branch on. */
    private static final int MANY_BUNDLES = 100;

    private final RackModel model;
    private final List<SiteLayout> layouts = new ArrayList<>();
    /** By position in {@link #layouts}. */
    private int[] layoutColumn = new int[64];

    private final Objective objective;
    private final Map<Measure, Long> held;
    private final boolean coarse;
    private final int copies;

    final LinearProgram program = new LinearProgram();
    private final int[] preparedColumn;
    /** By flow; flows that are not told apart share a column. */
    private final int[] flowColumn;
    /** Flows with a column of their own, in order of columns. */
    private final List<Integer> ownFlow = new ArrayList<>();

    private final int[] setUpColumn;
    private final int[] supplyRow;
    private final int[] pieceRow;
    /** By bundle; -1 where the pieces cut have no column. */
    private final int[] cutColumn;

    private final int[] siteRow;
    private final int[] someRow;
    private int filledRow = -1;

    /**
     * @param layouts columns, each once
     * @param held values of the levels held
     */
    Master(RackModel model, Collection<SiteLayout> layouts, Objective objective, Map<Measure, Long> held) {
        this(model, layouts, objective, held, 0);
    }

    /**
     * A coarse program: supplies of one kind are one, so that any neck goes with any head. Less than any plan costs, and good
     * for prices.
     *
     * @param copies every piece is there so often: a few stand for many
     */
    static Master coarse(
            RackModel model, Collection<SiteLayout> layouts, Objective objective, Map<Measure, Long> held, int copies) {
        return new Master(model, layouts, objective, held, copies);
    }

    /** @param copies 0 for the exact program */
    private Master(
            RackModel model, Collection<SiteLayout> layouts, Objective objective, Map<Measure, Long> held, int copies) {
        this.model = model;
        this.objective = objective;
        this.held = held.isEmpty() ? new EnumMap<>(Measure.class) : new EnumMap<>(held);
        preparedColumn = new int[model.prepared.size()];
        setUpColumn = new int[model.problem.setUps()];
        supplyRow = new int[model.supplies];
        pieceRow = new int[model.bundles.size()];
        cutColumn = new int[model.bundles.size()];
        siteRow = new int[model.sites.size()];
        someRow = new int[model.prepared.size()];
        this.coarse = copies > 0;
        this.copies = Math.max(1, copies);
        Arrays.fill(pieceRow, -1);
        Arrays.fill(preparedColumn, -1);
        if (!coarse) {
            model.prepared.forEach(this::addPreparedColumn);
        }
        flowColumn = new int[model.flows.size()];
        Map<Flow, Integer> known = new HashMap<>();
        for (int i = 0; i < flowColumn.length; i++) {
            Flow f = model.flows.get(i);
            Flow like = coarse
                    ? new Flow(f.team(), model.kindOfSupply[f.neckSupply()], model.kindOfSupply[f.headSupply()])
                    : f;
            Integer column = known.get(like);
            if (column == null) {
                Team team = model.teams.get(f.team());
                column = program.addColumn(0, team.quantity(), -team.weight() * objective.weight(Measure.FILLED), true);
                known.put(like, column);
                ownFlow.add(i);
            }
            flowColumn[i] = column;
        }
        boolean countSetUps = objective.counts(Measure.SET_UPS) || this.held.containsKey(Measure.SET_UPS);
        for (int u = 0; u < setUpColumn.length; u++) {
            setUpColumn[u] = countSetUps ? program.addColumn(0, 1, objective.weight(Measure.SET_UPS), true) : -1;
        }
        supplyRows();
        if (!coarse) {
            pieceRows(model.bundles.size() > MANY_BUNDLES);
        }
        teamRows();
        add(layouts);
        if (countSetUps) {
            setUpRows();
        }
        heldRows();
    }

    /**
     * Adds layouts as columns. After the first ones only while no set-ups count and nothing but fulfilment is held: those rows
     * are not told of new columns.
     */
    final void add(Collection<SiteLayout> more) {
        for (SiteLayout x : more) {
            if (coarse) {
                takeIn(model.prepared.get(x.site.prepared()));
            }
            long cost = 0;
            for (Map.Entry<Measure, Long> w : objective.weights().entrySet()) {
                cost = Math.addExact(cost, Math.multiplyExact(w.getValue(), cost(w.getKey(), x)));
            }
            int most = model.bundles.get(x.site.bundle()).count() * copies;
            int c = program.addColumn(0, most, cost, true);
            if (layouts.size() == layoutColumn.length) {
                layoutColumn = Arrays.copyOf(layoutColumn, layoutColumn.length * 2);
            }
            layoutColumn[layouts.size()] = c;
            layouts.add(x);
            for (int i = 0; i < x.at.length; i++) {
                program.put(supplyRow[x.supply(i)], c, x.count[i]);
            }
            if (model.prepared.get(x.site.prepared()).single()) {
                program.put(pieceRow[x.site.bundle()], c, 1);
            } else {
                program.put(siteRow[x.site.index()], c, 1);
                program.put(someRow[x.site.prepared()], c, -1);
            }
        }
    }

    private long cost(Measure measure, SiteLayout x) {
        Prepared r = model.prepared.get(x.site.prepared());
        return switch (measure) {
            case FILLED, SET_UPS -> 0;
            case BOOK_VALUE -> x.lossCents + (r.single() ? r.baseCents() : 0);
            case PIECES -> r.single() ? 1 : 0;
            case PLANED -> x.planedMm3;
        };
    }

    private static long preparedCost(Measure measure, Prepared r) {
        return switch (measure) {
            case BOOK_VALUE -> r.baseCents();
            case PIECES -> 1;
            case FILLED, SET_UPS, PLANED -> 0;
        };
    }

    private void addPreparedColumn(Prepared r) {
        if (r.single()) {
            return;
        }
        long cost = 0;
        for (Map.Entry<Measure, Long> w : objective.weights().entrySet()) {
            cost = Math.addExact(cost, Math.multiplyExact(w.getValue(), preparedCost(w.getKey(), r)));
        }
        int most = model.bundles.get(r.bundle()).count() * copies;
        preparedColumn[r.index()] = program.addColumn(0, most, cost, true);
    }

    private void supplyRows() {
        for (int s = 0; s < supplyRow.length; s++) {
            boolean shared = coarse && s > 0 && model.kindOfSupply[s] == model.kindOfSupply[s - 1];
            supplyRow[s] = shared ? supplyRow[s - 1] : program.addRow(0, 0);
        }
        for (int i : ownFlow) {
            Flow f = model.flows.get(i);
            if (supplyRow[f.neckSupply()] == supplyRow[f.headSupply()]) {
                program.put(supplyRow[f.neckSupply()], flowColumn[i], -2);
            } else {
                program.put(supplyRow[f.neckSupply()], flowColumn[i], -1);
                program.put(supplyRow[f.headSupply()], flowColumn[i], -1);
            }
        }
    }

    private void pieceRows(boolean cutsCount) {
        for (Bundle b : model.bundles) {
            int i = b.index();
            pieceRow[i] = cutsCount ? program.addRow(0, 0) : program.addRow(-FREE, (double) b.count() * copies);
            cutColumn[i] = cutsCount ? program.addColumn(0, b.count(), 0, true) : -1;
            if (cutsCount) {
                program.put(pieceRow[i], cutColumn[i], -1);
            }
        }
        for (Prepared r : model.prepared) {
            addSegmentRows(r);
        }
    }

    private void addSegmentRows(Prepared r) {
        if (r.single()) {
            return;
        }
        int y = preparedColumn[r.index()];
        program.put(pieceRow[r.bundle()], y, 1);
        for (Site s : r.sites()) {
            siteRow[s.index()] = program.addRow(-FREE, 0);
            program.put(siteRow[s.index()], y, -1);
        }
        someRow[r.index()] = program.addRow(-FREE, 0);
        program.put(someRow[r.index()], y, 1);
    }

    /** On a rack of many thousand pieces only those some layout is for have rows. */
    private void takeIn(Prepared r) {
        Bundle b = model.bundles.get(r.bundle());
        if (pieceRow[b.index()] < 0) {
            pieceRow[b.index()] = program.addRow(-FREE, (double) b.count() * copies);
            cutColumn[b.index()] = -1;
        }
        if (!r.single() && preparedColumn[r.index()] < 0) {
            addPreparedColumn(r);
            addSegmentRows(r);
        }
    }

    private void teamRows() {
        int[] row = new int[model.teams.size()];
        for (int t = 0; t < row.length; t++) {
            row[t] = program.addRow(-FREE, model.teams.get(t).quantity());
        }
        for (int i : ownFlow) {
            program.put(row[model.flows.get(i).team()], flowColumn[i], 1);
        }
    }

    private void setUpRows() {
        Map<Long, Integer> rows = new LinkedHashMap<>();
        for (int c = 0; c < layouts.size(); c++) {
            SiteLayout x = layouts.get(c);
            boolean single = model.prepared.get(x.site.prepared()).single();
            for (int u : x.setUps) {
                long owner = single ? x.site.bundle() : (long) model.bundles.size() + x.site.index();
                Integer row = rows.get(owner * setUpColumn.length + u);
                if (row == null) {
                    row = program.addRow(-FREE, 0);
                    rows.put(owner * setUpColumn.length + u, row);
                    program.put(
                            row,
                            setUpColumn[u],
                            -model.bundles.get(x.site.bundle()).count());
                }
                program.put(row, layoutColumn[c], 1);
            }
        }
        setUpRowsByRole();
    }

    /** All parts of one role of a line, at one set-up, wherever they lie: far tighter than piece by piece. */
    private void setUpRowsByRole() {
        Map<Long, Integer> rows = new LinkedHashMap<>();
        for (int c = 0; c < layouts.size(); c++) {
            SiteLayout x = layouts.get(c);
            Map<Long, Integer> parts = new LinkedHashMap<>();
            for (int i = 0; i < x.at.length; i++) {
                int u = x.site.preparation().setUp()[x.site.menu().angle()[x.at[i]]];
                parts.merge((long) model.kindRole[x.kind(i)] * setUpColumn.length + u, x.count[i], Integer::sum);
            }
            for (Map.Entry<Long, Integer> e : parts.entrySet()) {
                Integer row = rows.get(e.getKey());
                if (row == null) {
                    row = program.addRow(-FREE, 0);
                    rows.put(e.getKey(), row);
                    int role = (int) (e.getKey() / setUpColumn.length);
                    program.put(row, setUpColumn[(int) (e.getKey() % setUpColumn.length)], -model.roleLimit[role]);
                }
                program.put(row, layoutColumn[c], e.getValue());
            }
        }
    }

    private void heldRows() {
        for (Map.Entry<Measure, Long> h : held.entrySet()) {
            Measure measure = h.getKey();
            if (measure == Measure.FILLED) {
                filledRow = program.addRow(h.getValue().doubleValue(), FREE);
                for (int i : ownFlow) {
                    program.put(
                            filledRow,
                            flowColumn[i],
                            model.teams.get(model.flows.get(i).team()).weight());
                }
                continue;
            }
            int row = program.addRow(-FREE, h.getValue().doubleValue());
            if (measure == Measure.SET_UPS) {
                for (int column : setUpColumn) {
                    program.put(row, column, 1);
                }
                continue;
            }
            for (int c = 0; c < layouts.size(); c++) {
                put(row, layoutColumn[c], cost(measure, layouts.get(c)));
            }
            for (Prepared r : model.prepared) {
                if (!r.single()) {
                    put(row, preparedColumn[r.index()], preparedCost(measure, r));
                }
            }
        }
    }

    /**
     * Lets parts be bought and sold at these prices: the relaxation's multipliers then stay between them, from the first round
     * on.
     */
    void trade(long[] buyCents, long[] sellCents) {
        for (int s = 0; s < supplyRow.length; s++) {
            if (s > 0 && supplyRow[s] == supplyRow[s - 1]) {
                continue;
            }
            program.put(supplyRow[s], program.addColumn(0, FREE, -sellCents[s], false), -1);
            program.put(supplyRow[s], program.addColumn(0, FREE, buyCents[s], false), 1);
        }
    }

    private void put(int row, int column, long value) {
        if (value != 0) {
            program.put(row, column, value);
        }
    }

    /** Prices from the duals of a relaxation. */
    Prices prices(double[] duals) {
        long[] supply = new long[supplyRow.length];
        for (int s = 0; s < supply.length; s++) {
            supply[s] = Prices.of(duals[supplyRow[s]]);
        }
        Measure level = objective.counts(Measure.FILLED) ? Measure.FILLED : Measure.BOOK_VALUE;
        return new Prices(level, supply, filledRow < 0 ? 0 : Math.max(0, Prices.of(duals[filledRow])));
    }

    /** Layouts that a relaxed solution cuts at least so often, those it cuts most often first. */
    List<SiteLayout> mostly(double[] values, double atLeast) {
        List<Integer> often = new ArrayList<>();
        for (int c = 0; c < layouts.size(); c++) {
            if (layoutColumn[c] < values.length && values[layoutColumn[c]] >= atLeast) {
                often.add(c);
            }
        }
        often.sort(Comparator.comparingDouble((Integer c) -> -values[layoutColumn[c]])
                .thenComparingInt(c -> c));
        return often.stream().map(layouts::get).toList();
    }

    /** A choice as values of the columns; layouts that are not columns are left out. */
    double[] hint(Choice choice) {
        double[] values = new double[program.columns()];
        boolean[] setUp = new boolean[setUpColumn.length];
        for (int c = 0; c < layouts.size(); c++) {
            int times = choice.layouts().getOrDefault(layouts.get(c), 0);
            values[layoutColumn[c]] = times;
            Site site = layouts.get(c).site;
            if (model.prepared.get(site.prepared()).single()) {
                hintCut(values, site.bundle(), times);
            }
            if (times > 0) {
                for (int u : layouts.get(c).setUps) {
                    setUp[u] = true;
                }
            }
        }
        for (int r = 0; r < preparedColumn.length; r++) {
            if (preparedColumn[r] >= 0) {
                values[preparedColumn[r]] = choice.prepared()[r];
                hintCut(values, model.prepared.get(r).bundle(), choice.prepared()[r]);
            }
        }
        for (int i = 0; i < choice.flows().length; i++) {
            values[flowColumn[i]] += choice.flows()[i];
        }
        for (int u = 0; u < setUp.length; u++) {
            if (setUp[u] && setUpColumn[u] >= 0) {
                values[setUpColumn[u]] = 1;
            }
        }
        return values;
    }

    private void hintCut(double[] values, int bundle, int pieces) {
        if (cutColumn[bundle] >= 0) {
            values[cutColumn[bundle]] += pieces;
        }
    }

    /** The choice that whole values of the columns mean; the nearest whole number is taken. */
    Choice choice(double[] values) {
        Map<SiteLayout, Integer> times = new LinkedHashMap<>();
        int[] prepared = new int[preparedColumn.length];
        for (int c = 0; c < layouts.size(); c++) {
            int n = (int) Math.round(values[layoutColumn[c]]);
            if (n > 0) {
                times.put(layouts.get(c), n);
                Prepared r = model.prepared.get(layouts.get(c).site.prepared());
                if (r.single()) {
                    prepared[r.index()] += n;
                }
            }
        }
        for (int r = 0; r < prepared.length; r++) {
            if (preparedColumn[r] >= 0) {
                prepared[r] = (int) Math.round(values[preparedColumn[r]]);
            }
        }
        int[] flows = new int[model.flows.size()];
        for (int i = 0; i < flows.length; i++) {
            flows[i] = (int) Math.round(values[flowColumn[i]]);
        }
        return new Choice(times, prepared, flows);
    }
}
