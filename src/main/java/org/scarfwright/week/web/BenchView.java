package org.scarfwright.week.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.shop.Glue;
import org.scarfwright.shop.StepKind;
import org.scarfwright.web.NotFoundException;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.week.Bench;
import org.scarfwright.week.PlanPapers;
import org.scarfwright.week.WorkStep;
import org.scarfwright.week.paper.PlanOnPaper;
import org.scarfwright.wood.Caution;

/**
 * One step as it is shown beside the saw.
 *
 * @param waits why it cannot be done now; null when it can
 * @param wood what to pick up
 * @param strips how the wood is cut
 * @param joint the joint from the side; null for steps that need none
 * @param settings the saw and its jig, one sentence each
 * @param caution null where nothing can hurt
 * @param undo whether it was begun and can be taken back
 */
record BenchView(
        WorkStep step,
        @Nullable String waits,
        List<Wood> wood,
        List<StripDrawing> strips,
        @Nullable JointDrawing joint,
        List<String> settings,
        @Nullable String glue,
        @Nullable String caution,
        boolean undo) {
    private static final String PLANER =
            "Never feed a piece shorter than the planer’s manual allows, and keep hands clear of the cutters. "
                    + "Extract dust at its source and wear a mask. The machine’s manual, local rules and licensed practice come first.";

    private static final String GLUING =
            "Protect skin and eyes as the glue maker’s sheet says, and keep to its open time and temperature.";

    private static final String SCREWS = "Every locating screw comes out before anything is sawn or planed near it.";

    /** A piece to pick up; place empty when it has none. */
    record Wood(String code, String name, String place, String part) {}

    static BenchView of(Bench.Card card, PlanPapers papers) {
        WorkStep step = card.step();
        Optional<PlanOnPaper> paper;
        try {
            paper = Optional.of(papers.of(step.neck().plan()));
        } catch (NotFoundException e) {
            paper = Optional.empty();
        }
        return new BenchView(
                step,
                card.waitsFor().orElse(null),
                paper.map(p -> wood(p, step)).orElse(List.of()),
                paper.map(p -> strips(p, step)).orElse(List.of()),
                paper.flatMap(p -> joint(p, step)).orElse(null),
                paper.map(p -> p.sawSettings(
                                step.neck().order(), step.neck().number(), step.part() == WorkStep.Part.HEAD))
                        .filter(s -> step.kind() == StepKind.CUT)
                        .orElse(List.of()),
                step.kind() == StepKind.GLUE ? glue(card.glue()) : null,
                caution(step.kind()),
                step.progress().state() != WorkStep.State.OPEN
                        && step.progress().state() != WorkStep.State.STOPPED);
    }

    private static List<Wood> wood(PlanOnPaper paper, WorkStep step) {
        List<Wood> found = new ArrayList<>();
        for (Map.Entry<String, String> piece :
                paper.piecesOf(step.neck().order(), step.neck().number()).entrySet()) {
            if (step.needs().piece().isEmpty() || step.needs().piece().get().equals(piece.getKey())) {
                found.add(new Wood(
                        piece.getKey(), paper.woodOf(piece.getKey()), paper.placeOf(piece.getKey()), piece.getValue()));
            }
        }
        return found;
    }

    /** How its wood is cut, until it is cut. */
    private static List<StripDrawing> strips(PlanOnPaper paper, WorkStep step) {
        boolean early = step.kind() == StepKind.FLATTEN || step.kind() == StepKind.CUT;
        return early ? step.needs().piece().map(paper::strips).orElse(List.of()) : List.of();
    }

    private static Optional<JointDrawing> joint(PlanOnPaper paper, WorkStep step) {
        return step.kind() == StepKind.FLATTEN
                ? Optional.empty()
                : paper.side(step.neck().order(), step.neck().number());
    }

    private static String glue(Optional<Glue> glue) {
        return glue.map(g -> g.name() + ": close the joint within " + g.openMinutes()
                        + " min of spreading, leave it in clamps for "
                        + words(g.clamp()) + " and unworked for " + words(g.cure()) + ", no colder than "
                        + g.lowestCelsius()
                        + " °C."
                        + (g.commonPractice()
                                ? " These figures are common practice; the maker’s sheet comes first."
                                : ""))
                .orElse(
                        "Neither the design nor the shop names a glue: choose one on the page of glues, so that the clock can run.");
    }

    private static @Nullable String caution(StepKind kind) {
        return switch (kind) {
            case FLATTEN -> PLANER;
            case CUT -> Caution.AT_THE_SAW.text();
            case TRUE -> PLANER;
            case FIT, UNCLAMP, SQUARE_UP -> SCREWS;
            case GLUE -> GLUING;
        };
    }

    /** 3 h 20 min, rounded up to whole minutes. */
    static String words(Duration time) {
        long minutes = (time.toSeconds() + 59) / 60;
        long hours = minutes / 60;
        if (hours == 0) {
            return minutes + " min";
        }
        return minutes % 60 == 0 ? hours + " h" : hours + " h " + minutes % 60 + " min";
    }

    /**
     * A cure clock.
     *
     * @param words what it is now, such as "in clamps for 40 min more"
     */
    record Clockface(String title, long step, String words, Instant clampedUntil, Instant curedAt) {
        static Clockface of(Bench.Curing curing, Clock clock) {
            Instant now = clock.instant();
            String words;
            if (now.isBefore(curing.clampedUntil())) {
                words = "in clamps for " + words(now, curing.clampedUntil()) + " more";
            } else if (!curing.opened()) {
                words = "the clamps may come off"
                        + (now.isBefore(curing.curedAt())
                                ? "; not worked for " + words(now, curing.curedAt()) + " more"
                                : "");
            } else if (now.isBefore(curing.curedAt())) {
                words = "cures for " + words(now, curing.curedAt()) + " more";
            } else {
                words = "cured";
            }
            return new Clockface(
                    curing.glued().neck().title(), curing.glued().id(), words, curing.clampedUntil(), curing.curedAt());
        }

        private static String words(Instant from, Instant to) {
            return BenchView.words(Duration.between(from, to));
        }
    }
}
