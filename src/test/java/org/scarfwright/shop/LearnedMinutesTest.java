package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.math.Quantiles;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class LearnedMinutesTest {
    /** Worked by hand: sorted 9 10 11 12 14 15 15 16 18 55, the middle two 14 and 15, their mean 14.5, rounded up. */
    @Test
    void isTheMedianOfTheLastTenAndOneBadDayDoesNotMoveIt() {
        List<Integer> recorded = List.of(14, 55, 9, 12, 16, 15, 18, 10, 11, 15, 400, 400, 400);
        assertThat(LearnedMinutes.of(recorded)).isEqualTo(new LearnedMinutes(15, 10, 9, 55));
    }

    /** Worked by hand. */
    @Test
    void isTheMiddleOfAnOddNumberAndTheMeanOfTheMiddleTwoOfAnEvenOne() {
        assertThat(LearnedMinutes.of(List.of(31, 8, 12)).minutes()).isEqualTo(12);
        assertThat(LearnedMinutes.of(List.of(31, 8, 12, 14)).minutes()).isEqualTo(13);
        assertThat(LearnedMinutes.of(List.of(7)).minutes()).isEqualTo(7);
    }

    /** Against the median of Guava, a general library. */
    @Test
    void agreesWithTheMedianOfAGeneralLibrary() {
        Random random = new Random(20261126);
        for (int i = 0; i < 2000; i++) {
            List<Integer> recorded = Stream.generate(() -> 1 + random.nextInt(480))
                    .limit(1 + random.nextInt(15))
                    .toList();
            double median = Quantiles.median().compute(recorded.subList(0, Math.min(10, recorded.size())));
            assertThat(LearnedMinutes.of(recorded).minutes()).isEqualTo((int) Math.ceil(median));
        }
    }

    @Test
    void staysWithinWhatAStepCanBeLaidWith() {
        assertThat(LearnedMinutes.of(List.of(0, 0, 0)).minutes()).isEqualTo(1);
        assertThat(LearnedMinutes.of(List.of(1440, 1440, 1440)).minutes()).isEqualTo(480);
        assertThatThrownBy(() -> LearnedMinutes.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void isUsedFromThreeRecordsOnUnlessThatStepKeepsItsOwn() {
        Workshop shop = shop(Set.of());
        LearnedMinutes two = LearnedMinutes.of(List.of(5, 6));
        LearnedMinutes three = LearnedMinutes.of(List.of(5, 6, 7));
        assertThat(shop.laidWith(Map.of(StepKind.CUT, two)).minutesOf(StepKind.CUT))
                .isEqualTo(10);
        assertThat(shop.laidWith(Map.of(StepKind.CUT, three)).minutesOf(StepKind.CUT))
                .isEqualTo(6);
        assertThat(shop(Set.of(StepKind.CUT))
                        .laidWith(Map.of(StepKind.CUT, three))
                        .minutesOf(StepKind.CUT))
                .isEqualTo(10);
    }

    private static Workshop shop(Set<StepKind> keepsMinutes) {
        return new Workshop(
                Map.of(), 1, "", 1, BigDecimal.TEN, Optional.empty(), 20, Map.of(StepKind.CUT, 10), keepsMinutes);
    }
}
