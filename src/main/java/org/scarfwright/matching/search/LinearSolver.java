package org.scarfwright.matching.search;

import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/** What the search asks of a solver of linear programs. */
interface LinearSolver {
    /** How a solve ended. */
    enum Outcome {
        /** Best within the solver's tolerance. */
        OPTIMAL,
        /** Stopped with values that satisfy every row. */
        FEASIBLE,
        INFEASIBLE,
        /** Stopped with nothing. */
        STOPPED
    }

    /**
     * @param values by column; empty without a solution
     * @param duals by row, for a relaxation; the change of the optimum by unit of the row's bound
     * @param bound proved by the solver in its own arithmetic; negative infinity when nothing is proved
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once and never compared
    record Solution(Outcome outcome, double[] values, double[] duals, double bound) {
        boolean hasValues() {
            return outcome == Outcome.OPTIMAL || outcome == Outcome.FEASIBLE;
        }
    }

    /** The program without the demand for whole numbers, to be solved again and again while columns are added to it. */
    Relaxation relaxation(LinearProgram program);

    /** A relaxation that goes on from its last solution. */
    interface Relaxation extends AutoCloseable {
        /** Takes the columns that were added since the last call, and solves. */
        Solution solve(long limitMillis);

        @Override
        void close();
    }

    /**
     * When to stop.
     *
     * @param nodes most nodes of the search tree, the same on every machine; -1 for as many as it takes
     */
    record Limits(long millis, long nodes, BooleanSupplier cancelled) {}

    /** The program with whole columns whole; a hint is a value for every column. */
    Solution optimise(LinearProgram program, double @Nullable [] hint, Limits limits);
}
