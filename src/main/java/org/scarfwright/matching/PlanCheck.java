package org.scarfwright.matching;

import java.time.LocalDate;
import java.util.List;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.rack.Piece;
import org.scarfwright.shop.Saw;
import org.scarfwright.shop.ShopSettings;

/** A second opinion on a plan before it is saved. It shares no formula with the search. */
interface PlanCheck {
    /** What is wrong with the plan, one sentence each; empty when nothing is. */
    List<String> faults(Plan plan, Facts facts);

    /**
     * What the plan was made from.
     *
     * @param pieces the rack as the search saw it
     * @param orders orders of the plan's week
     * @param today decides whether a lot is ready
     * @param hands what people decided and no accepted plan has made true yet
     */
    record Facts(
            List<Piece> pieces,
            List<NeckDesign> designs,
            List<NeckOrder> orders,
            ShopSettings settings,
            List<Saw> saws,
            LocalDate today,
            List<Hand> hands) {
        /** Nobody decided anything. */
        Facts(
                List<Piece> pieces,
                List<NeckDesign> designs,
                List<NeckOrder> orders,
                ShopSettings settings,
                List<Saw> saws,
                LocalDate today) {
            this(pieces, designs, orders, settings, saws, today, List.of());
        }
    }
}
