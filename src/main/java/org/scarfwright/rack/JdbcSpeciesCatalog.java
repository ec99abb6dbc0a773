package org.scarfwright.rack;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.text.Normalizer;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.web.ConflictException;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/** The woods as the species table has them, the published ones and the shop's own. */
@Repository
class JdbcSpeciesCatalog implements SpeciesCatalog, OwnWoods {
    private static final String SELECT = """
            select id, common_name, botanical_name, specific_gravity, specific_gravity_basis, mor_12_psi, moe_12_mpsi,
                   side_hardness_12_lbf, shrink_radial_pct, shrink_tangential_pct, shrink_volumetric_pct, bonding_class,
                   mechanical_source, shrinkage_source, bonding_source, entered_by_shop, version
            from species
            """;

    private static final String OWN_PREFIX = "own_";
    private static final int LONGEST_ID = 40;

    /** Room for the number that tells two alike names apart. */
    private static final int LONGEST_STEM = LONGEST_ID - OWN_PREFIX.length() - 4;

    /** Sorted here because the two engines collate names differently. */
    private static final Comparator<Species> BY_NAME = Comparator.comparing(
                    Species::commonName, String.CASE_INSENSITIVE_ORDER)
            .thenComparing(Species::id);

    private final JdbcClient jdbc;

    JdbcSpeciesCatalog(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Species> all() {
        return jdbc.sql(SELECT + "order by id").query(JdbcSpeciesCatalog::species).list().stream()
                .sorted(BY_NAME)
                .toList();
    }

    @Override
    public Optional<Species> find(String id) {
        return jdbc.sql(SELECT + "where id = :id order by id")
                .param("id", id)
                .query(JdbcSpeciesCatalog::species)
                .optional();
    }

    @Override
    public Optional<VersionedWood> wood(String id) {
        return jdbc.sql(SELECT + "where id = :id order by id")
                .param("id", id)
                .query((row, number) -> new VersionedWood(row.getLong("version"), species(row, number)))
                .optional();
    }

    @Override
    @Transactional
    public VersionedWood add(Species wood) {
        String id = freeId(wood.commonName());
        try {
            figures(
                            jdbc.sql("insert into species (id, entered_by_shop, common_name, botanical_name,"
                                    + " specific_gravity, specific_gravity_basis, mor_12_psi, moe_12_mpsi,"
                                    + " side_hardness_12_lbf, shrink_radial_pct, shrink_tangential_pct,"
                                    + " shrink_volumetric_pct, bonding_class, mechanical_source, shrinkage_source,"
                                    + " bonding_source) values (:id, true, :name, :botanical, :gravity, :basis, :mor,"
                                    + " :moe, :hardness, :radial, :tangential, :volumetric, :bonding, :mechanicalSource,"
                                    + " :shrinkageSource, :bondingSource)"),
                            wood)
                    .param("id", id)
                    .update();
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody else added a wood of that name at the same moment.", e);
        }
        return wood(id).orElseThrow();
    }

    @Override
    @Transactional
    public boolean change(long seenVersion, Species wood) {
        try {
            return figures(
                                    jdbc.sql("update species set version = version + 1, common_name = :name,"
                                            + " botanical_name = :botanical, specific_gravity = :gravity,"
                                            + " specific_gravity_basis = :basis, mor_12_psi = :mor, moe_12_mpsi = :moe,"
                                            + " side_hardness_12_lbf = :hardness, shrink_radial_pct = :radial,"
                                            + " shrink_tangential_pct = :tangential,"
                                            + " shrink_volumetric_pct = :volumetric, bonding_class = :bonding,"
                                            + " mechanical_source = :mechanicalSource,"
                                            + " shrinkage_source = :shrinkageSource, bonding_source = :bondingSource"
                                            + " where id = :id and entered_by_shop = true and version = :seen"),
                                    wood)
                            .param("id", wood.id())
                            .param("seen", seenVersion)
                            .update()
                    == 1;
        } catch (DuplicateKeyException e) {
            throw new ConflictException("Somebody else gave a wood that name at the same moment.", e);
        }
    }

    @Override
    @Transactional
    public boolean remove(long seenVersion, String id) {
        int pieces = jdbc.sql("select count(distinct p.id) from piece p left join piece_strip s on s.piece_id = p.id"
                        + " where p.species_id = :id or s.species_id = :id")
                .param("id", id)
                .query(Integer.class)
                .single();
        if (pieces > 0) {
            throw new ConflictException("This wood stays: " + (pieces == 1 ? "a piece" : pieces + " pieces")
                    + " of the rack or its history " + (pieces == 1 ? "is" : "are") + " made of it.");
        }
        try {
            return jdbc.sql("delete from species where id = :id and entered_by_shop = true and version = :seen")
                            .param("id", id)
                            .param("seen", seenVersion)
                            .update()
                    == 1;
        } catch (DataIntegrityViolationException e) {
            throw new ConflictException("This wood stays: a design asks for it. Take it out of the design first.", e);
        }
    }

    /** Made from the letters and digits of the name, and unlike any other. */
    private String freeId(String commonName) {
        String stem = Normalizer.normalize(commonName, Normalizer.Form.NFD)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^a-z0-9]+", "_")
                .replaceAll("^_|_$", "");
        String base = OWN_PREFIX + (stem.isEmpty() ? "wood" : stem.substring(0, Math.min(LONGEST_STEM, stem.length())));
        String id = base;
        for (int count = 2; wood(id).isPresent(); count++) {
            id = base + "_" + count;
        }
        return id;
    }

    private static StatementSpec figures(StatementSpec statement, Species wood) {
        return statement
                .param("name", wood.commonName())
                .param("botanical", wood.botanicalName())
                .param("gravity", wood.specificGravity())
                .param("basis", wood.specificGravityBasis())
                .param("mor", wood.morPsi())
                .param("moe", wood.moeMpsi())
                .param("hardness", wood.sideHardnessLbf())
                .param("radial", wood.shrinkRadialPct())
                .param("tangential", wood.shrinkTangentialPct())
                .param("volumetric", wood.shrinkVolumetricPct())
                .param("bonding", wood.bondingClass())
                .param("mechanicalSource", wood.mechanicalSource())
                .param("shrinkageSource", wood.shrinkageSource())
                .param("bondingSource", wood.bondingSource());
    }

    @SuppressWarnings("UnusedVariable") // the row number is part of the mapper's shape
    private static Species species(ResultSet row, int number) throws SQLException {
        return new Species(
                row.getString("id"),
                row.getString("common_name"),
                row.getString("botanical_name"),
                decimal(row, "specific_gravity"),
                row.getString("specific_gravity_basis"),
                row.getObject("mor_12_psi", Integer.class),
                decimal(row, "moe_12_mpsi"),
                row.getObject("side_hardness_12_lbf", Integer.class),
                decimal(row, "shrink_radial_pct"),
                decimal(row, "shrink_tangential_pct"),
                decimal(row, "shrink_volumetric_pct"),
                row.getString("bonding_class"),
                row.getString("mechanical_source"),
                row.getString("shrinkage_source"),
                row.getString("bonding_source"),
                row.getBoolean("entered_by_shop"));
    }

    private static @Nullable Double decimal(ResultSet row, String column) throws SQLException {
        BigDecimal value = row.getBigDecimal(column);
        return value == null ? null : value.doubleValue();
    }
}
