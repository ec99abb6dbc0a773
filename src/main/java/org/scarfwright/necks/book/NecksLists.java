package org.scarfwright.necks.book;

import java.util.List;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Designs and orders in a shop file. */
@Component
@Order(20)
class NecksLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("designs", "neck_design", "id", """
                                id whole
                                version whole
                                code text
                                name text
                                neck_length_um whole
                                neck_length_typed text as a person entered it
                                nut_width_um whole
                                nut_width_typed text
                                heel_width_um whole
                                heel_width_typed text
                                neck_thickness_um whole
                                neck_thickness_typed text
                                head_length_um whole
                                head_length_typed text
                                head_width_um whole
                                head_width_typed text
                                head_thickness_um whole
                                head_thickness_typed text
                                finish text CLEAR, OPAQUE or VENEERED
                                match_rule text ANY, SAME_WOOD, SAME_LOT or SAME_PIECE
                                lines_meet yes
                                wings_allowed yes
                                end_allowance_um whole
                                end_allowance_typed text
                                side_allowance_um whole
                                side_allowance_typed text
                                """).about("Neck designs."),
                ShopList.of("design_angles", "neck_design_angle", "design_id angle_mdeg", """
                                design_id whole
                                angle_mdeg whole thousandths of a degree
                                """)
                        .about("The angles a design allows."),
                ShopList.of("design_arrangements", "neck_design_arrangement", "design_id arrangement", """
                                design_id whole
                                arrangement text UNDERLAID or OVERLAID
                                """)
                        .about("The arrangements a design allows."),
                ShopList.of("design_woods", "neck_design_wood", "design_id part position", """
                                design_id whole
                                part text NECK or HEAD
                                position whole
                                species_id text
                                """)
                        .about("The woods a design allows; none for a part means any."),
                ShopList.of("orders", "neck_order", "id", """
                                id whole
                                version whole
                                code text
                                design_id whole
                                quantity whole
                                due_day day
                                priority whole 9 must be filled
                                iso_week text such as 2026-W49
                                customer_note text
                                cancelled yes
                                """)
                        .about("Orders, those called off as well.")
                        .checked("iso_week", IsoWeek::parse));
    }
}
