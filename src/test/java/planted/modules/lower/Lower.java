package planted.modules.lower;

/** What the other room must not know. */
public record Lower(int value) {}
