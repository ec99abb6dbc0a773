package planted.modules.upper;

import planted.modules.lower.Lower;

/** Knows a room its own does not name. */
public record Upper(Lower lower) {}
