package org.scarfwright.shop;

/** The kinds of saw a scarf is cut with. */
public enum SawKind {
    MITRE,
    BAND,
    TABLE,
    HAND
}
