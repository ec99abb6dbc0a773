package org.scarfwright.joint;

import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * What a saw can do with the piece standing on edge.
 *
 * @param depth widest piece it cuts through (resaw height of a band saw)
 * @param reach longest cut along the bevel face
 * @param shallowest smallest tilt angle it can be set to
 * @param steepest largest tilt angle it can be set to
 */
public record SawLimits(Length depth, Length reach, Angle shallowest, Angle steepest) {}
