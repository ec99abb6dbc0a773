package org.scarfwright.week.schedule;

import java.util.Arrays;
import java.util.List;
import org.scarfwright.week.schedule.Schedule.Measure;
import org.scarfwright.week.schedule.ScheduleProblem.After;
import org.scarfwright.week.schedule.ScheduleProblem.Hold;
import org.scarfwright.week.schedule.Slots.Open;
import org.scarfwright.week.schedule.Slots.Range;

/**
 * What no schedule can beat, without searching: each work as early as the works before it allow when nothing else is in the
 * way, each set-up once, all hands-on work in the first hours people have, and what is held shared out evenly.
 */
final class Bounds {
    private final Slots slots;
    private final int[] earliestEnd;

    Bounds(Slots slots) {
        this.slots = slots;
        earliestEnd = new int[slots.problem.works().size()];
        for (int w = 0; w < earliestEnd.length; w++) {
            int from = 0;
            for (After a : slots.problem.works().get(w).after()) {
                from = Math.max(from, earliestEnd[a.work()] + slots.atLeast(a));
            }
            earliestEnd[w] = first(slots.starts(w), from) + slots.size(w);
        }
    }

    private int first(List<Range> starts, int from) {
        for (Range r : starts) {
            if (r.last() >= from) {
                return Math.max(r.first(), from);
            }
        }
        return slots.end;
    }

    int earliestEnd(int work) {
        return earliestEnd[work];
    }

    long of(Measure measure) {
        return switch (measure) {
            case LATE -> late();
            case SET_UPS -> slots.setUps().size();
            case DAYS -> days();
        };
    }

    private long late() {
        long sum = 0;
        for (int g = 0; g < slots.problem.goals().size(); g++) {
            ScheduleProblem.Goal goal = slots.problem.goals().get(g);
            sum += earliestEnd[goal.work()] > slots.due(g) ? goal.weight() : 0;
        }
        return sum;
    }

    private long days() {
        int latest = 1;
        long handsOn = 0;
        for (int w = 0; w < earliestEnd.length; w++) {
            latest = Math.max(latest, dayOf(earliestEnd[w]));
            handsOn += slots.size(w);
        }
        for (Open o : slots.open) {
            handsOn -= (long) (o.to() - o.from()) * o.people();
            if (handsOn <= 0) {
                latest = Math.max(latest, o.day() + 1);
                break;
            }
        }
        for (int r = 0; r < slots.problem.resources().size(); r++) {
            latest = Math.max(latest, heldDays(r));
        }
        return latest;
    }

    /** Days, the first counted as one, when something ends in this slot. */
    private int dayOf(int end) {
        return slots.open.stream()
                .filter(o -> o.from() < end && end <= o.to())
                .findFirst()
                .map(o -> o.day() + 1)
                .orElse(slots.days.size());
    }

    /**
     * One of the resource takes one hold after another. None starts before the first can, none is shorter than the shortest, and
     * all ends lie in shop hours; the one that takes most takes at least the holds shared out evenly.
     */
    private int heldDays(int resource) {
        List<Hold> holds = slots.problem.holds().stream()
                .filter(h -> h.resource() == resource && h.first().isPresent())
                .toList();
        if (holds.isEmpty()) {
            return 1;
        }
        int from = slots.end;
        int length = slots.end;
        int firstSize = slots.end;
        int lastSize = slots.end;
        for (Hold h : holds) {
            int first = h.first().orElseThrow();
            from = Math.min(from, earliestEnd[first] - slots.size(first));
            firstSize = Math.min(firstSize, slots.size(first));
            lastSize = Math.min(lastSize, slots.size(h.last()));
            length = Math.min(length, shortest(h));
        }
        int rounds = -Math.floorDiv(
                -holds.size(), slots.problem.resources().get(resource).count());
        int end = from;
        for (int i = 0; i < rounds; i++) {
            int start = inHours(end, firstSize);
            end = inHours(start + length - lastSize, lastSize) + lastSize;
        }
        return dayOf(end);
    }

    /** Least slots from the start of a hold's first work to the end of its last, by the waits between them alone. */
    private int shortest(Hold h) {
        int first = h.first().orElseThrow();
        int[] after = new int[h.last() + 1];
        Arrays.fill(after, Integer.MIN_VALUE);
        after[first] = slots.size(first);
        for (int w = first + 1; w <= h.last(); w++) {
            for (After a : slots.problem.works().get(w).after()) {
                if (a.work() >= first && after[a.work()] != Integer.MIN_VALUE) {
                    after[w] = Math.max(after[w], after[a.work()] + slots.atLeast(a) + slots.size(w));
                }
            }
        }
        return after[h.last()] == Integer.MIN_VALUE ? slots.size(h.last()) : after[h.last()];
    }

    private int inHours(int from, int size) {
        for (Open o : slots.open) {
            if (Math.max(o.from(), from) + size <= o.to()) {
                return Math.max(o.from(), from);
            }
        }
        return slots.end;
    }
}
