package org.scarfwright.shop;

import java.util.List;
import java.util.Map;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** What a shop works with and by. */
@Component
@Order(0)
class ShopsOwnLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("beginning", "shop_start", "id", """
                                id whole
                                state text NOT_STARTED, EMPTY or DEMO
                                started_at moment?
                                """)
                        .about("How the shop began.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("rules", "shop_settings", "id", """
                                id whole
                                version whole
                                length_unit text MM, CM or INCH
                                currency text
                                planing_per_face_um whole
                                edge_allowance_um whole
                                neck_straightness_um whole
                                shortest_machined_um whole
                                usable_rest_length_um whole
                                usable_rest_width_um whole
                                neck_grain_slope whole 1 in so many
                                driest_mc_hundredths whole hundredths of a percent
                                wettest_mc_hundredths whole
                                moisture_apart_hundredths whole hundredths of a point
                                search_seconds whole
                                search_memory_mb whole
                                """)
                        .about("The shop’s rules, one line.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("saws", "saw", "code", """
                                code text
                                version whole
                                preference whole 1 is preferred
                                name text
                                kind text MITRE, BAND, TABLE or HAND
                                kerf_um whole
                                depth_um whole
                                reach_um whole
                                shallowest_mdeg whole thousandths of a degree
                                steepest_mdeg whole
                                truing_um whole
                                scale_mdeg whole least difference that can be read
                                """)
                        .about("The shop’s saws.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("glues", "glue", "code", """
                                code text
                                version whole
                                name text
                                clamp_minutes whole
                                cure_minutes whole from gluing, clamp time included
                                lowest_celsius_tenths whole
                                open_minutes whole
                                common_practice yes the figures came with the program and nobody changed them
                                """)
                        .about("Kinds of glue.")
                        .inPlaceOfTheFirst(),
                ShopList.of("workshop", "workshop", "id", """
                                id whole
                                version whole
                                hands whole
                                people text
                                clamp_sets whole
                                celsius_tenths whole
                                glue_code text?
                                set_up_minutes whole
                                """)
                        .about("What the week is laid with, one line.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("step_minutes", "step_minutes", "kind", """
                                kind text FLATTEN, CUT, TRUE, FIT, GLUE, UNCLAMP or SQUARE_UP
                                minutes whole hands-on
                                learns yes whether recorded minutes are used once there are enough
                                """)
                        .about("Minutes for each kind of work step.")
                        .inPlaceOfTheFirst()
                        .atLeast(7),
                ShopList.of("hours", "opening", "weekday from_minute", """
                                weekday whole Monday is 1
                                from_minute whole minutes after midnight
                                to_minute whole
                                """)
                        .about("Shop hours, a line for each stretch.")
                        .inPlaceOfTheFirst(),
                ShopList.of("days_off", "day_off", "closed_on", """
                                closed_on day
                                word text
                                """)
                        .about("Days the shop is closed.")
                        .inPlaceOfTheFirst(),
                ShopList.of("air", "shop_air", "id", """
                                id whole
                                version whole
                                now_celsius_tenths whole?
                                now_rh_tenths whole? tenths of a percent of relative humidity
                                now_read_on day?
                                dry_celsius_tenths whole
                                dry_rh_tenths whole
                                damp_celsius_tenths whole
                                damp_rh_tenths whole
                                """)
                        .about("The shop’s air, one line.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("label_sheets", "label_sheet", "code", """
                                code text
                                version whole
                                name text
                                paper text A4, LETTER or SINGLE
                                across whole labels beside each other
                                down whole labels below each other
                                left_um whole
                                top_um whole
                                pitch_across_um whole
                                pitch_down_um whole
                                width_um whole
                                height_um whole
                                """)
                        .about("Label sheets.")
                        .inPlaceOfTheFirst());
    }

    @Override
    public Map<String, String> leftOut() {
        return Map.of(
                "flyway_schema_history", "says how far this database is, not what the shop has",
                "repeated_request", "answers kept for a week for programs that send an act twice; no part of the shop",
                "shop_file_read", "says which file this shop was read from");
    }
}
