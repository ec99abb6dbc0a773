package org.scarfwright.rack;

import java.time.LocalDate;
import org.scarfwright.measure.Length;

/**
 * Warp measured over the whole piece.
 *
 * @param bow rise along the length, flat face
 * @param crook rise along the length, edge
 * @param cup rise across the width
 * @param twist lift of the fourth corner with three corners down
 * @param readOn the day it was measured; wood moves
 */
public record Warp(Length bow, Length crook, Length cup, Length twist, LocalDate readOn) {}
