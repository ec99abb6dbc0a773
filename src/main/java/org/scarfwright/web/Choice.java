package org.scarfwright.web;

/**
 * One thing a person can choose in a list.
 *
 * @param value what the form sends
 * @param label what the person reads
 */
public record Choice(String value, String label) {}
