package org.scarfwright.ledger;

import java.util.List;
import java.util.Optional;
import org.scarfwright.measure.Volume;

/** What became of all wood that ever came to the rack. */
public interface WoodFlow {
    /** As it is at this moment, from everything that stands. */
    Flow now();

    /** Where wood is that came. */
    enum Fate {
        NECKS("Parts of necks"),
        RESTS("Rests on the rack"),
        AS_IT_CAME("On the rack as it came"),
        SOLD("Sold"),
        KERF(YieldFigure.KERF),
        BEVEL(YieldFigure.BEVEL),
        EDGE(YieldFigure.EDGE),
        TRIM(YieldFigure.TRIM),
        PLANING(YieldFigure.PLANING),
        SMALL_RESTS(YieldFigure.SMALL_RESTS),
        SPOILT(YieldFigure.SPOILT),
        SCRAPPED(YieldFigure.SCRAPPED),
        UNEXPLAINED(YieldFigure.UNEXPLAINED);

        private final String title;

        Fate(String title) {
            this.title = title;
        }

        /** Wood that is lost is called what the yield calls it. */
        Fate(YieldFigure figure) {
            this(figure.title());
        }

        public String title() {
            return title;
        }

        /** Neither used, nor kept, nor sold. */
        public boolean isLost() {
            return compareTo(KERF) >= 0;
        }

        /** The yield's figure of the same wood; empty for wood that never came to a saw. */
        public Optional<YieldFigure> figure() {
            return this == NECKS
                    ? Optional.of(YieldFigure.PARTS)
                    : isLost() ? Optional.of(YieldFigure.valueOf(name())) : Optional.empty();
        }
    }

    /**
     * Wood of one fate.
     *
     * @param volume below nothing where more came out than went in
     * @param hundredths of a percent of all that is not below nothing
     */
    record Share(Fate fate, Volume volume, int hundredths) {}

    /**
     * All of it.
     *
     * @param came what came to the rack: bought, imported, and what measuring anew found more or less; the sum of all volumes
     * @param shares those that are not nothing; their hundredths add up to 10,000 where there are any
     */
    record Flow(Volume came, List<Share> shares) {
        public Flow {
            shares = List.copyOf(shares);
        }

        public Volume of(Fate fate) {
            return shares.stream()
                    .filter(s -> s.fate() == fate)
                    .map(Share::volume)
                    .findFirst()
                    .orElse(Volume.ZERO);
        }
    }
}
