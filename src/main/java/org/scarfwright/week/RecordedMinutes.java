package org.scarfwright.week;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.scarfwright.shop.LearnedMinutes;
import org.scarfwright.shop.StepKind;
import org.scarfwright.shop.StepRecords;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** What was recorded at the bench: of a step that is done, the minutes a person noted. What was taken back does not count. */
@Component
class RecordedMinutes implements StepRecords {
    private final JdbcWork rows;

    RecordedMinutes(JdbcWork rows) {
        this.rows = rows;
    }

    @Override
    @Transactional(readOnly = true)
    public Map<StepKind, LearnedMinutes> learned() {
        Map<StepKind, LearnedMinutes> learned = new EnumMap<>(StepKind.class);
        for (StepKind kind : StepKind.values()) {
            List<Integer> minutes = rows.recorded(kind, LearnedMinutes.LAST);
            if (!minutes.isEmpty()) {
                learned.put(kind, LearnedMinutes.of(minutes));
            }
        }
        return learned;
    }
}
