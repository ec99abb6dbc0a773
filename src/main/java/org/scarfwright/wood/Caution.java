package org.scarfwright.wood;

import java.util.List;
import java.util.Optional;

/**
 * What can hurt someone who works a wood, with where it stands.
 *
 * @param title a few words
 * @param text a sentence or two
 * @param source who says so
 * @param checked false for what was written from memory and not compared with the source
 */
public record Caution(String title, String text, String source, boolean checked) {
    private static final String MEMORY =
            "from memory of the Health and Safety Executive’s Woodworking Sheet 30, Toxic woods";

    /** What holds for every wood. */
    public static final List<Caution> ALWAYS = List.of(
            new Caution(
                    "Dust",
                    "Wood dust causes cancer in humans. Extract it at its source and wear a mask; limits differ by country.",
                    "International Agency for Research on Cancer, Group 1; limits over 8 h in mg/m³: OSHA 15 total and 5 "
                            + "respirable as nuisance dust, NIOSH 1, HSE hardwood 3, EU 2",
                    true),
            new Caution(
                    "Machines",
                    "Clamp the piece, keep the guard as low as the work allows, do not force the feed and keep hands clear. A short "
                            + "piece is not fed through a planer or jointer: plane long, crosscut last. The machine’s manual, "
                            + "local rules and licensed practice come first.",
                    "common practice; the shop’s own shortest machined piece",
                    true));

    /** What holds for every bevel, wherever its cut is shown. */
    public static final Caution AT_THE_SAW = new Caution(
            "At the saw",
            "A bevel this shallow is a cut at a steep angle to the fence: clamp the piece, set the guard as low as the work allows, "
                    + "never force the feed, make a test cut in scrap and keep hands clear. A push block adds to a guard and never "
                    + "replaces it. Plane while the piece is long and crosscut last; no machine planing below the shop’s shortest "
                    + "piece. Wood dust harms: extract it at the source and wear a mask. The machine’s manual, local rules and "
                    + "licensed practice come before anything shown here.",
            "common practice",
            true);

    /** Genera whose dust is known to make some people allergic, and what is reported. */
    private static final List<Reported> SENSITISERS = List.of(
            new Reported("Dalbergia", "skin rashes and asthma"),
            new Reported("Diospyros", "skin rashes, sneezing and sore eyes"),
            new Reported("Millettia", "splinters that fester, skin rashes and breathing trouble"),
            new Reported("Pterocarpus", "skin rashes, asthma and nausea"),
            new Reported("Khaya", "skin rashes and irritated airways"),
            new Reported("Swietenia", "skin rashes and irritated airways"),
            new Reported("Handroanthus", "skin rashes and irritated airways and eyes"),
            new Reported("Entandrophragma", "irritated skin and sneezing"),
            new Reported("Terminalia", "splinters that fester and irritated airways"),
            new Reported("Guibourtia", "skin rashes"),
            new Reported("Cordia", "skin rashes, also in people allergic to rosewood"),
            new Reported("Astronium", "irritated skin and eyes"),
            new Reported("Peltogyne", "irritation and nausea"),
            new Reported("Cedrela", "skin rashes and asthma"),
            new Reported("Juglans", "irritated eyes and skin"),
            new Reported("Fagus", "skin rashes and irritated airways; hardwood dust is tied to cancer of the nose"));

    private record Reported(String genus, String effect) {}

    /** What some people react to in this wood; empty where nothing is noted here, which does not make it harmless. */
    public static Optional<Caution> sensitiser(Species wood) {
        return SENSITISERS.stream()
                .filter(r -> wood.botanicalName().contains(r.genus()))
                .findFirst()
                .map(r -> new Caution(
                        "Allergy",
                        "Reported of " + r.genus() + ": " + r.effect()
                                + ". Once allergic, a person reacts to very little. Cover the skin, extract, wear a mask.",
                        MEMORY,
                        false));
    }
}
