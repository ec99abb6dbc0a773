package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.published.PublishedTable;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

/** The species table holds the published figures as they were copied, cell for cell, and nothing besides. */
@Transactional
abstract class SpeciesCatalogContract {
    @Autowired
    @SuppressWarnings("NullAway.Init")
    SpeciesCatalog catalog;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    JdbcClient jdbc;

    @Test
    void holdsEveryPublishedRowAndNoOther() {
        List<NamedCsvRecord> printed = PublishedTable.rows("species.csv");

        assertThat(printed).hasSize(33);
        assertThat(catalog.all())
                .extracting(Species::id)
                .containsExactlyInAnyOrderElementsOf(
                        printed.stream().map(r -> r.getField("id")).toList());
    }

    @Test
    void everyCellIsThePublishedOneAndABlankStaysBlank() {
        for (NamedCsvRecord row : PublishedTable.rows("species.csv")) {
            Species wood = catalog.find(row.getField("id")).orElseThrow();

            assertThat(wood.commonName()).isEqualTo(row.getField("common_name"));
            assertThat(wood.botanicalName()).isEqualTo(row.getField("botanical_name"));
            assertThat(wood.specificGravity()).isEqualTo(decimal(row, "specific_gravity"));
            assertThat(wood.specificGravityBasis()).isEqualTo(text(row, "specific_gravity_basis"));
            assertThat(wood.morPsi()).isEqualTo(whole(row, "mor_12_psi"));
            assertThat(wood.moeMpsi()).isEqualTo(decimal(row, "moe_12_mpsi"));
            assertThat(wood.sideHardnessLbf()).isEqualTo(whole(row, "side_hardness_12_lbf"));
            assertThat(wood.shrinkRadialPct()).isEqualTo(decimal(row, "shrink_radial_pct"));
            assertThat(wood.shrinkTangentialPct()).isEqualTo(decimal(row, "shrink_tangential_pct"));
            assertThat(wood.shrinkVolumetricPct()).isEqualTo(decimal(row, "shrink_volumetric_pct"));
            assertThat(wood.bondingClass()).isEqualTo(text(row, "bonding_class"));
            assertThat(wood.mechanicalSource()).isEqualTo(row.getField("mechanical_source"));
            assertThat(wood.shrinkageSource()).isEqualTo(row.getField("shrinkage_source"));
            assertThat(wood.bondingSource()).isEqualTo(text(row, "bonding_source"));
        }
    }

    @Test
    void ordersWoodsByTheirCommonNames() {
        List<String> names = catalog.all().stream().map(Species::commonName).toList();

        assertThat(names).isSortedAccordingTo(String.CASE_INSENSITIVE_ORDER);
        assertThat(names).startsWith("African ebony", "African padauk", "American basswood");
    }

    @Test
    void findsNothingForANameItDoesNotHave() {
        assertThat(catalog.find("maple")).isEmpty();
        assertThat(catalog.find("' or '1'='1")).isEmpty();
    }

    @Test
    void refusesAFigureWithoutItsBasis() {
        assertThatThrownBy(() -> jdbc.sql("update species set specific_gravity_basis = null where id = 'beech'")
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class);
    }

    private static @Nullable String text(NamedCsvRecord row, String column) {
        String value = row.getField(column);
        return value.isEmpty() ? null : value;
    }

    private static @Nullable Double decimal(NamedCsvRecord row, String column) {
        String value = row.getField(column);
        return value.isEmpty() ? null : Double.valueOf(value);
    }

    private static @Nullable Integer whole(NamedCsvRecord row, String column) {
        String value = row.getField(column);
        return value.isEmpty() ? null : Integer.valueOf(value);
    }
}
