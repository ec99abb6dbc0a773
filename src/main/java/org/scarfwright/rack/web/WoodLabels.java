package org.scarfwright.rack.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scarfwright.rack.Piece;
import org.scarfwright.rack.PieceWood;
import org.scarfwright.web.Choice;
import org.scarfwright.web.WoodLook;
import org.scarfwright.web.WoodSwatch;
import org.scarfwright.wood.Species;

/** Woods as pages call them. */
final class WoodLabels {
    private final Map<String, String> names = new HashMap<>();
    private final List<Species> woods;

    WoodLabels(List<Species> woods) {
        this.woods = List.copyOf(woods);
        woods.forEach(w -> names.put(w.id(), w.commonName()));
    }

    /** Null when there is none of this id. */
    @Nullable
    Species species(String speciesId) {
        return woods.stream().filter(w -> w.id().equals(speciesId)).findFirst().orElse(null);
    }

    String name(String speciesId) {
        return names.getOrDefault(speciesId, speciesId);
    }

    /** The name of solid wood; the names of the strips of a lamination, from the near edge. */
    String of(PieceWood wood) {
        List<String> strips = wood.speciesIds().stream().map(this::name).toList();
        return wood instanceof PieceWood.Solid ? strips.get(0) : "Lamination: " + String.join(" / ", strips);
    }

    /** What the tones and lines of these pieces stand for. */
    List<WoodSwatch> legend(List<Piece> pieces) {
        Set<String> ids = new TreeSet<>();
        pieces.forEach(p -> ids.addAll(p.wood().speciesIds()));
        return ids.stream().map(id -> new WoodSwatch(name(id), WoodLook.of(id))).toList();
    }

    /** All woods, after a choice that stands for none of them. */
    List<Choice> choices(String none) {
        List<Choice> choices = new ArrayList<>();
        choices.add(new Choice("", none));
        woods.forEach(w -> choices.add(new Choice(w.id(), w.commonName())));
        return List.copyOf(choices);
    }
}
