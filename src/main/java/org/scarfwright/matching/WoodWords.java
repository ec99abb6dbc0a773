package org.scarfwright.matching;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.scarfwright.wood.Species;

/**
 * What woods are called in a sentence.
 *
 * @param names common names by species id; an id without one is said as it is
 */
public record WoodWords(Map<String, String> names) {
    public WoodWords {
        names = Map.copyOf(names);
    }

    static WoodWords of(List<Species> woods) {
        return new WoodWords(woods.stream().collect(Collectors.toMap(Species::id, Species::commonName)));
    }

    String one(String speciesId) {
        return names.getOrDefault(speciesId, speciesId);
    }

    /** A, B and C, each once. */
    String all(List<String> speciesIds) {
        return Words.list(speciesIds.stream().distinct().map(this::one).toList());
    }

    /** A, B or C. */
    String any(List<String> speciesIds) {
        List<String> words = speciesIds.stream().map(this::one).toList();
        return words.size() < 2
                ? String.join("", words)
                : String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
    }
}
