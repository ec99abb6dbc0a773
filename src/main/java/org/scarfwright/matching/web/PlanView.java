package org.scarfwright.matching.web;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.JointDrawing;
import org.scarfwright.matching.Plan;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthFormat;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.ShareStrip;
import org.scarfwright.web.StripDrawing;
import org.scarfwright.web.WoodSwatch;

/**
 * A plan as its page and its printed sheet show it.
 *
 * @param proof what the search can say about it, in a word or two
 * @param meaning the same as a sentence
 * @param asked what of the week was to be matched, as sentences; empty for all of it
 */
record PlanView(
        long id,
        String week,
        Plan.State state,
        String proof,
        String meaning,
        Instant madeAt,
        String engine,
        String seconds,
        int filled,
        int ordered,
        List<LevelRow> levels,
        List<Neck> necks,
        List<Cutting> pieces,
        List<Missing> unfilled,
        List<BookRow> books,
        @Nullable StripDrawing flow,
        Volume input,
        Volume difference,
        double netYield,
        double recovery,
        double rescue,
        List<WoodSwatch> woods,
        List<String> hands,
        List<String> asked,
        PlanShow.Part shown,
        PlanShow.Part shownUnfilled,
        Totals totals) {

    public boolean proposed() {
        return state == Plan.State.PROPOSED;
    }

    public boolean accepted() {
        return state == Plan.State.ACCEPTED;
    }

    /**
     * The whole plan in figures.
     *
     * @param cut pieces it cuts into
     * @param rests rests that go back to the rack
     */
    record Totals(int cut, int rests, int setUps) {}

    /** One level of the search. */
    record LevelRow(String name, String value, String bound, String unit, boolean proved) {}

    /**
     * One neck.
     *
     * @param place its number on this plan, the same on every drawing
     * @param of how many the order asks for
     * @param drawing empty when its design is no longer on file
     */
    record Neck(
            int place,
            String order,
            int number,
            int of,
            String design,
            String name,
            String arrangement,
            String angle,
            String neckPiece,
            String headPiece,
            @Nullable Length wingWidth,
            @Nullable Length seamFromNut,
            @Nullable JointDrawing drawing,
            List<String> reasons) {
        /** The pieces it is cut from: one or two. */
        public List<String> pieces() {
            return neckPiece.equals(headPiece) ? List.of(neckPiece) : List.of(neckPiece, headPiece);
        }

        public String drawingId() {
            return "neck-" + place;
        }
    }

    /**
     * One piece and how it is cut.
     *
     * @param size length × width × thickness as measured
     * @param standsAt its place on the rack; empty when unknown
     * @param drawing empty when the piece is no longer on file
     */
    record Cutting(
            String piece,
            String wood,
            String size,
            @Nullable String standsAt,
            String saw,
            Length sawnThickness,
            @Nullable StripDrawing drawing,
            List<PartRow> parts,
            List<CutRow> cuts,
            List<RestRow> rests) {}

    /** One part of a piece. */
    record PartRow(
            int place,
            String role,
            String order,
            String angle,
            Length from,
            Length to,
            Length shortSide,
            Length longSide,
            Length width,
            Length thickness) {}

    /**
     * One cut, from the piece's left end; the kerf lies to the right of each figure.
     *
     * @param upper where it starts on the upper face
     * @param lower where it starts on the lower face
     */
    record CutRow(int lane, String kind, Length upper, Length lower, Length kerf) {
        /** Both figures where they differ. */
        public String at() {
            LengthFormat mm = LengthFormat.mm(Locale.ROOT);
            return upper.equals(lower) ? mm.number(upper) : mm.number(upper) + " / " + mm.number(lower);
        }
    }

    /** What is left of a piece. */
    record RestRow(int lane, Length from, Length to, Length length, Length width, boolean usable) {}

    /** Necks that could not be made. */
    record Missing(
            String order,
            String design,
            String name,
            int count,
            List<Plan.Miss> misses,
            @Nullable String way,
            @Nullable String buy) {}

    /** Where some of the wood goes. */
    record BookRow(String letter, String name, String meaning, Volume volume, ShareStrip.Kind kind) {}
}
