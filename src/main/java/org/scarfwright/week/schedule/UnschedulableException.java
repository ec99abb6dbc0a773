package org.scarfwright.week.schedule;

/** A work that no time can be found for. */
public final class UnschedulableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Why. */
    public enum Reason {
        /** It is longer than every stretch of shop hours it may lie in. */
        LONGER_THAN_A_DAY,
        /** The shop has none of what it needs. */
        NOTHING_TO_DO_IT_WITH,
        /** It finds no time before the last shop hours. */
        NO_TIME_LEFT
    }

    private final int work;
    private final Reason reason;

    public UnschedulableException(ScheduleProblem problem, int work, Reason reason) {
        super(problem.works().get(work).name() + ": " + reason);
        this.work = work;
        this.reason = reason;
    }

    /** Index of the work. */
    public int work() {
        return work;
    }

    public Reason reason() {
        return reason;
    }
}
