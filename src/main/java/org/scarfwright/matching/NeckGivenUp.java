package org.scarfwright.matching;

/** A plan makes this neck no longer; published inside the transaction that gave it up. */
public record NeckGivenUp(PlannedNeck neck) {}
