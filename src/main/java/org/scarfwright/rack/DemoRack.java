package org.scarfwright.rack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.scarfwright.shop.DemoShopRequested;
import org.scarfwright.web.InvalidInputException;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Puts the demo shop's pieces on the rack, the way a person would: from a rack file. */
@Component
class DemoRack {
    private static final int ORDER = 10;

    private final RackImport rackImport;

    DemoRack(RackImport rackImport) {
        this.rackImport = rackImport;
    }

    @EventListener
    @Order(ORDER)
    @Transactional
    void load(DemoShopRequested request) {
        ImportResult result = rackImport.save(file());
        if (!result.errors().isEmpty()) {
            throw new InvalidInputException(result.errors());
        }
    }

    private static byte[] file() {
        try (InputStream in = new ClassPathResource("demo-data/rack.csv").getInputStream()) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
