package org.scarfwright.ledger;

import java.math.BigInteger;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An entry exactly as it is stored, every text as text, so that a value nobody could have written is still read and found out.
 */
record StoredEntry(
        long id,
        String kind,
        Instant at,
        String who,
        String why,
        @Nullable Long undoes,
        String prevHash,
        String hash,
        List<StoredAct> acts,
        List<StoredOutcome> outcomes) {

    record StoredAct(
            int position,
            String kind,
            String piece,
            BigInteger before,
            BigInteger after,
            @Nullable Long plan,
            String detail,
            @Nullable String document) {
        void into(EntryHash hash) {
            hash.put("act")
                    .put(position)
                    .put(kind)
                    .put(piece)
                    .put(before)
                    .put(after)
                    .put(plan)
                    .put(detail)
                    .put(document);
        }

        BigInteger change() {
            return after.subtract(before);
        }
    }

    record StoredOutcome(
            int position,
            String kind,
            @Nullable String cause,
            String from,
            @Nullable String to,
            BigInteger volume,
            @Nullable BigInteger planned,
            @Nullable Long cost,
            @Nullable Long plan,
            @Nullable String order,
            @Nullable Integer number,
            @Nullable String design,
            @Nullable String part,
            @Nullable Long length,
            @Nullable Long width,
            @Nullable Long thickness) {
        void into(EntryHash hash) {
            hash.put("outcome")
                    .put(position)
                    .put(kind)
                    .put(cause)
                    .put(from)
                    .put(to)
                    .put(volume)
                    .put(planned)
                    .put(cost)
                    .put(plan)
                    .put(order)
                    .put(number)
                    .put(design)
                    .put(part)
                    .put(length)
                    .put(width)
                    .put(thickness);
        }
    }

    /** The hash of what is stored, whatever hash is stored with it. */
    String reckoned() {
        EntryHash sum = new EntryHash(prevHash)
                .put(id)
                .put(kind)
                .put(at)
                .put(who)
                .put(why)
                .put(undoes);
        acts.forEach(a -> a.into(sum));
        outcomes.forEach(o -> o.into(sum));
        return sum.hex();
    }
}
