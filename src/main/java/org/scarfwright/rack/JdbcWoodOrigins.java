package org.scarfwright.rack;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class JdbcWoodOrigins implements WoodOrigins {
    private static final int AT_ONCE = 1000;

    private final JdbcClient jdbc;

    JdbcWoodOrigins(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Map<String, Origin> of(Collection<String> codes) {
        List<String> all = List.copyOf(new TreeSet<>(codes));
        Map<String, Origin> found = new HashMap<>();
        for (int i = 0; i < all.size(); i += AT_ONCE) {
            List<String> some = all.subList(i, Math.min(all.size(), i + AT_ONCE));
            Map<String, List<String>> ids = new HashMap<>();
            Map<String, List<String>> names = new HashMap<>();
            jdbc.sql(
                            "select p.code, s.id, s.common_name from piece p join piece_strip t on t.piece_id = p.id"
                                    + " join species s on s.id = t.species_id where p.code in (:codes) order by p.code, t.position")
                    .param("codes", some)
                    .query(rs -> {
                        ids.computeIfAbsent(rs.getString("code"), c -> new ArrayList<>())
                                .add(rs.getString("id"));
                        names.computeIfAbsent(rs.getString("code"), c -> new ArrayList<>())
                                .add(rs.getString("common_name"));
                    });
            jdbc.sql("select p.code, s.id, s.common_name, l.code as lot_code from piece p"
                            + " left join species s on s.id = p.species_id left join lot l on l.id = p.lot_id"
                            + " where p.code in (:codes) order by p.code")
                    .param("codes", some)
                    .query(rs -> {
                        String code = rs.getString("code");
                        @Nullable String id = rs.getString("id");
                        found.put(
                                code,
                                new Origin(
                                        id == null ? String.join("/", ids.getOrDefault(code, List.of())) : id,
                                        id == null
                                                ? String.join(" / ", names.getOrDefault(code, List.of()))
                                                : rs.getString("common_name"),
                                        rs.getString("lot_code")));
                    });
        }
        return found;
    }

    @Override
    public Map<String, String> names(Collection<String> woodKeys) {
        Map<String, String> species = new HashMap<>();
        jdbc.sql("select id, common_name from species order by id").query(rs -> {
            species.put(rs.getString("id"), rs.getString("common_name"));
        });
        Map<String, String> names = new HashMap<>();
        for (String key : woodKeys) {
            List<String> one = new ArrayList<>();
            for (String id : key.split("/", -1)) {
                one.add(species.getOrDefault(id, id));
            }
            names.put(key, String.join(" / ", one));
        }
        return names;
    }
}
