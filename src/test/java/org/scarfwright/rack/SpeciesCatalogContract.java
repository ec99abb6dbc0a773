package org.scarfwright.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.published.PublishedTable;
import org.scarfwright.rack.OwnWoods.VersionedWood;
import org.scarfwright.web.ConflictException;
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
    OwnWoods woods;

    @Autowired
    @SuppressWarnings("NullAway.Init")
    Pieces pieces;

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
    void aWoodOfTheShopIsAddedEditedAndRemoved() {
        VersionedWood added = woods.add(own("", "Pear, élancé (ours)"));

        assertThat(added.wood().id()).isEqualTo("own_pear_elance_ours");
        assertThat(added.wood().own()).isTrue();
        assertThat(added.version()).isZero();
        assertThat(catalog.find("own_pear_elance_ours")).contains(added.wood());
        assertThat(catalog.all()).contains(added.wood()).hasSize(34);

        Species heavier = own(added.wood().id(), "Pear");
        assertThat(woods.change(1, heavier)).as("another version").isFalse();
        assertThat(woods.change(0, heavier)).isTrue();
        assertThat(woods.wood(added.wood().id())).contains(new VersionedWood(1, heavier));

        assertThat(woods.remove(0, heavier.id())).as("another version").isFalse();
        assertThat(woods.remove(1, heavier.id())).isTrue();
        assertThat(catalog.find(heavier.id())).isEmpty();
    }

    @Test
    void aFigureNobodyEnteredStaysEmpty() {
        Species bare = new Species(
                "", "Plum", "", null, null, null, null, null, null, null, null, null, "ours", "ours", null, true);

        Species kept = woods.add(bare).wood();

        assertThat(kept.specificGravity()).isNull();
        assertThat(kept.morPsi()).isNull();
        assertThat(kept.shrinkRadialPct()).isNull();
        assertThat(kept.botanicalName()).isEmpty();
        assertThat(kept.bonding()).isEmpty();
    }

    @Test
    void twoWoodsWhoseNamesReadAlikeGetIdsOfTheirOwn() {
        assertThat(woods.add(own("", "Pear")).wood().id()).isEqualTo("own_pear");
        assertThat(woods.add(own("", "Pear!")).wood().id()).isEqualTo("own_pear_2");
        assertThat(woods.add(own("", "梨")).wood().id()).isEqualTo("own_wood");
        assertThat(woods.add(own("", "x".repeat(80))).wood().id()).hasSizeLessThanOrEqualTo(40);
    }

    @Test
    void twoWoodsCannotShareAName() {
        woods.add(own("", "Pear"));

        assertThatThrownBy(() -> woods.add(own("", "Pear"))).isInstanceOf(ConflictException.class);
    }

    @Test
    void aPublishedWoodIsNeitherEditedNorRemoved() {
        assertThat(woods.change(0, own("beech", "Our beech"))).isFalse();
        assertThat(woods.remove(0, "beech")).isFalse();
        assertThat(catalog.find("beech"))
                .hasValueSatisfying(w -> assertThat(w.own()).isFalse());
    }

    @Test
    void aWoodAPieceIsMadeOfStays() {
        String id = woods.add(own("", "Pear")).wood().id();
        pieces.add(
                new PieceCells()
                        .put(PieceField.CODE, "OWN-1")
                        .put(PieceField.WOOD, "pear")
                        .put(PieceField.LENGTH, "700")
                        .put(PieceField.WIDTH, "80")
                        .put(PieceField.THICKNESS, "25"),
                LengthUnit.MM);

        assertThatThrownBy(() -> woods.remove(0, id))
                .isInstanceOf(ConflictException.class)
                .hasMessage("This wood stays: a piece of the rack or its history is made of it.");
    }

    @Test
    void aWoodADesignAsksForStays() {
        String id = woods.add(own("", "Pear")).wood().id();
        jdbc.sql("insert into neck_design (code, name, neck_length_um, neck_length_typed, nut_width_um,"
                        + " nut_width_typed, heel_width_um, heel_width_typed, neck_thickness_um, neck_thickness_typed,"
                        + " head_length_um, head_length_typed, head_width_um, head_width_typed, head_thickness_um,"
                        + " head_thickness_typed, finish, match_rule, lines_meet, wings_allowed, end_allowance_um,"
                        + " end_allowance_typed, side_allowance_um, side_allowance_typed)"
                        + " values ('OWN-D', 'Asks for pear', 457000, '457', 45000, '45', 60000, '60', 20000, '20', 180000,"
                        + " '180', 78000, '78', 15000, '15', 'CLEAR', 'ANY', false, false, 0, '0', 0, '0')")
                .update();
        jdbc.sql("insert into neck_design_wood (design_id, part, position, species_id)"
                        + " select id, 'HEAD', 1, :wood from neck_design where code = 'OWN-D'")
                .param("wood", id)
                .update();

        assertThatThrownBy(() -> woods.remove(0, id))
                .isInstanceOf(ConflictException.class)
                .hasMessage("This wood stays: a design asks for it. Take it out of the design first.");
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

    private static Species own(String id, String name) {
        return new Species(
                id,
                name,
                "Pyrus communis",
                0.69,
                Species.AT_TWELVE,
                12000,
                1.13,
                1660,
                3.9,
                11.4,
                13.8,
                "well",
                "entered by this shop",
                "entered by this shop",
                "entered by this shop",
                true);
    }
}
