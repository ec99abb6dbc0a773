package org.scarfwright.rack;

import java.util.Map;
import org.scarfwright.shop.ShopContents;
import org.springframework.stereotype.Component;

@Component
class RackContents implements ShopContents {
    private final PieceTable table;

    RackContents(PieceTable table) {
        this.table = table;
    }

    @Override
    public boolean isEmpty() {
        return table.count(new PieceTable.Where("1 = 1", Map.of())) == 0;
    }
}
