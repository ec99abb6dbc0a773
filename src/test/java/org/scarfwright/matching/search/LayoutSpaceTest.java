package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.scarfwright.matching.search.RackModel.Site;
import org.scarfwright.matching.search.SearchResult.Measure;

class LayoutSpaceTest {
    /** The table only drops what is above the threshold: listing everything and filtering gives the same layouts. */
    @Test
    void dropsNoLayoutBelowTheThreshold() {
        int dropped = 0;
        for (long seed = 0; seed < 200; seed++) {
            RackModel model = new RackModel(SmallCases.problem(seed));
            Random random = new Random(seed);
            long[] worth = new long[model.supplies];
            for (int s = 0; s < worth.length; s++) {
                worth[s] = Prices.ONE * (random.nextInt(500) - 100) / 3;
            }
            Prices prices = new Prices(Measure.BOOK_VALUE, worth, 0);
            for (Site site : model.sites) {
                LayoutSpace space = new LayoutSpace(model, site, new LayoutSpace.Desk(model));
                space.price(prices);
                List<SiteLayout> every = new ArrayList<>();
                space.all(Long.MAX_VALUE / 2, Integer.MAX_VALUE - 1, every);
                long threshold = Prices.ONE * (random.nextInt(400) - 300);
                Set<SiteLayout> expected = new HashSet<>(every);
                expected.removeIf(x -> reduced(x, worth) > threshold);
                List<SiteLayout> listed = new ArrayList<>();
                space.all(threshold, Integer.MAX_VALUE - 1, listed);
                assertThat(new HashSet<>(listed)).as("seed %d", seed).isEqualTo(expected);
                assertThat(listed).doesNotHaveDuplicates();
                dropped += every.size() - listed.size();

                long least =
                        every.stream().mapToLong(x -> reduced(x, worth)).min().orElse(Long.MAX_VALUE);
                assertThat(space.cheapest(Long.MIN_VALUE, new ArrayList<>()))
                        .as("seed %d", seed)
                        .isEqualTo(least);
            }
        }
        assertThat(dropped).isPositive();
    }

    @Test
    void stopsAtTheLimitAndSaysSo() {
        RackModel model = new RackModel(RackGenerator.problem(new RackGenerator.Size(60, 10, false), 1));
        LayoutSpace space = new LayoutSpace(model, model.sites.get(0), new LayoutSpace.Desk(model));
        space.price(new Prices(Measure.BOOK_VALUE, new long[model.supplies], 0));
        List<SiteLayout> every = new ArrayList<>();
        assertThat(space.all(Long.MAX_VALUE / 2, 1_000_000, every)).isTrue();
        assertThat(space.all(Long.MAX_VALUE / 2, every.size(), new ArrayList<>()))
                .isTrue();
        assertThat(space.all(Long.MAX_VALUE / 2, every.size() - 1, new ArrayList<>()))
                .isFalse();
    }

    private static long reduced(SiteLayout x, long[] worth) {
        long g = x.lossCents * Prices.ONE;
        for (int i = 0; i < x.at.length; i++) {
            g -= x.count[i] * worth[x.supply(i)];
        }
        return g;
    }
}
