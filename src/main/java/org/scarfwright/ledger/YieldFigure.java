package org.scarfwright.ledger;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.scarfwright.rack.Outcome;

/** What a volume of wood in the yield counts as. The first eleven are what wood became; the others are sums of them. */
public enum YieldFigure {
    PARTS("Parts as sawn"),
    RESTS("Usable rests"),
    KERF("Saw kerf"),
    BEVEL("Bevel wedges"),
    EDGE("Edge trim"),
    TRIM("End trim and defects"),
    PLANING("Planing"),
    SMALL_RESTS("Rests too small to keep"),
    SPOILT("Parts spoilt"),
    SCRAPPED("Whole pieces scrapped"),
    UNEXPLAINED("Unexplained difference"),
    /** All that was taken from pieces. */
    INPUT("Input"),
    /** All that is neither part nor usable rest, the unexplained difference with it. */
    WASTE("Waste and unexplained"),
    /** Parts that came from pieces the plan counts as rescued. */
    RESCUED("Rescued parts");

    private final String title;

    YieldFigure(String title) {
        this.title = title;
    }

    public String title() {
        return title;
    }

    /** As addresses and the API write it: small_rests. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<YieldFigure> ofWord(String word) {
        return Stream.of(values())
                .filter(f -> f.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    /** What wood may become, in the order of the tables; together they are the input. */
    public static List<YieldFigure> became() {
        return List.copyOf(EnumSet.range(PARTS, UNEXPLAINED));
    }

    /** Those that are waste, and the unexplained difference. */
    public static List<YieldFigure> wastes() {
        return became().stream().filter(YieldFigure::isWaste).toList();
    }

    private boolean isWaste() {
        return compareTo(KERF) >= 0 && compareTo(UNEXPLAINED) <= 0;
    }

    /** Whether this sum holds wood that became {@code became}. */
    boolean holds(YieldFigure became, boolean rescued) {
        return switch (this) {
            case INPUT -> true;
            case WASTE -> became.isWaste();
            case RESCUED -> became == PARTS && rescued;
            default -> became == this;
        };
    }

    /** What wood that became this was to become: a part that was spoilt was to be a part. */
    YieldFigure planned() {
        return this == SPOILT ? PARTS : this;
    }

    /** What is added up in this figure, of the figures that are kept. */
    List<YieldFigure> parts() {
        return this == RESCUED
                ? List.of(this)
                : became().stream().filter(b -> holds(b, false)).toList();
    }

    /** Empty for wood that was sold: it never came to a saw. */
    static Optional<YieldFigure> of(Outcome outcome) {
        return switch (outcome.kind()) {
            case PART -> Optional.of(PARTS);
            case REST -> Optional.of(RESTS);
            case UNEXPLAINED -> Optional.of(UNEXPLAINED);
            case SOLD -> Optional.empty();
            case WASTE ->
                Optional.of(
                        outcome.cause() == null
                                ? UNEXPLAINED
                                : switch (outcome.cause()) {
                                    case KERF -> KERF;
                                    case BEVEL -> BEVEL;
                                    case EDGE -> EDGE;
                                    case TRIM -> TRIM;
                                    case PLANING -> PLANING;
                                    case REST -> SMALL_RESTS;
                                    case SCRAPPED -> SCRAPPED;
                                    case SPOILT -> SPOILT;
                                });
        };
    }
}
