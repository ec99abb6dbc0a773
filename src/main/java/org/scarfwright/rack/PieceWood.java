package org.scarfwright.rack;

import java.util.List;
import java.util.stream.Collectors;
import org.scarfwright.measure.Length;

/** What a piece is made of. */
public sealed interface PieceWood {
    /** Species ids across the width; one for solid wood. */
    List<String> speciesIds();

    /** Two pieces with the same key are the same wood to a person who matches a neck with a head. */
    default String key() {
        return String.join("/", speciesIds());
    }

    /** One species. */
    record Solid(String speciesId) implements PieceWood {
        @Override
        public List<String> speciesIds() {
            return List.of(speciesId);
        }
    }

    /** Strips glued edge to edge, in order across the width. */
    record Lamination(List<LaminationStrip> strips) implements PieceWood {
        public Lamination {
            strips = List.copyOf(strips);
        }

        @Override
        public List<String> speciesIds() {
            return strips.stream().map(LaminationStrip::speciesId).collect(Collectors.toList());
        }
    }

    /**
     * One strip of a lamination.
     *
     * @param width across the piece; the widths of all strips add up to the piece's width
     */
    record LaminationStrip(String speciesId, Length width, GrainCut grain) {}
}
