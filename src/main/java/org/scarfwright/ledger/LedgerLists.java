package org.scarfwright.ledger;

import java.util.List;
import java.util.Map;
import org.scarfwright.rack.Outcome;
import org.scarfwright.rack.PieceChanged;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** The ledger in a shop file, hashes included, so that its check holds for the shop that reads it. */
@Component
@Order(50)
class LedgerLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("entries", "entry", "id", """
                                id whole without gaps
                                kind text
                                acted_at moment
                                who text
                                why text
                                undoes whole? the entry it takes back
                                prev_hash text SHA-256 of the entry before
                                hash text
                                """)
                        .about("The ledger’s entries.")
                        .checked("kind", PieceChanged.Kind::valueOf),
                ShopList.of("acts", "act", "entry_id position", """
                                entry_id whole
                                position whole
                                kind text
                                piece_code text
                                volume_before_um3 digits
                                volume_after_um3 digits
                                plan_id whole?
                                detail text
                                document text? the piece’s whole state afterwards; empty when it is not there any more
                                """)
                        .about("What entries did to pieces.")
                        .checked("kind", PieceChanged.Kind::valueOf),
                ShopList.of("outcomes", "outcome", "entry_id position", """
                                entry_id whole
                                position whole
                                kind text PART, REST, WASTE, UNEXPLAINED or SOLD
                                cause text? of waste
                                from_piece text
                                to_piece text?
                                volume_um3 digits
                                planned_um3 digits?
                                cost_cents whole?
                                plan_id whole?
                                order_code text?
                                neck_number whole?
                                design_code text?
                                part text? NECK or HEAD
                                length_um whole?
                                width_um whole?
                                thickness_um whole?
                                """)
                        .about("What became of wood that entries took.")
                        .checked("kind", Outcome.Kind::valueOf)
                        .checked("cause", Outcome.Cause::valueOf),
                ShopList.of("ledger_end", "ledger_head", "id", """
                                id whole
                                entry_id whole
                                hash text
                                """)
                        .about("The end of the chain, one line.")
                        .inPlaceOfTheFirst()
                        .atLeast(1),
                ShopList.of("balances", "balance_line", "kind", """
                                kind text
                                acts whole
                                in_um3 digits
                                out_um3 digits
                                """)
                        .about("Sums of all acts by kind.")
                        .checked("kind", PieceChanged.Kind::valueOf));
    }

    @Override
    public Map<String, String> leftOut() {
        String addedUp = "added up anew from the outcomes by the shop that reads the file";
        return Map.of(
                "act_before_entries",
                "empty once the program has started: its acts are carried into the ledger",
                "yield_sum",
                addedUp,
                "yield_row",
                addedUp,
                "yield_wood",
                addedUp,
                "yield_neck",
                addedUp,
                "yield_cut",
                addedUp,
                "yield_kept",
                addedUp);
    }
}
