package org.scarfwright.rack.web;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.MeasureFormatException;
import org.scarfwright.rack.WoodNames;
import org.scarfwright.web.Choice;
import org.scarfwright.web.QueryText;
import org.scarfwright.wood.Species;

/** A wood of the shop as raw text. Only its name must be given: a figure that is left out stays unknown. */
final class WoodForm {
    /** What stands in the source of every figure of an own wood. */
    static final String ENTERED = "entered by this shop";

    static final List<Choice> BASES =
            List.of(new Choice("12", "its volume at 12 %"), new Choice("green", "its green volume"));
    static final List<Choice> BONDING = List.of(
            new Choice("", "not known"),
            new Choice("easily", "easily"),
            new Choice("well", "well"),
            new Choice("satisfactorily", "satisfactorily"),
            new Choice("with difficulty", "with difficulty"));

    private static final String NAME = "commonName";
    private static final String BOTANICAL = "botanicalName";
    private static final String BASIS = "specificGravityBasis";
    private static final String BONDING_CLASS = "bondingClass";
    private static final String SOURCE = "source";
    private static final int LONGEST_NAME = 80;
    private static final int LONGEST_SOURCE = 90;

    /** A figure, where it stands among the values, what it is called and what it may be. */
    private record Figure(String key, String label, DecimalText.Range range) {}

    private static final Figure GRAVITY =
            new Figure("specificGravity", "Specific gravity", new DecimalText.Range("0.1", "1.4", 2, "", "0.63"));
    private static final Figure MOR =
            new Figure("morPsi", "Modulus of rupture", new DecimalText.Range("1000", "60000", 0, "psi", "15800"));
    private static final Figure MOE = new Figure(
            "moeMpsi", "Modulus of elasticity", new DecimalText.Range("0.1", "10", 2, "million psi", "1.83"));
    private static final Figure HARDNESS =
            new Figure("sideHardnessLbf", "Side hardness", new DecimalText.Range("50", "10000", 0, "lbf", "1450"));
    private static final Figure RADIAL =
            new Figure("shrinkRadialPct", "Radial shrinkage", new DecimalText.Range("0.1", "30", 1, "%", "4.8"));
    private static final Figure TANGENTIAL = new Figure(
            "shrinkTangentialPct", "Tangential shrinkage", new DecimalText.Range("0.1", "30", 1, "%", "9.9"));
    private static final Figure VOLUMETRIC = new Figure(
            "shrinkVolumetricPct", "Volumetric shrinkage", new DecimalText.Range("0.1", "49.9", 1, "%", "14.7"));

    static final List<String> KEYS = List.of(
            NAME,
            BOTANICAL,
            GRAVITY.key(),
            BASIS,
            MOR.key(),
            MOE.key(),
            HARDNESS.key(),
            RADIAL.key(),
            TANGENTIAL.key(),
            VOLUMETRIC.key(),
            BONDING_CLASS,
            SOURCE);

    private WoodForm() {}

    static Map<String, String> empty() {
        Map<String, String> texts = new LinkedHashMap<>();
        KEYS.forEach(key -> texts.put(key, ""));
        texts.put(BASIS, "12");
        return texts;
    }

    static Map<String, String> typed(QueryText query) {
        Map<String, String> texts = new LinkedHashMap<>();
        KEYS.forEach(key -> texts.put(key, query.typed(key)));
        return texts;
    }

    static Map<String, String> texts(Species wood) {
        Map<String, String> texts = empty();
        texts.put(NAME, wood.commonName());
        texts.put(BOTANICAL, wood.botanicalName());
        texts.put(GRAVITY.key(), text(wood.specificGravity()));
        texts.put(BASIS, Species.GREEN.equals(wood.specificGravityBasis()) ? "green" : "12");
        texts.put(MOR.key(), wood.morPsi() == null ? "" : wood.morPsi().toString());
        texts.put(MOE.key(), text(wood.moeMpsi()));
        texts.put(
                HARDNESS.key(),
                wood.sideHardnessLbf() == null ? "" : wood.sideHardnessLbf().toString());
        texts.put(RADIAL.key(), text(wood.shrinkRadialPct()));
        texts.put(TANGENTIAL.key(), text(wood.shrinkTangentialPct()));
        texts.put(VOLUMETRIC.key(), text(wood.shrinkVolumetricPct()));
        texts.put(BONDING_CLASS, wood.bonding().orElse(""));
        texts.put(SOURCE, sourceTyped(wood));
        return texts;
    }

    /** What the shop wrote about where its figures are from. */
    static String sourceTyped(Species wood) {
        return wood.mechanicalSource().startsWith(ENTERED + ": ")
                ? wood.mechanicalSource().substring(ENTERED.length() + 2)
                : "";
    }

    /**
     * @param id of the wood that is edited; empty for a new one
     * @param known every wood of the shop
     * @return null when anything was refused; the reasons are then the query's errors
     */
    static @Nullable Species read(QueryText query, String id, List<Species> known) {
        String name = query.read(NAME, "Name", "Pear", text -> name(text, id, known));
        String botanical = optional(query, BOTANICAL, "Botanical name", text -> plain(text, LONGEST_NAME));
        BigDecimal gravity = number(query, GRAVITY);
        String basis = optional(query, BASIS, "Specific gravity is referred to", WoodForm::basis);
        BigDecimal mor = number(query, MOR);
        BigDecimal moe = number(query, MOE);
        BigDecimal hardness = number(query, HARDNESS);
        BigDecimal radial = number(query, RADIAL);
        BigDecimal tangential = number(query, TANGENTIAL);
        BigDecimal volumetric = number(query, VOLUMETRIC);
        String bonding = optional(query, BONDING_CLASS, "Bonds", WoodForm::bonding);
        String source = optional(query, SOURCE, "Where the figures are from", text -> plain(text, LONGEST_SOURCE));
        if (name == null || !query.errors().isEmpty()) {
            return null;
        }
        String entered = source == null ? ENTERED : ENTERED + ": " + source;
        return new Species(
                id,
                name,
                botanical == null ? "" : botanical,
                decimal(gravity),
                gravity == null ? null : basis == null ? Species.AT_TWELVE : basis,
                whole(mor),
                decimal(moe),
                whole(hardness),
                decimal(radial),
                decimal(tangential),
                decimal(volumetric),
                bonding,
                entered,
                entered,
                bonding == null ? null : entered,
                true);
    }

    private static String name(String text, String id, List<Species> known) {
        String name = plain(text, LONGEST_NAME);
        if (name.isEmpty()) {
            throw new MeasureFormatException("is empty; write what the shop calls the wood, for example Pear");
        }
        if (name.codePoints().noneMatch(Character::isLetter)) {
            throw new MeasureFormatException("“" + name + "” holds no letter; write for example Pear");
        }
        List<Species> others = known.stream().filter(w -> !w.id().equals(id)).toList();
        Optional<Species> same = new WoodNames(others)
                .find(name)
                .flatMap(other ->
                        others.stream().filter(w -> w.id().equals(other)).findFirst());
        if (same.isPresent()) {
            throw new MeasureFormatException("“" + name + "” already means "
                    + same.get().commonName()
                    + "; give it a name of its own, for example " + name.substring(0, Math.min(name.length(), 40))
                    + " (ours)");
        }
        return name;
    }

    private static String plain(String text, int longest) {
        String s = text.strip();
        if (s.length() > longest) {
            throw new MeasureFormatException("is " + s.length() + " characters long; write at most " + longest);
        }
        if (s.codePoints().anyMatch(Character::isISOControl)) {
            throw new MeasureFormatException("holds a character that cannot be printed; type it again");
        }
        return s;
    }

    private static String basis(String text) {
        return switch (text.strip()) {
            case "12", Species.AT_TWELVE -> Species.AT_TWELVE;
            case "green", Species.GREEN -> Species.GREEN;
            default -> throw new MeasureFormatException("“" + cut(text) + "” is neither; write 12 or green");
        };
    }

    private static String bonding(String text) {
        String word = text.strip();
        if (BONDING.stream().noneMatch(c -> c.value().equals(word))) {
            throw new MeasureFormatException(
                    "“" + cut(text) + "” is no class; write easily, well, satisfactorily or with difficulty");
        }
        return word;
    }

    private static String cut(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }

    private static @Nullable BigDecimal number(QueryText query, Figure figure) {
        return optional(query, figure.key(), figure.label(), figure.range()::read);
    }

    private static <T> @Nullable T optional(QueryText query, String key, String label, Function<String, T> reader) {
        return query.typed(key).isBlank() ? null : query.read(key, label, "", reader);
    }

    private static @Nullable Double decimal(@Nullable BigDecimal value) {
        return value == null ? null : value.doubleValue();
    }

    private static @Nullable Integer whole(@Nullable BigDecimal value) {
        return value == null ? null : value.intValueExact();
    }

    private static String text(@Nullable Double figure) {
        return figure == null ? "" : DecimalText.plain(BigDecimal.valueOf(figure));
    }
}
