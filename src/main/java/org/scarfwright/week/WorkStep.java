package org.scarfwright.week;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.scarfwright.matching.PlannedNeck;
import org.scarfwright.shop.StepKind;

/**
 * One step of one neck.
 *
 * @param place its place among the steps of its neck, from 1
 * @param part which part it is done on
 * @param needs what it occupies
 * @param minutes hands-on, as planned
 * @param planned when it is to be done; empty until it was laid, and for what could not be laid
 * @param pinned the day a person chose
 */
public record WorkStep(
        long id,
        long version,
        Neck neck,
        int place,
        StepKind kind,
        Part part,
        Needs needs,
        int minutes,
        Optional<Span> planned,
        Optional<LocalDate> pinned,
        Progress progress) {

    /**
     * A neck of an accepted plan.
     *
     * @param week as written, 2026-W49
     * @param number which neck of the order, from 1
     */
    public record Neck(long plan, String week, String order, int number) {
        /** A-101 no. 2. */
        public String title() {
            return order + " no. " + number;
        }

        PlannedNeck planned() {
            return new PlannedNeck(plan, order, number);
        }
    }

    /** What a step is done on. */
    public enum Part {
        NECK,
        HEAD,
        BOTH
    }

    /**
     * What a step occupies.
     *
     * @param piece code of the wood, for steps on one part
     * @param machine code of the saw, or planer
     * @param setUp the saw's setting, such as 10° at 20 mm
     */
    public record Needs(Optional<String> piece, Optional<String> machine, Optional<String> setUp) {
        public static final Needs NOTHING = new Needs(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** From one instant to another. */
    public record Span(Instant start, Instant end) {}

    /** How far a step is. */
    public enum State {
        OPEN,
        STARTED,
        DONE,
        /** Something else happened; nothing of this neck goes on until a person says so. */
        STOPPED
    }

    /**
     * What has happened to a step.
     *
     * @param who did it
     * @param minutes hands-on, as it really was
     * @param clampedUntil a glued joint stays in clamps until then
     * @param curedAt a glued joint is not worked before then
     * @param reason why it is stopped
     */
    public record Progress(
            State state,
            Optional<Instant> startedAt,
            Optional<Instant> doneAt,
            Optional<String> who,
            OptionalInt minutes,
            Optional<Instant> clampedUntil,
            Optional<Instant> curedAt,
            Optional<String> reason) {
        /** Nothing yet. */
        public static final Progress NONE = new Progress(
                State.OPEN,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    public boolean isDone() {
        return progress.state() == State.DONE;
    }

    /** cut the bevel (head) of A-101 no. 2. */
    public String title() {
        return words() + " of " + neck.title();
    }

    /** cut the bevel (head). */
    public String words() {
        return switch (part) {
            case BOTH -> kind.words();
            case NECK -> kind.words() + " (neck)";
            case HEAD -> kind.words() + " (head)";
        };
    }
}
