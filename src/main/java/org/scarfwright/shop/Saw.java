package org.scarfwright.shop;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * A saw and what it can do with the piece on edge.
 *
 * @param code short name, unique in the shop
 * @param kerf width of the cut
 * @param depth widest piece it cuts through (resaw height of a band saw)
 * @param reach longest cut along the bevel face
 * @param shallowest smallest tilt angle it can be set to
 * @param steepest largest tilt angle it can be set to
 * @param truing length to leave on the short side of each part for truing its bevel
 * @param scale the least difference of angles that can be read on its scale, or told apart on its jig
 */
public record Saw(
        String code,
        String name,
        SawKind kind,
        Length kerf,
        Length depth,
        Length reach,
        Angle shallowest,
        Angle steepest,
        Length truing,
        Angle scale) {}
