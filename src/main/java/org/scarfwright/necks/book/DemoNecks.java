package org.scarfwright.necks.book;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.scarfwright.shop.DemoShopRequested;
import org.scarfwright.web.CsvTable;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The demo shop's designs and orders, read from their files like anybody's. */
@Component
class DemoNecks {
    private final DesignBook designs;
    private final OrderBook orders;

    DemoNecks(DesignBook designs, OrderBook orders) {
        this.designs = designs;
        this.orders = orders;
    }

    @EventListener
    @Order(20)
    @Transactional
    void load(DemoShopRequested request) {
        designs.add(NeckFiles.designs(
                CsvTable.read(bytes("demo-data/designs.csv"), NeckFiles.designColumns(), NeckFiles.LIMITS)));
        orders.add(NeckFiles.orders(
                CsvTable.read(bytes("demo-data/orders.csv"), NeckFiles.orderColumns(), NeckFiles.LIMITS)));
    }

    private static byte[] bytes(String path) {
        try (InputStream in = new ClassPathResource(path).getInputStream()) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
