package planted.visible;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Rows for everybody. */
public class PublicRows {
    private final JdbcClient jdbc;

    public PublicRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Integer> all() {
        return jdbc.sql("select 1").query(Integer.class).list();
    }
}
