package org.scarfwright.matching;

import java.util.List;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Plans, searches and decisions by hand in a shop file. */
@Component
@Order(30)
class MatchingLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("plans", "plan", "id", """
                                id whole
                                version whole
                                week text
                                state text PROPOSED, ACCEPTED or UNDONE
                                status text PROVED, GAP or INFEASIBLE
                                made_at moment
                                filled whole necks
                                ordered whole necks
                                origin_id whole? the plan it comes from
                                origin_kind text? NEAR_EQUAL, LOCKED or REMAINDER
                                document text the plan, in the program’s own form
                                """)
                        .about("Plans, each with its whole document.")
                        .ofLargeRows()
                        .checked("week", IsoWeek::parse)
                        .checked("document", PlanDocument::read),
                ShopList.of("plan_pieces", "plan_piece", "plan_id piece_code", """
                                plan_id whole
                                piece_code text
                                piece_version whole as it was when the plan was made
                                """)
                        .about("The pieces plans cut."),
                ShopList.of("plan_designs", "plan_design", "plan_id design_code", """
                                plan_id whole
                                design_code text
                                design_version whole as it was when the plan was made
                                """)
                        .about("The designs plans make necks of."),
                ShopList.of("plan_necks", "plan_neck", "order_code neck_number", """
                                order_code text
                                neck_number whole
                                plan_id whole
                                """)
                        .about("The necks of accepted plans."),
                ShopList.of("given_up_necks", "given_up_neck", "plan_id order_code neck_number", """
                                plan_id whole
                                order_code text
                                neck_number whole
                                given_up_at moment
                                who text
                                why text
                                """)
                        .about("Necks that accepted plans make no longer."),
                ShopList.of("searches", "match_run", "id", """
                                id whole
                                week text
                                kind text MATCH, NEAR_EQUAL or REMAINDER
                                origin_id whole? the plan it started from
                                state text DONE, STOPPED, FAILED or LOST
                                asked_at moment
                                started_at moment?
                                ended_at moment
                                plan_id whole?
                                message text?
                                """)
                        .about("Searches that have ended. One that waits or runs is not in the file.")
                        .only("state not in ('WAITING', 'RUNNING')")
                        .checked("week", IsoWeek::parse),
                ShopList.of("decisions", "hand", "id", """
                                id whole
                                week text
                                kind text PIN, FORBID, FORBID_PAIR, KEEP, ARRANGE or LEAVE_OUT
                                order_code text?
                                neck_code text?
                                head_code text?
                                arrangement text?
                                angle_mdeg whole?
                                made_at moment
                                """)
                        .about("Decisions by hand.")
                        .checked("week", IsoWeek::parse));
    }
}
