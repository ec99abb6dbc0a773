package org.scarfwright.necks.book;

/**
 * What is wrong with one field of a draft.
 *
 * @param value what was given
 * @param message reads on from the field's label, without a full stop
 */
public record Flaw(Field field, String value, String message) {}
