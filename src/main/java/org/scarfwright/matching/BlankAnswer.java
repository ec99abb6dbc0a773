package org.scarfwright.matching;

/**
 * What one more blank would give an order that has no wood.
 *
 * @param order code of the order
 * @param fills one neck of it would be made
 * @param text the answer as a sentence
 */
public record BlankAnswer(String order, boolean fills, String text) {}
