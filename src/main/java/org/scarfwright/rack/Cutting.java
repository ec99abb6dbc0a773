package org.scarfwright.rack;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.TypedLength;
import org.scarfwright.measure.Volume;
import org.scarfwright.web.ConflictException;

/** Wood that leaves the rack as something else: cut, scrapped or sold. Every act writes to the ledger in the same transaction. */
public interface Cutting {
    /**
     * Records a cut as a whole. What the piece lost and nothing of it explains becomes an outcome of kind
     * {@link Outcome.Kind#UNEXPLAINED}. The cost of the piece is shared out over its parts, its rests and what is left of it, by
     * volume and to the last cent; over its waste when there is nothing else.
     *
     * @throws PieceChangedSinceException when the piece is not the one that was seen
     * @throws ConflictException when it is used up, scrapped or sold already, or a code of a rest is taken
     */
    Made cut(Cut cut);

    /**
     * Writes parts off that were cut already, and brings back to the rack what of them can still be used. The cost of a part is
     * shared out over its rests and what is lost, by volume and to the last cent.
     *
     * @return the new pieces
     * @throws ConflictException when a code of a rest is taken
     */
    List<Piece> writeOff(List<Lost> lost, Doing doing);

    /**
     * A part that is lost.
     *
     * @param part as it was recorded
     * @param rests what can still be used of it; together no more than the part
     */
    record Lost(Outcome part, List<Rest> rests) {
        public Lost {
            rests = List.copyOf(rests);
        }

        /** What is lost for good; negative when the rests are more than the part. */
        public Volume waste() {
            return rests.stream().map(r -> r.size().volume()).reduce(part.volume(), Volume::minus);
        }
    }

    /**
     * Takes whole pieces away, as scrapped or as sold, and frees those that were reserved.
     *
     * @param seen the pieces as the person saw them
     * @param to {@link PieceState#SCRAPPED} or {@link PieceState#SOLD}
     * @throws PieceNotFreeException naming every piece that changed since or is not there any more; nothing is saved
     */
    void remove(Collection<Rack.PieceStamp> seen, PieceState to, Doing doing);

    /**
     * A cut.
     *
     * @param left what is left of the piece itself; empty when it is used up
     * @param rests new pieces that come to the rack
     * @param outcomes parts and waste, each from this piece
     */
    record Cut(Piece seen, Optional<Left> left, List<Rest> rests, List<Outcome> outcomes, Doing doing) {
        public Cut {
            rests = List.copyOf(rests);
            outcomes = List.copyOf(outcomes);
        }
    }

    /** Sizes as typed. */
    record Size(TypedLength length, TypedLength width, TypedLength thickness) {
        public Volume volume() {
            return Volume.of(length.length(), width.length(), thickness.length());
        }

        Outcome.Size lengths() {
            return new Outcome.Size(length.length(), width.length(), thickness.length());
        }
    }

    /**
     * What is left of the piece under its own code.
     *
     * @param from where it begins, from the left end of the piece as it was
     * @param atBench more is to be cut from it for the plan that holds it; otherwise it is free again
     */
    record Left(Size size, Length from, boolean atBench) {}

    /**
     * A new piece.
     *
     * @param code empty: one is made
     * @param from where it begins, from the left end of the piece it is cut from; empty when nobody knows, and then it is taken
     *     to have no flaws
     * @param place empty: that of the piece it is cut from
     * @param planned its volume as the plan had it
     */
    record Rest(
            Size size,
            @Nullable String code,
            @Nullable Length from,
            @Nullable String place,
            String note,
            @Nullable Volume planned) {}

    /** What came of a cut. */
    record Made(Piece piece, List<Piece> rests, List<Outcome> outcomes) {
        public Made {
            rests = List.copyOf(rests);
            outcomes = List.copyOf(outcomes);
        }
    }
}
