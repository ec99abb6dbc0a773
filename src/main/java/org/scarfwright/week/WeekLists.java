package org.scarfwright.week;

import java.util.List;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** The work in a shop file. */
@Component
@Order(40)
class WeekLists implements ShopLists {
    @Override
    public List<ShopList> lists() {
        return List.of(
                ShopList.of("design_glues", "design_glue", "design_code", """
                                design_code text
                                glue_code text
                                """)
                        .about("The glue of designs that are not glued with the shop’s own choice."),
                ShopList.of("work_steps", "work_step", "id", """
                                id whole
                                version whole
                                plan_id whole
                                week text
                                order_code text
                                neck_number whole
                                place whole order of a neck’s steps
                                kind text FLATTEN, CUT, TRUE, FIT, GLUE, UNCLAMP or SQUARE_UP
                                part text NECK, HEAD or BOTH
                                piece_code text?
                                machine text?
                                set_up text?
                                minutes whole hands-on
                                state text OPEN, STARTED, DONE or STOPPED
                                planned_start moment?
                                planned_end moment?
                                pinned_day day?
                                started_at moment?
                                done_at moment?
                                who text?
                                done_minutes whole?
                                clamped_until moment?
                                cured_at moment?
                                reason text?
                                """)
                        .about("Every step of every neck of accepted plans.")
                        .checked("week", IsoWeek::parse),
                ShopList.of("schedule", "laying", "id", """
                                id whole
                                week text
                                made_at moment
                                engine text
                                seconds_thousandths whole
                                note text
                                late whole
                                late_bound whole
                                set_ups whole
                                set_ups_bound whole
                                days whole
                                days_bound whole
                                """)
                        .about("The schedule that holds, one line.")
                        .checked("week", IsoWeek::parse),
                ShopList.of("schedule_set_ups", "laid_set_up", "machine starts", """
                                machine text
                                starts moment
                                name text
                                ready moment
                                ends moment
                                """)
                        .about("Set-ups of the schedule."),
                ShopList.of("schedule_remarks", "laid_remark", "order_code neck_number kind", """
                                order_code text
                                neck_number whole
                                kind text LATE, LEFT_OUT or NOTE
                                sentence text
                                """)
                        .about("What the schedule says of necks."));
    }
}
