package org.scarfwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.scarfwright.published.PublishedTable;

/** What is said of a wood in words. The classes of bonding are those of Wood Handbook (FPL-GTR-282), Table 10-1. */
class WoodWordsTest {

    @Test
    void everyClassOfBondingHasItsWords() {
        assertThat(Bonding.note(Woods.bonding("easily"))).startsWith("Bonds easily: many kinds of glue");
        assertThat(Bonding.note(Woods.bonding("well"))).startsWith("Bonds well: a fair range of glues");
        assertThat(Bonding.note(Woods.bonding("satisfactorily"))).startsWith("Bonds satisfactorily: use a good glue");
        assertThat(Bonding.note(Woods.bonding("with difficulty")))
                .startsWith("Bonds with difficulty: choose the glue with care")
                .contains("within the hour");
        assertThat(Bonding.note(Woods.bonding(null))).startsWith("No published class of bonding was found.");
        assertThatThrownBy(() -> Bonding.note(Woods.bonding("badly"))).hasMessage("no such class of bonding: badly");
    }

    @Test
    void theClassesOfThePublishedFiguresAllHaveWords() {
        Set<String> classes = PublishedTable.rows("species.csv").stream()
                .map(row -> row.getField("bonding_class"))
                .filter(c -> !c.isEmpty())
                .collect(Collectors.toSet());

        assertThat(classes)
                .hasSize(4)
                .allSatisfy(c -> assertThat(Bonding.note(Woods.bonding(c))).startsWith("Bonds " + c + ":"));
    }

    @Test
    void dustIsGroupOneWithEveryLimit() {
        assertThat(Caution.ALWAYS)
                .first()
                .satisfies(dust -> assertThat(dust.source())
                        .contains("Group 1")
                        .contains("OSHA 15 total and 5 respirable", "NIOSH 1", "HSE hardwood 3", "EU 2"));
        assertThat(Caution.ALWAYS)
                .hasSize(2)
                .allSatisfy(c -> assertThat(c.checked()).isTrue());
    }

    @Test
    void sensitisersAreNotedAndMarkedAsNotChecked() {
        assertThat(Caution.sensitiser(Woods.named("Dalbergia latifolia"))).hasValueSatisfying(c -> {
            assertThat(c.text()).startsWith("Reported of Dalbergia: skin rashes and asthma.");
            assertThat(c.checked()).isFalse();
            assertThat(c.source()).startsWith("from memory");
        });
        assertThat(Caution.sensitiser(Woods.named("Tabebuia/Handroanthus spp.")))
                .isPresent();
        assertThat(Caution.sensitiser(Woods.named("Acer saccharum"))).isEmpty();
    }

    @Test
    void theGeneraToLookUpAreFlagged() {
        for (String genus : "Dalbergia Guibourtia Swietenia Cedrela Khaya Pterocarpus Handroanthus".split(" ", -1)) {
            assertThat(ProtectedWood.lookUpAppendix(Woods.named(genus + " spp.")))
                    .isTrue();
        }
        assertThat(ProtectedWood.lookUpAppendix(Woods.named("Acer saccharum"))).isFalse();
    }

    @Test
    void whatWasNotCheckedIsTold() {
        Species printed = Woods.sourced("Wood Handbook Table 4-3");
        assertThat(printed.shrinkageNotChecked()).isFalse();
        assertThat(printed.linearShrinkageNotChecked()).isFalse();
        Species memory = Woods.sourced("from memory of Wood Handbook Table 4-3/4-4");
        assertThat(memory.shrinkageNotChecked()).isTrue();
        assertThat(memory.linearShrinkageNotChecked()).isTrue();
        Species half = Woods.sourced("radial and tangential recovered from Table 13-5; volumetric from memory");
        assertThat(half.shrinkageNotChecked()).isTrue();
        assertThat(half.linearShrinkageNotChecked()).isFalse();
        Species second = Woods.sourced("tangential recovered from a change coefficient in a secondary list");
        assertThat(second.shrinkageNotChecked()).isTrue();
        assertThat(second.linearShrinkageNotChecked()).isTrue();
    }
}
