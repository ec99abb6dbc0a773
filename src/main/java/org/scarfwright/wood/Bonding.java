package org.scarfwright.wood;

/**
 * How a wood glues, in plain words.
 *
 * <p><b>Source:</b> Forest Products Laboratory, Wood Handbook (FPL-GTR-282), Table 10-1, whose four classes these are; the
 * advice to glue hard and oily woods within the hour is common practice.
 */
public final class Bonding {
    private Bonding() {}

    /** One or two sentences; for a wood the table does not class, that nothing is known. */
    public static String note(Species wood) {
        return wood.bonding()
                .map(Bonding::ofClass)
                .orElse("No published class of bonding was found. Glue a test joint and break it first.");
    }

    private static String ofClass(String bonding) {
        return switch (bonding) {
            case "easily" -> "Bonds easily: many kinds of glue hold it, under a wide range of conditions.";
            case "well" -> "Bonds well: a fair range of glues holds it, under a moderately wide range of conditions.";
            case "satisfactorily" ->
                "Bonds satisfactorily: use a good glue and keep moisture, time and pressure well under control.";
            case "with difficulty" ->
                "Bonds with difficulty: choose the glue with care and follow its label closely. Glue freshly cut faces within "
                        + "the hour; wipe or treat an oily face as the glue’s maker says, and break a test joint first.";
            default -> throw new IllegalArgumentException("no such class of bonding: " + bonding);
        };
    }
}
