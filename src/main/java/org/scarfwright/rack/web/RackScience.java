package org.scarfwright.rack.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of every figure about a piece and what it can still give. */
@Component
class RackScience implements Science {
    private static final String LAWS = "rack.UsableSize";
    private static final String EXAMPLES = "rack.UsableSizeTest";
    private static final String BOARDS = "rack.WarpedBoardTest";
    private static final String ONE_ARC =
            "derived here: an arc’s rise goes with the square of its chord; that the wood "
                    + "bends in one arc is an assumption";

    @Override
    public ScienceSection section() {
        return new ScienceSection(
                25,
                "Piece",
                "L, W, T length, width and thickness of a piece; l, w length and width of a part; b bow, r crook, c cup, d twist "
                        + "of the whole piece; m the second reading, over the middle half of the length. What a piece gives is "
                        + "rounded down, what flattening costs is rounded up. Boards are sampled and the nearest two parallel "
                        + "planes that hold a part are searched for, wherever along the piece it lies: one law by itself is "
                        + "exact, the laws together ask for more than is needed and never for less.",
                List.of(
                        law(
                                        "piece-thickness",
                                        "usable thickness",
                                        "T − b(l/L)² − c(w/W)² − d(l/L)(w/W)/2 − planing of both faces")
                                .provedBy(EXAMPLES, "worked examples: 21.02 mm over 570 mm, 24.72 mm over 150 mm"),
                        law("piece-width", "usable width", "W − r(l/L)² − edge allowance")
                                .provedBy(EXAMPLES, "worked examples"),
                        law("piece-straightness", "out of straight before planing", "b(l/L)²")
                                .provedBy(EXAMPLES, "worked by hand"),
                        ScienceRow.of(
                                        "piece-second-reading",
                                        "two readings of bow or crook",
                                        "4·max(m, b − 3m)·(l/L)², at most b, where b is at least 2m; agrees with one arc "
                                                + "when m = b/4",
                                        "derived here: one bend in the middle half, another in both outer quarters")
                                .in("rack.WarpLaw")
                                .provedBy("rack.WarpLawTest", "worked examples")
                                .provedBy(BOARDS, "lines of two bends, parts anywhere along them"),
                        ScienceRow.of(
                                        "piece-second-twist",
                                        "two readings of twist",
                                        "2·max(m, d − m)·(l/L), at most the larger of d and m; agrees when m = d/2",
                                        "derived here: one twist in the middle half, another in both outer quarters")
                                .in("rack.WarpLaw")
                                .provedBy("rack.WarpLawTest", "worked by hand")
                                .provedBy(BOARDS, "the range of lifts along a twisted sheet"),
                        ScienceRow.of(
                                        "piece-winding-sticks",
                                        "twist by winding sticks",
                                        "gap·(W/stick)·(L/distance between them)",
                                        "derived here, by similar triangles")
                                .in("rack.WindingSticks")
                                .provedBy("rack.WindingSticksTest", "worked examples, and ends turned in space"),
                        ScienceRow.of(
                                        "piece-longest-part",
                                        "longest part it can still give",
                                        "the longest l in a clear stretch that is still thick enough and, for a neck, straight "
                                                + "enough",
                                        "derived here: every law only grows with l")
                                .in("rack.LongestPart")
                                .provedBy("rack.LongestPartTest", "the laws solved for l by hand")));
    }

    private static ScienceRow law(String anchor, String what, String formula) {
        return ScienceRow.of(anchor, what, formula, ONE_ARC).in(LAWS).provedBy(BOARDS, "boards that are really bent");
    }
}
