package org.scarfwright.web;

/** One line of the legend that says which wood a tone and a line pattern stand for. */
public record WoodSwatch(String name, WoodLook look) {
    /** Classes of the swatch's ground. */
    public String ground() {
        return "wood wood-" + look.tone();
    }

    /** Classes of its lines. */
    public String lines() {
        return "grain grain-" + look.pattern() + " on-" + look.tone();
    }

    /** Its lines, in a field of 40 by 16. */
    public String data() {
        return switch (look.pattern()) {
            case 2, 4 -> "M0 2.5H40M0 5.5H40M0 8H40M0 10.5H40M0 13.5H40";
            case 6 -> "M0 4H40M0 5.5H40M0 10.5H40M0 12H40";
            default -> "M0 4H40M0 8H40M0 12H40";
        };
    }
}
