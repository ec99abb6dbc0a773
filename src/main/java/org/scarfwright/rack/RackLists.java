package org.scarfwright.rack;

import java.util.List;
import java.util.Map;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** The rack in a shop file. */
@Component
@Order(10)
class RackLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("own_woods", "species", "id", """
                                id text
                                version whole
                                entered_by_shop yes always true
                                common_name text
                                botanical_name text
                                specific_gravity decimal?
                                specific_gravity_basis text? 12 % MC volume, or green volume
                                mor_12_psi whole? bending strength at 12 % moisture
                                moe_12_mpsi decimal? stiffness at 12 % moisture
                                side_hardness_12_lbf whole?
                                shrink_radial_pct decimal?
                                shrink_tangential_pct decimal?
                                shrink_volumetric_pct decimal?
                                bonding_class text? easily, well, satisfactorily or with difficulty
                                mechanical_source text
                                shrinkage_source text
                                bonding_source text?
                                """)
                        .about("Woods the shop entered itself. Published woods come with the program.")
                        .only("entered_by_shop = true"),
                ShopList.of("places", "place", "id", """
                                id whole
                                name_key text the name as places are told apart
                                name text
                                """).about("Places wood lies in."),
                ShopList.of("lots", "lot", "id", """
                                id whole
                                code_key text the code as lots are told apart
                                code text
                                ready_on day?
                                """).about("Lots."),
                ShopList.of("pieces", "piece", "id", """
                                id whole
                                version whole
                                code text
                                code_order text the code spelled in digits and capitals alone, for sorting
                                import_key text? what a row of a rack file without a code is known by
                                state text ON_RACK, RESERVED, AT_BENCH, USED_UP, SCRAPPED or SOLD
                                species_id text? empty for a lamination
                                length_um whole
                                length_typed text as a person entered it
                                width_um whole
                                width_typed text
                                thickness_um whole
                                thickness_typed text
                                grain text FLAT, RIFT, QUARTER or UNKNOWN
                                grain_slope whole? 1 in so many
                                trim_left_um whole
                                trim_right_um whole
                                mc_hundredths whole? hundredths of a percent
                                mc_read_on day?
                                mc_meter text? PIN, PINLESS, OVEN or UNKNOWN
                                bow_um whole
                                crook_um whole
                                cup_um whole
                                twist_um whole
                                warp_read_on day? empty when nobody measured
                                middle_bow_um whole? of the second reading, over the middle half
                                middle_crook_um whole?
                                middle_twist_um whole?
                                set_aside yes
                                neck_allowed yes
                                lot_id whole?
                                place_id whole?
                                cost_cents whole?
                                note text
                                since day
                                """).about("Every piece that is or was on the rack."),
                ShopList.of("strips", "piece_strip", "piece_id position", """
                                piece_id whole
                                position whole from the near edge, 1 first
                                species_id text
                                width_um whole
                                grain text
                                """).about("The strips of laminations."),
                ShopList.of("defects", "piece_defect", "piece_id position", """
                                piece_id whole
                                position whole
                                kind text KNOT, CHECK, PITH, STAIN, SCREW_HOLE or OTHER
                                from_length_um whole
                                to_length_um whole
                                from_width_um whole
                                to_width_um whole
                                structural yes
                                """).about("Defects of pieces."),
                ShopList.of("warp_readings", "warp_reading", "id", """
                                id whole
                                piece_id whole
                                bow_um whole
                                crook_um whole
                                cup_um whole
                                twist_um whole
                                middle_bow_um whole?
                                middle_crook_um whole?
                                middle_twist_um whole?
                                read_on day
                                """).about("Every reading of warp there ever was."),
                ShopList.of("moisture_readings", "moisture_reading", "id", """
                                id whole
                                piece_id whole
                                mc_hundredths whole
                                meter text
                                read_on day
                                """)
                        .about("Every reading of moisture there ever was."),
                ShopList.of("reservations", "reservation", "piece_id", """
                                piece_id whole
                                plan_id whole
                                reserved_at moment
                                """).about("Which plan holds which piece."));
    }

    @Override
    public Map<String, String> leftOut() {
        String judged = "whether a piece fits some design is judged anew when somebody asks";
        return Map.of("piece.fits_key", judged, "piece.fits_neck", judged, "piece.fits_head", judged);
    }
}
