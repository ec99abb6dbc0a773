package org.scarfwright.matching.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.scarfwright.matching.search.Draft.Neck;

/**
 * Makes a plan neck by neck, each in the cheapest way left, and then again and again takes a few necks out and puts them back
 * in another order, keeping what is no worse. Removing and putting back with places passed over at random follows Christiaens
 * and Vanden Berghe, 2020 (cited from memory). Always the same for the same problem and number of rounds.
 */
final class Improver {
    private static final long SEED = 20_011L;
    private static final int[] OVERLOOKED = {0, 3, 10, 30};

    private final SearchProblem problem;
    private final Draft draft;
    private final Random random = new Random(SEED);

    Improver(SearchProblem problem) {
        this.problem = problem;
        draft = new Draft(problem);
    }

    /** @param among pieces that may be cut */
    Improver(SearchProblem problem, BitSet among) {
        this.problem = problem;
        draft = new Draft(problem, among);
    }

    /** Fills what can be filled, the heavy and the hard lines first. */
    void fill(SearchClock clock) {
        List<Integer> order = new ArrayList<>();
        for (int l = 0; l < problem.lines().size(); l++) {
            order.add(l);
        }
        order.sort(
                Comparator.comparingLong((Integer l) -> -problem.lines().get(l).weight())
                        .thenComparingInt(draft::choices)
                        .thenComparingInt(l -> l));
        for (int l : order) {
            while (draft.missing(l) > 0 && !clock.over()) {
                Neck neck = draft.cheapest(l, () -> false);
                if (neck == null) {
                    break;
                }
                draft.add(neck);
            }
        }
    }

    /** Tries so many changes, or fewer when time runs out. */
    void improve(int rounds, SearchClock clock) {
        for (int i = 0; i < rounds && !clock.over(); i++) {
            change();
        }
    }

    CutPlan plan() {
        return draft.plan();
    }

    private void change() {
        long[] before = draft.levels();
        List<Neck> kept = new ArrayList<>(draft.necks());
        takeSome();
        List<Integer> wanted = new ArrayList<>();
        for (int l = 0; l < problem.lines().size(); l++) {
            for (int i = draft.missing(l); i > 0; i--) {
                wanted.add(l);
            }
        }
        Collections.shuffle(wanted, random);
        // In most rounds a place in so many is passed over, which leads to plans the cheapest choice never meets.
        int oneIn = OVERLOOKED[random.nextInt(OVERLOOKED.length)];
        BooleanSupplier overlook = () -> oneIn > 0 && random.nextInt(oneIn) == 0;
        int refused = -1;
        for (int l : wanted) {
            @Nullable Neck neck = l == refused ? null : draft.cheapest(l, overlook);
            if (neck == null) {
                refused = l;
            } else {
                draft.add(neck);
            }
        }
        if (Arrays.compare(draft.levels(), before) > 0) {
            for (int i = draft.necks().size() - 1; i >= 0; i--) {
                draft.remove(i);
            }
            kept.forEach(draft::add);
        }
    }

    /** Takes out a few necks at random, or all that touch one piece and perhaps another. */
    private void takeSome() {
        int there = draft.necks().size();
        if (there == 0) {
            return;
        }
        if (random.nextInt(3) == 0) {
            for (int i = Math.min(there, 1 + random.nextInt(4)); i > 0; i--) {
                draft.remove(random.nextInt(draft.necks().size()));
            }
            return;
        }
        int first = somePiece();
        int second = random.nextBoolean() ? somePiece() : first;
        for (int i = there - 1; i >= 0; i--) {
            Neck neck = draft.necks().get(i);
            int n = neck.neck().piece();
            int h = neck.head().piece();
            if (n == first || h == first || n == second || h == second) {
                draft.remove(i);
            }
        }
    }

    private int somePiece() {
        Neck neck = draft.necks().get(random.nextInt(draft.necks().size()));
        return random.nextBoolean() ? neck.neck().piece() : neck.head().piece();
    }
}
