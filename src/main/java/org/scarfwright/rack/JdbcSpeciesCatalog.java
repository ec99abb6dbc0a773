package org.scarfwright.rack;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.wood.Species;
import org.scarfwright.wood.SpeciesCatalog;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The woods as the species table has them. */
@Repository
class JdbcSpeciesCatalog implements SpeciesCatalog {
    private static final String SELECT = """
            select id, common_name, botanical_name, specific_gravity, specific_gravity_basis, mor_12_psi, moe_12_mpsi,
                   side_hardness_12_lbf, shrink_radial_pct, shrink_tangential_pct, shrink_volumetric_pct, bonding_class,
                   mechanical_source, shrinkage_source, bonding_source
            from species
            """;

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
                row.getString("bonding_source"));
    }

    private static @Nullable Double decimal(ResultSet row, String column) throws SQLException {
        BigDecimal value = row.getBigDecimal(column);
        return value == null ? null : value.doubleValue();
    }
}
