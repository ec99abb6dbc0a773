package org.scarfwright.matching.search;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The one class that knows the native library: GLOP for relaxations, SCIP for whole numbers. The library is loaded on first
 * use, once, and tried with a real model, because a temporary folder that is read-only or mounted {@code noexec} shows only
 * then.
 *
 * <p>One thread and the solvers' own fixed seeds: the same program gives the same answer unless time runs out.
 */
public final class NativeSolver implements LinearSolver {
    private static final String WHOLE = "SCIP";
    private static final String RELAXED = "GLOP";
    /**
     * The master programs close in a few dozen nodes. Cutting planes and probing were measured to cost several times what they
     * save there: their many small relaxations dominate the time.
     */
    private static final String SETTINGS = """
            separating/maxroundsroot = 0
            separating/maxrounds = 0
            propagating/probing/maxprerounds = 0
            """;

    private static final String UNPRESOLVED = "presolving/maxrounds = 0\n";
    private static final double TOLERANCE = 1e-6;

    /** Presolving would throw away the basis that the next solve starts from. */
    private static final String WARM = "use_preprocessing: false";

    private static final long LONGEST_MILLIS = 24L * 60 * 60 * 1000;

    private NativeSolver() {}

    /** Loaded when first asked for, which is what makes the loading lazy and done once. */
    private static final class Loaded {
        static final String FAULT = load();
        static final NativeSolver SOLVER = new NativeSolver();

        private static String load() {
            try {
                Loader.loadNativeLibraries();
                return new NativeSolver().trial();
            } catch (RuntimeException | LinkageError e) {
                return e.getClass().getSimpleName() + ": " + e.getMessage();
            }
        }
    }

    /** True when the native library works here; the first call loads it, which takes about a second. */
    public static boolean usable() {
        return Loaded.FAULT.isEmpty();
    }

    /** Why the native library cannot be used; empty when it can. */
    public static String fault() {
        return Loaded.FAULT;
    }

    /**
     * The solver.
     *
     * @throws IllegalStateException when it is not {@link #usable}
     */
    static NativeSolver get() {
        if (!usable()) {
            throw new IllegalStateException("The native solver cannot be used: " + fault());
        }
        return Loaded.SOLVER;
    }

    /** Solves max x + y with 2x + 2y <= 5, whole: 2; relaxed: 2.5. */
    private String trial() {
        LinearProgram p = new LinearProgram();
        int x = p.addColumn(0, 10, -1, true);
        int y = p.addColumn(0, 10, -1, true);
        int row = p.addRow(0, 5);
        p.put(row, x, 2);
        p.put(row, y, 2);
        try (Relaxation relaxation = relaxation(p)) {
            Solution relaxed = relaxation.solve(10_000);
            if (relaxed.outcome() != Outcome.OPTIMAL || Math.abs(relaxed.bound() + 2.5) > 1e-6) {
                return "the trial relaxation gave " + relaxed.outcome() + " " + relaxed.bound();
            }
        }
        Solution whole = optimise(p, null, new Limits(10_000, -1, () -> false));
        if (whole.outcome() != Outcome.OPTIMAL || Math.abs(whole.bound() + 2) > 1e-6) {
            return "the trial model gave " + whole.outcome() + " " + whole.bound();
        }
        return "";
    }

    @Override
    public Relaxation relaxation(LinearProgram program) {
        return new Warm(program);
    }

    /** The relaxed program, kept in the library between solves. */
    private static final class Warm implements Relaxation {
        private final LinearProgram program;
        private final Model model;

        Warm(LinearProgram program) {
            this.program = program;
            model = new Model(program, RELAXED);
            if (!model.solver.setSolverSpecificParametersAsString(WARM)) {
                throw new IllegalStateException("The native solver refuses its settings: " + WARM);
            }
        }

        @Override
        public Solution solve(long limitMillis) {
            model.take(program);
            MPSolver.ResultStatus status = model.solve(limitMillis);
            return status == MPSolver.ResultStatus.OPTIMAL
                    ? new Solution(
                            Outcome.OPTIMAL,
                            model.values(),
                            model.duals(),
                            model.solver.objective().value())
                    : without(status);
        }

        @Override
        public void close() {
            model.solver.delete();
        }
    }

    /**
     * Nothing is believed of a solution that breaks the program: with presolving one came back as the best, once in some hundred
     * recuttings of a large rack. Without presolving the same program was solved rightly, but another ended with no answer at
     * all; so that is only the second try.
     */
    @Override
    public Solution optimise(LinearProgram program, double @Nullable [] hint, Limits limits) {
        long start = System.nanoTime();
        Solution first = optimise(program, hint, limits, SETTINGS);
        if (!first.hasValues() || program.holds(first.values(), TOLERANCE)) {
            return first;
        }
        long left = Math.max(1, limits.millis() - (System.nanoTime() - start) / 1_000_000);
        Limits rest = new Limits(left, limits.nodes(), limits.cancelled());
        Solution second = optimise(program, hint, rest, SETTINGS + UNPRESOLVED);
        return !second.hasValues() || program.holds(second.values(), TOLERANCE)
                ? second
                : without(MPSolver.ResultStatus.NOT_SOLVED);
    }

    private static Solution optimise(LinearProgram program, double @Nullable [] hint, Limits limits, String settings) {
        Model model = new Model(program, WHOLE);
        try {
            String all = settings + "limits/nodes = " + limits.nodes() + "\n";
            if (!model.solver.setSolverSpecificParametersAsString(all)) {
                throw new IllegalStateException("The native solver refuses its settings: " + all);
            }
            if (hint != null) {
                model.solver.setHint(model.columns.toArray(new MPVariable[0]), hint);
            }
            return switch (watched(model, limits)) {
                case OPTIMAL -> model.found(Outcome.OPTIMAL);
                case FEASIBLE -> model.found(Outcome.FEASIBLE);
                case INFEASIBLE -> without(MPSolver.ResultStatus.INFEASIBLE);
                default -> without(MPSolver.ResultStatus.NOT_SOLVED);
            };
        } finally {
            model.solver.delete();
        }
    }

    private static MPSolver.ResultStatus watched(Model model, Limits limits) {
        try (Watch watch = new Watch(model.solver, limits.cancelled())) {
            watch.start();
            return model.solve(limits.millis());
        }
    }

    private static Solution without(MPSolver.ResultStatus status) {
        Outcome outcome = status == MPSolver.ResultStatus.INFEASIBLE ? Outcome.INFEASIBLE : Outcome.STOPPED;
        return new Solution(outcome, new double[0], new double[0], Double.NEGATIVE_INFINITY);
    }

    /** The library's copy of a program; {@code solver.delete()} frees it. */
    private static final class Model {
        final MPSolver solver;
        private final List<MPVariable> columns = new ArrayList<>();
        private final List<MPConstraint> rows = new ArrayList<>();
        private int entries;

        Model(LinearProgram p, String kind) {
            MPSolver created = MPSolver.createSolver(kind);
            if (created == null) {
                throw new IllegalStateException("The native library has no solver named " + kind);
            }
            solver = created;
            take(p);
        }

        /** Copies what was added to the program since the last time. */
        void take(LinearProgram p) {
            for (int c = columns.size(); c < p.columns(); c++) {
                MPVariable column = solver.makeVar(p.columnLow(c), p.columnHigh(c), p.whole(c), "");
                columns.add(column);
                if (p.cost(c) != 0) {
                    solver.objective().setCoefficient(column, p.cost(c));
                }
            }
            for (int r = rows.size(); r < p.rows(); r++) {
                rows.add(solver.makeConstraint(p.rowLow(r), p.rowHigh(r)));
            }
            for (; entries < p.entries(); entries++) {
                rows.get(p.entryRow(entries))
                        .setCoefficient(columns.get(p.entryColumn(entries)), p.entryValue(entries));
            }
        }

        MPSolver.ResultStatus solve(long limitMillis) {
            solver.setTimeLimit(Math.max(1, Math.min(limitMillis, LONGEST_MILLIS)));
            MPSolverParameters parameters = new MPSolverParameters();
            try {
                // The library's own default stops at a gap of 0.01 %, which is no proof.
                parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
                return solver.solve(parameters);
            } finally {
                parameters.delete();
            }
        }

        Solution found(Outcome outcome) {
            return new Solution(
                    outcome, values(), new double[0], solver.objective().bestBound());
        }

        double[] values() {
            double[] values = new double[columns.size()];
            for (int c = 0; c < values.length; c++) {
                values[c] = columns.get(c).solutionValue();
            }
            return values;
        }

        double[] duals() {
            double[] duals = new double[rows.size()];
            for (int r = 0; r < duals.length; r++) {
                duals[r] = rows.get(r).dualValue();
            }
            return duals;
        }
    }

    /** Asks now and then whether the search was cancelled, and if so tells the native solver to stop. */
    private static final class Watch implements AutoCloseable {
        private static final long EVERY_MILLIS = 20;

        private final CountDownLatch ended = new CountDownLatch(1);
        private final Thread thread;

        Watch(MPSolver solver, BooleanSupplier cancelled) {
            thread = new Thread(
                    () -> {
                        try {
                            while (!ended.await(EVERY_MILLIS, TimeUnit.MILLISECONDS)) {
                                if (cancelled.getAsBoolean()) {
                                    solver.interruptSolve();
                                }
                            }
                        } catch (InterruptedException e) {
                            Thread.currentThread().interrupt();
                        }
                    },
                    "search-watch");
            thread.setDaemon(true);
        }

        void start() {
            thread.start();
        }

        /** Returns when the watch will not touch the solver again. */
        @Override
        public void close() {
            ended.countDown();
            boolean interrupted = false;
            while (thread.isAlive()) {
                try {
                    thread.join();
                } catch (InterruptedException e) {
                    interrupted = true;
                }
            }
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
