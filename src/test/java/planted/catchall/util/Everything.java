package planted.catchall.util;

/** What nobody knew a room for. */
public final class Everything {
    private Everything() {}
}
