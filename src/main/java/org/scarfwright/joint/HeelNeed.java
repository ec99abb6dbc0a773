package org.scarfwright.joint;

import org.scarfwright.measure.Length;

/**
 * What a heel deeper than the neck piece asks of wood: one block, or a stack of layers. Every layer's grain runs along the neck, so
 * that long grain is glued to long grain and all of it moves alike.
 *
 * <p><b>Source:</b> derived here; the direction of the grain is common practice.
 *
 * @param depth from the neck's top to the heel's cap
 * @param length along the neck
 * @param neckThickness t
 * @param layer thickness of the stock the layers are cut from; above zero
 */
public record HeelNeed(Length depth, Length length, Length neckThickness, Length layer) {
    /** Thickness of the one block that is glued to the neck's back; zero when the neck piece is deep enough. */
    public Length block() {
        return depth.minus(neckThickness).max(Length.ZERO);
    }

    /** How many layers a stacked heel takes. */
    public int layers() {
        return Math.toIntExact((block().um() + layer.um() - 1) / layer.um());
    }

    /** What the last layer is planed to; zero when there is none. */
    public Length lastLayer() {
        return layers() == 0 ? Length.ZERO : block().minus(layer.times(layers() - 1L));
    }

    /**
     * Length of stock that gives every layer.
     *
     * @param kerf of the saw that parts them
     */
    public Length stockLength(Length kerf) {
        int n = layers();
        return n == 0 ? Length.ZERO : length.times(n).plus(kerf.times(n - 1L));
    }
}
