package org.scarfwright.shop;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopAir.Air;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

@Repository
class JdbcShopAir implements ShopAirBook {
    private final JdbcClient jdbc;

    JdbcShopAir(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    @Transactional(readOnly = true)
    public VersionedAir air() {
        return jdbc.sql("select version, now_celsius_tenths, now_rh_tenths, now_read_on, dry_celsius_tenths,"
                        + " dry_rh_tenths, damp_celsius_tenths, damp_rh_tenths from shop_air where id = 1")
                .query((row, n) -> airOf(row))
                .single();
    }

    @Override
    @Transactional
    public boolean change(long seenVersion, ShopAir air) {
        Air now = air.now();
        return jdbc.sql("update shop_air set version = version + 1, now_celsius_tenths = :nowCelsius,"
                                + " now_rh_tenths = :nowHumidity, now_read_on = :readOn,"
                                + " dry_celsius_tenths = :dryCelsius, dry_rh_tenths = :dryHumidity,"
                                + " damp_celsius_tenths = :dampCelsius, damp_rh_tenths = :dampHumidity"
                                + " where id = 1 and version = :seen")
                        .param("nowCelsius", now == null ? null : tenths(now.celsius()))
                        .param("nowHumidity", now == null ? null : tenths(now.humidity()))
                        .param("readOn", now == null ? null : air.readOn())
                        .param("dryCelsius", tenths(air.driest().celsius()))
                        .param("dryHumidity", tenths(air.driest().humidity()))
                        .param("dampCelsius", tenths(air.dampest().celsius()))
                        .param("dampHumidity", tenths(air.dampest().humidity()))
                        .param("seen", seenVersion)
                        .update()
                == 1;
    }

    private static VersionedAir airOf(ResultSet row) throws SQLException {
        Integer nowCelsius = row.getObject("now_celsius_tenths", Integer.class);
        @Nullable
        Air now = nowCelsius == null ? null : new Air(decimal(nowCelsius), decimal(row.getInt("now_rh_tenths")));
        return new VersionedAir(
                row.getLong("version"),
                new ShopAir(
                        now,
                        row.getObject("now_read_on", LocalDate.class),
                        new Air(decimal(row.getInt("dry_celsius_tenths")), decimal(row.getInt("dry_rh_tenths"))),
                        new Air(decimal(row.getInt("damp_celsius_tenths")), decimal(row.getInt("damp_rh_tenths")))));
    }

    private static int tenths(BigDecimal value) {
        return value.movePointRight(1).setScale(0, RoundingMode.HALF_UP).intValueExact();
    }

    private static BigDecimal decimal(int tenths) {
        return BigDecimal.valueOf(tenths, 1);
    }
}
