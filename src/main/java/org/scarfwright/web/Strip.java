package org.scarfwright.web;

import java.util.List;
import org.scarfwright.measure.Length;

/**
 * A piece of wood as {@link StripDrawing} needs it: measures along the piece count from its left end, measures across it
 * from its near edge.
 *
 * @param name what the drawing is called, such as the piece's code
 * @param thickness of the piece as drawn: as measured, or as sawn when lanes are laid on it
 * @param bands the wood across the width from the near edge; one for solid wood
 * @param bow rise along the length on the flat face
 * @param crook rise along the length on the edge
 * @param trimLeft end checks to cut off
 * @param trimRight see trimLeft
 * @param lanes how it is cut; empty when nothing is laid on it
 */
public record Strip(
        String name,
        Length length,
        Length width,
        Length thickness,
        List<Band> bands,
        Length bow,
        Length crook,
        Length trimLeft,
        Length trimRight,
        List<Flaw> flaws,
        List<Lane> lanes) {
    public Strip {
        bands = List.copyOf(bands);
        flaws = List.copyOf(flaws);
        lanes = List.copyOf(lanes);
        if (bands.isEmpty()) {
            throw new IllegalArgumentException("a strip shows at least one wood");
        }
    }

    /** The same piece with parts laid on it. A piece is flattened before it is cut, so its warp is no longer drawn. */
    public Strip cutInto(List<Lane> parts, Length sawnThickness) {
        return new Strip(
                name, length, width, sawnThickness, bands, Length.ZERO, Length.ZERO, trimLeft, trimRight, flaws, parts);
    }

    /** How the growth rings meet the end grain. */
    public enum Rings {
        FLAT,
        RIFT,
        QUARTER,
        UNKNOWN
    }

    /** One wood across the width. */
    public record Band(WoodLook look, Length width, Rings rings) {}

    /**
     * A flaw.
     *
     * @param structural false when it is only for looks
     */
    public record Flaw(Length from, Length to, Length near, Length far, boolean structural) {}

    /**
     * A lane: a ripped strip of the piece, or the whole width of it.
     *
     * @param near distance of its near edge from the piece's near edge
     */
    public record Lane(Length near, Length width, List<Part> parts, List<Cut> cuts, List<Rest> rests) {
        public Lane {
            parts = List.copyOf(parts);
            cuts = List.copyOf(cuts);
            rests = List.copyOf(rests);
        }
    }

    /**
     * A part as sawn.
     *
     * @param number written on it where there is little room
     * @param label written on it where there is more
     * @param from of the stretch between its square end and the far point of its bevel
     * @param run of its bevel along the piece
     * @param width of the part, from the lane's near edge
     * @param head false for a neck
     */
    public record Part(
            String number,
            String label,
            Length from,
            Length to,
            Length run,
            boolean bevelAtLeft,
            Length width,
            boolean head) {}

    /**
     * A saw cut across a lane.
     *
     * @param to right end of what it takes; for a bevel its run and kerf together
     * @param run of the bevel along the piece; zero for a square cut
     */
    public record Cut(Length from, Length to, Length run) {}

    /** What is left over and goes back to the rack. */
    public record Rest(Length from, Length to, Length width) {}
}
