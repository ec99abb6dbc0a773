package org.scarfwright.rack;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.Volume;
import org.scarfwright.wood.Density;
import org.scarfwright.wood.Species;

/**
 * What a piece weighs by the average density of its wood.
 *
 * @param grams whole grams, to the nearest
 * @param moisture at which it weighs that: its own last reading, or {@link #USUAL}
 */
public record PieceWeight(BigDecimal grams, Moisture moisture) {
    /** What published densities are referred to; taken where nobody read the moisture. */
    public static final Moisture USUAL = new Moisture(1200);

    /**
     * The sum over the strips of a lamination; its glue is not counted.
     *
     * @param woods a species by its id; null when there is none
     * @return empty where the density of one of its woods at that moisture is not known
     */
    public static Optional<PieceWeight> of(Piece piece, Function<String, @Nullable Species> woods) {
        MoistureReading reading = piece.moisture();
        Moisture moisture = reading == null ? USUAL : reading.content();
        Optional<BigDecimal> grams = piece.wood() instanceof PieceWood.Lamination lamination
                ? lamination.strips().stream()
                        .map(s -> grams(
                                woods.apply(s.speciesId()),
                                moisture,
                                Volume.of(
                                        piece.length().length(),
                                        s.width(),
                                        piece.thickness().length())))
                        .reduce(Optional.of(BigDecimal.ZERO), (a, b) -> a.flatMap(x -> b.map(x::add)))
                : grams(woods.apply(piece.wood().key()), moisture, piece.volume());
        return grams.map(g -> new PieceWeight(g, moisture));
    }

    private static Optional<BigDecimal> grams(@Nullable Species wood, Moisture moisture, Volume volume) {
        return wood == null ? Optional.empty() : Density.grams(wood, moisture, volume);
    }
}
