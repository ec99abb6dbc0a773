package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.scarfwright.matching.search.SearchProblem.Line;
import org.scarfwright.matching.search.SearchProblem.Need;
import org.scarfwright.matching.search.SearchProblem.Option;
import org.scarfwright.matching.search.SearchProblem.Pairing;
import org.scarfwright.matching.search.SearchProblem.Preparation;
import org.scarfwright.matching.search.SearchProblem.Role;
import org.scarfwright.matching.search.SearchProblem.Segment;
import org.scarfwright.matching.search.SearchProblem.StockPiece;
import org.scarfwright.matching.search.SearchResult.Measure;

/**
 * Bin packing told as a week of orders. A bin is a blank as long as it holds, an item is a part: two items are the neck and the
 * head of one order, which may come from any two blanks. Nothing is lost to saw or bevel and no rest is worth keeping, so the
 * fewest bins are the least book value of a plan that fills every order. Where the count of items is odd, the last neck's head
 * comes from an offcut that is worth nothing and does for it alone.
 *
 * <p>Source of the two classes: E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2,
 * 1996; generated here, not his files, and the ranges of the triplets are given from memory.
 *
 * @param capacity of a bin
 * @param sizes of the items
 */
record BinPacking(int capacity, List<Integer> sizes) {
    /** What one bin costs, in hundredths. */
    static final int CENTS = 1;

    BinPacking {
        sizes = List.copyOf(sizes);
    }

    /** Sizes 20 to 100, each as likely as any other, in bins of 150. */
    static BinPacking uniform(int items, long seed) {
        Random random = new Random(seed);
        List<Integer> sizes = new ArrayList<>();
        for (int i = 0; i < items; i++) {
            sizes.add(20 + random.nextInt(81));
        }
        return new BinPacking(150, sizes);
    }

    /** Three items fill a bin of 1000 to the last unit, and none is a quarter of it or less: items / 3 bins, and no fewer. */
    static BinPacking triplets(int items, long seed) {
        Random random = new Random(seed);
        List<Integer> sizes = new ArrayList<>();
        for (int i = 0; i < items / 3; i++) {
            int first = 380 + random.nextInt(111);
            int second = 251 + random.nextInt((1000 - first) / 2 - 250);
            sizes.addAll(List.of(first, second, 1000 - first - second));
        }
        Collections.shuffle(sizes, random);
        return new BinPacking(1000, sizes);
    }

    /** Every order filled takes at least this many bins, and a plan that fills all takes this many hundredths. */
    SearchProblem problem() {
        int orders = (sizes.size() + 1) / 2;
        boolean odd = sizes.size() % 2 == 1;
        List<Need> needs = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        int bins = sizes.size();
        int[] all = new int[bins + (odd ? 1 : 0)];
        Pairing pairing = new Pairing(all, all.clone(), new boolean[][] {{true}}, false);
        for (int o = 0; o < orders; o++) {
            needs.add(new Need(o, Role.NECK, 0, um(sizes.get(2 * o))));
            needs.add(new Need(o, Role.HEAD, 0, um(2 * o + 1 < sizes.size() ? sizes.get(2 * o + 1) : capacity)));
            lines.add(new Line("order " + o, 1, 1, List.of(new Option(2 * o, 2 * o + 1)), pairing));
        }
        int[] items = new int[sizes.size()];
        for (int i = 0; i < items.length; i++) {
            items[i] = i;
        }
        List<StockPiece> pieces = new ArrayList<>();
        for (int b = 0; b < bins; b++) {
            pieces.add(blank("bin " + b, CENTS, items));
        }
        if (odd) {
            pieces.add(blank("offcut", 0, new int[] {sizes.size()}));
        }
        return new SearchProblem(lines, needs, pieces, 1, 1);
    }

    /** Stops a search when every order is filled and the book value is proved: the levels behind it say nothing about bins. */
    static final class UntilProved implements SearchWatch {
        private final long filled;
        private final BooleanSupplier over;
        private volatile boolean proved;

        /**
         * @param over stops it as well
         */
        UntilProved(SearchProblem problem, BooleanSupplier over) {
            filled = problem.orderedWeight();
            this.over = over;
        }

        @Override
        public boolean stopped() {
            return proved || over.getAsBoolean();
        }

        @Override
        public void progress(SearchProgress p) {
            Long cents = p.best().get(Measure.BOOK_VALUE);
            proved |= cents != null
                    && cents.equals(p.bounds().get(Measure.BOOK_VALUE))
                    && p.best().getOrDefault(Measure.FILLED, 0L) == filled;
        }
    }

    private StockPiece blank(String code, long cents, int[] items) {
        Segment whole = new Segment(um(capacity), items, List.of());
        return new StockPiece(
                code,
                cents,
                List.of(new Preparation("as it is", 20_000, 0, new long[] {0}, new int[] {0}, 0, List.of(whole))));
    }

    private static long um(int size) {
        return size * 1_000L;
    }

    /**
     * The bound of the patterns' linear program, rounded up: no packing has fewer bins. Prices come from a general solver, and
     * the dearest pattern at those prices, a knapsack over whole sizes, says by how much they may be too high.
     *
     * <p>Source: P. C. Gilmore and R. E. Gomory, A linear programming approach to the cutting-stock problem, Operations Research
     * 9, 1961, cited from memory; weak duality.
     */
    int leastBins() {
        TreeMap<Integer, Integer> demand = new TreeMap<>();
        sizes.forEach(s -> demand.merge(s, 1, Integer::sum));
        List<Integer> distinct = List.copyOf(demand.keySet());
        List<Integer> count = List.copyOf(demand.values());
        LinearProgram program = new LinearProgram();
        for (int wanted : count) {
            program.addRow(wanted, Double.POSITIVE_INFINITY);
        }
        for (int i = 0; i < distinct.size(); i++) {
            int[] single = new int[distinct.size()];
            single[i] = capacity / distinct.get(i);
            add(program, single);
        }
        double bound = 0;
        try (LinearSolver.Relaxation relaxation = NativeSolver.get().relaxation(program)) {
            for (boolean more = true; more; ) {
                double[] price = relaxation.solve(60_000).duals();
                double worth = 0;
                for (int i = 0; i < price.length; i++) {
                    worth += Math.max(0, price[i]) * count.get(i);
                }
                int[] pattern = new int[distinct.size()];
                double dearest = dearest(distinct, price, pattern);
                bound = Math.max(bound, worth / Math.max(1, dearest));
                more = dearest > 1 + 1e-7;
                if (more) {
                    add(program, pattern);
                }
            }
        }
        return (int) Math.ceil(bound - 1e-6);
    }

    private static void add(LinearProgram program, int[] pattern) {
        int column = program.addColumn(0, Double.POSITIVE_INFINITY, 1, false);
        for (int i = 0; i < pattern.length; i++) {
            if (pattern[i] > 0) {
                program.put(i, column, pattern[i]);
            }
        }
    }

    private double dearest(List<Integer> distinct, double[] price, int[] pattern) {
        double[] best = new double[capacity + 1];
        int[] last = new int[capacity + 1];
        for (int room = 0; room <= capacity; room++) {
            last[room] = -1;
            for (int i = 0; i < price.length; i++) {
                int size = distinct.get(i);
                if (size <= room && best[room - size] + price[i] > best[room] + 1e-12) {
                    best[room] = best[room - size] + price[i];
                    last[room] = i;
                }
            }
        }
        for (int room = capacity; last[room] >= 0; room -= distinct.get(last[room])) {
            pattern[last[room]]++;
        }
        return best[capacity];
    }
}
