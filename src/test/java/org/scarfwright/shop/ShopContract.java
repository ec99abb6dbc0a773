package org.scarfwright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.measure.Moisture;
import org.scarfwright.measure.MoistureChange;
import org.scarfwright.shop.ShopEditing.VersionedSaw;
import org.scarfwright.web.ConflictException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;

@Transactional
abstract class ShopContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    Shop shop;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    ShopEditing editing;

    /** Common practice: one of each kind, and kerfs inside band 0.6–1.4, table 2.4–3.2, mitre 2.5–3.2, hand 0.5–1.0 mm. */
    @Test
    void aNewShopOwnsOneSawOfEachKindWithACommonKerf() {
        assertThat(shop.saws()).extracting(Saw::kind).containsExactlyInAnyOrder(SawKind.values());
        for (Saw saw : shop.saws()) {
            double kerf = saw.kerf().mm();
            switch (saw.kind()) {
                case BAND -> assertThat(kerf).isBetween(0.6, 1.4);
                case TABLE -> assertThat(kerf).isBetween(2.4, 3.2);
                case MITRE -> assertThat(kerf).isBetween(2.5, 3.2);
                case HAND -> assertThat(kerf).isBetween(0.5, 1.0);
            }
        }
    }

    /** Common practice: glue at 6–10 %, within 2 points; 0.5–1.5 mm off a face; a neck's grain at 1 in 15 or flatter. */
    @Test
    void aNewShopBeginsWithTheRulesOfCommonPractice() {
        ShopSettings s = shop.settings();
        assertThat(s.driest()).isEqualTo(Moisture.ofPercent(6));
        assertThat(s.wettest()).isEqualTo(Moisture.ofPercent(10));
        assertThat(s.moistureApart()).isEqualTo(new MoistureChange(200));
        assertThat(s.planingPerFace().mm()).isBetween(0.5, 1.5);
        assertThat(s.neckGrainSlope()).isEqualTo(15);
        assertThat(s.shortestMachined()).isEqualTo(Length.ofMm(300));
        assertThat(s.neckStraightness()).isEqualTo(Length.ofMm(1));
        assertThat(s.usableRestLength()).isEqualTo(Length.ofMm(120));
        assertThat(s.searchSeconds()).isEqualTo(20);
        assertThat(s.searchMemoryMb()).isEqualTo(2048);
    }

    @Test
    void givesBackEveryRuleAsItWasSaved() {
        ShopSettings wanted = new ShopSettings(
                LengthUnit.INCH,
                "GBP",
                Length.ofUm(1_191),
                Length.ofUm(3_175),
                Length.ofUm(794),
                Length.ofUm(254_000),
                Length.ofUm(152_400),
                Length.ofUm(50_800),
                20,
                new Moisture(550),
                new Moisture(925),
                new MoistureChange(150),
                45,
                512);
        assertThat(editing.changeSettings(editing.editableSettings().version(), wanted))
                .isTrue();
        assertThat(shop.settings()).isEqualTo(wanted);
    }

    @Test
    void theSecondOfTwoEditorsOfTheRulesIsTold() {
        long seen = editing.editableSettings().version();
        assertThat(editing.changeSettings(seen, shop.settings())).isTrue();
        assertThat(editing.changeSettings(seen, shop.settings())).isFalse();
    }

    @Test
    void givesBackASawAsItWasSavedAndPutsItLast() {
        Saw frame = frameSaw();
        assertThat(editing.addSaw(frame)).isTrue();
        assertThat(shop.saws()).endsWith(frame);
    }

    @Test
    void refusesASecondSawOfTheSameCode() {
        assertThat(editing.addSaw(frameSaw())).isTrue();
        assertThat(editing.addSaw(frameSaw())).isFalse();
    }

    @Test
    void theSecondOfTwoEditorsOfASawIsTold() {
        editing.addSaw(frameSaw());
        long seen = editing.editableSaw("frame").orElseThrow().version();
        assertThat(editing.changeSaw(seen, frameSaw())).isTrue();
        assertThat(editing.changeSaw(seen, frameSaw())).isFalse();
        assertThat(editing.removeSaw(seen, "frame")).isFalse();
        assertThat(editing.removeSaw(seen + 1, "frame")).isTrue();
        assertThat(editing.editableSaw("frame")).isEmpty();
    }

    @Test
    void aPreferredSawComesFirstAndTheOthersKeepTheirOrder() {
        editing.preferSaw("hand");
        assertThat(shop.saws()).extracting(Saw::code).containsExactly("hand", "band", "mitre", "table");
        editing.preferSaw("mitre");
        editing.preferSaw("no such saw");
        assertThat(shop.saws()).extracting(Saw::code).containsExactly("mitre", "hand", "band", "table");
    }

    @Test
    void keepsTheLastSaw() {
        for (VersionedSaw s : editing.editableSaws()) {
            if (!s.saw().code().equals("band")) {
                assertThat(editing.removeSaw(s.version(), s.saw().code())).isTrue();
            }
        }
        assertThatThrownBy(() -> editing.removeSaw(0, "band"))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("last saw");
    }

    private static Saw frameSaw() {
        return new Saw(
                "frame",
                "Frame saw",
                SawKind.HAND,
                Length.ofUm(650),
                Length.ofMm(300),
                Length.ofMm(250),
                new Angle(7_500),
                Angle.ofDegrees(17),
                Length.ofUm(2_250),
                new Angle(250));
    }
}
