package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.scarfwright.web.NearWords;
import org.scarfwright.wood.Species;

/**
 * Finds a wood by what people call it: its id, common or botanical name, in any case, with the words in any order (sugar
 * maple is maple_sugar).
 */
public final class WoodNames {
    private static final int SUGGESTED = 3;

    private final Map<String, String> ids = new HashMap<>();
    private final Map<String, String> names = new LinkedHashMap<>();

    public WoodNames(List<Species> woods) {
        for (Species wood : woods) {
            names.put(wood.id(), wood.commonName());
        }
        // An id beats a common name, a common name beats a botanical one.
        woods.forEach(w -> ids.putIfAbsent(key(w.id()), w.id()));
        woods.forEach(w -> ids.putIfAbsent(key(w.commonName()), w.id()));
        woods.stream()
                .filter(w -> !w.botanicalName().isBlank())
                .forEach(w -> ids.putIfAbsent(key(w.botanicalName()), w.id()));
    }

    public Optional<String> find(String text) {
        return Optional.ofNullable(ids.get(key(text)));
    }

    /** Reads on from “Wood”: what is wrong and which woods were probably meant. */
    public String unknown(String text) {
        List<String> known = new ArrayList<>(names.keySet());
        known.addAll(names.values());
        List<String> near = new ArrayList<>();
        for (String word : NearWords.of(text, known, SUGGESTED)) {
            if (near.stream().noneMatch(word::equalsIgnoreCase)) {
                near.add(word);
            }
        }
        String quoted =
                "“" + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + "” is no wood the shop knows; ";
        return near.isEmpty()
                ? quoted + "write an id or a name from the wood page, for example maple_sugar or Black walnut"
                : quoted + "did you mean " + String.join(" or ", near) + "?";
    }

    private static String key(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(w -> !w.isEmpty())
                .sorted()
                .collect(Collectors.joining(" "));
    }
}
