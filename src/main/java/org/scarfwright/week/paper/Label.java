package org.scarfwright.week.paper;

/**
 * What a label says.
 *
 * @param code of the piece
 * @param wood as pages call it
 * @param size in the shop's unit
 * @param place where the piece lies; empty when it lies nowhere in particular
 * @param address what the QR code holds: where the piece's page is found
 */
public record Label(String code, String wood, String size, String place, String address) {
    /** More than any label holds. */
    private static final int LONGEST = 200;

    public Label {
        wood = oneLine(wood);
        size = oneLine(size);
        place = oneLine(place);
    }

    /** Signs without a shape of their own, such as joiners and marks of direction, would print as boxes. */
    private static String oneLine(String text) {
        String line =
                text.replaceAll("\\p{Cntrl}+", " ").replaceAll("\\p{Cf}+", "").strip();
        return line.codePointCount(0, line.length()) > LONGEST
                ? line.substring(0, line.offsetByCodePoints(0, LONGEST)) + "…"
                : line;
    }
}
