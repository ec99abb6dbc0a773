package org.scarfwright.wood;

import java.util.List;

/** Woods whose trade may be regulated. A flag to look, never a verdict. */
public final class ProtectedWood {
    private static final List<String> GENERA =
            List.of("Dalbergia", "Guibourtia", "Swietenia", "Cedrela", "Khaya", "Pterocarpus", "Handroanthus");

    private ProtectedWood() {}

    /** True when the current appendices of the convention on trade in endangered species should be looked up for this wood. */
    public static boolean lookUpAppendix(Species wood) {
        return GENERA.stream().anyMatch(wood.botanicalName()::contains);
    }
}
