package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.wood.Readiness.Limits;
import org.scarfwright.wood.Readiness.Verdict;

/** The limits are common practice: 6 to 10 %, 2 points apart. */
class ReadinessTest {
    private static final Limits LIMITS = new Limits(new Moisture(600), new Moisture(1000), new MoistureChange(200));

    @Test
    void readyInsideTheLimitsAndNearTheAir() {
        Readiness ready = of(800, 750);

        assertThat(ready.verdict()).isEqualTo(Verdict.READY);
        assertThat(ready.sentence())
                .isEqualTo(
                        "Ready: 8 % lies between 6 % and 10 %, and the shop’s air, which brings wood to about 7.5 %, will "
                                + "hardly move it.");
    }

    @Test
    void bothLimitsAreStillReady() {
        assertThat(of(600, 600).verdict()).isEqualTo(Verdict.READY);
        assertThat(of(1000, 1000).verdict()).isEqualTo(Verdict.READY);
        assertThat(of(599, 600).verdict()).isEqualTo(Verdict.TOO_DRY);
        assertThat(of(1001, 1000).verdict()).isEqualTo(Verdict.TOO_WET);
    }

    @Test
    void notAtRestMoreThanTwoPointsFromTheAir() {
        assertThat(of(900, 700).verdict()).isEqualTo(Verdict.READY);
        assertThat(of(901, 700).sentence())
                .isEqualTo(
                        "Not at rest: 9.01 % lies between 6 % and 10 %, but the shop’s air brings wood to about 7 %, 2.01 "
                                + "points away, and it will still shrink. Let it lie until it is within 2 points.");
        assertThat(of(700, 901).verdict()).isEqualTo(Verdict.NOT_AT_REST);
        assertThat(of(700, 901).sentence()).contains("2.01 points away, and it will still swell.");
    }

    @Test
    void saysThatTheAirIsNotKnown() {
        Readiness ready = of(800, null);

        assertThat(ready.verdict()).isEqualTo(Verdict.READY);
        assertThat(ready.sentence())
                .isEqualTo(
                        "Ready: 8 % lies between 6 % and 10 %. The shop’s air is not known, so whether it is at rest is not "
                                + "known either.");
    }

    @Test
    void tooWetSaysByHowMuchAndWhetherTheAirWillDryIt() {
        assertThat(of(1130, null).sentence())
                .isEqualTo("Not ready: at 11.3 % it is 1.3 points wetter than the 10 % the shop glues at. Let it dry.");
        assertThat(of(1130, 1000).sentence()).endsWith("Let it dry; the shop’s air brings wood to about 10 %.");
        assertThat(of(1130, 1001).sentence())
                .endsWith(
                        "The shop’s air brings wood to about 10.01 % and will not dry it that far; dry the air first.");
    }

    @Test
    void tooDrySaysByHowMuchAndWhetherTheAirWillDampIt() {
        assertThat(of(500, null).sentence())
                .isEqualTo(
                        "Not ready: at 5 % it is 1 point drier than the 6 % the shop glues at. Let it take up moisture.");
        assertThat(of(500, 600).sentence())
                .endsWith("Let it take up moisture; the shop’s air brings wood to about 6 %.");
        assertThat(of(500, 599).sentence())
                .endsWith(
                        "The shop’s air brings wood to about 5.99 % and will not bring it that far; damp the air first.");
    }

    @Test
    void whatNobodyMeasuredIsNeverReady() {
        Readiness unknown = Readiness.of(null, LIMITS, new Moisture(800));

        assertThat(unknown.verdict()).isEqualTo(Verdict.NOT_MEASURED);
        assertThat(unknown.sentence())
                .isEqualTo("Not measured: read its moisture before it is glued. The shop glues from 6 % to 10 %.");
    }

    private static Readiness of(int reading, @Nullable Integer air) {
        return Readiness.of(new Moisture(reading), LIMITS, air == null ? null : new Moisture(air));
    }
}
