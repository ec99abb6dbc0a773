package org.scarfwright.ledger;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Money;
import org.scarfwright.measure.Volume;

/** What wood came from and what became of it. */
public interface FamilyTree {
    /** A tree with more branches than these is cut off, and says so. */
    int MOST = 400;

    /** The whole tree a piece belongs to, from the first piece that is known; empty when there is no such piece. */
    Optional<Tree> of(String code);

    /**
     * @param lot the lot the first piece came in
     * @param whole false when there are more than {@link #MOST} branches
     */
    record Tree(@Nullable String lot, Branch root, boolean whole) {}

    /** What a branch is. */
    enum Kind {
        PIECE,
        NECK,
        HEAD,
        SPOILT
    }

    /**
     * @param name code of a piece; title of a part
     * @param neck the neck a part belongs to
     * @param state of a piece in words; empty for a part
     * @param volume when it came to be
     * @param cost its share of what it came from; empty when nobody knows
     */
    record Branch(
            Kind kind,
            String name,
            Losses.@Nullable Neck neck,
            String state,
            Length length,
            Length width,
            Volume volume,
            @Nullable Money cost,
            List<Branch> branches) {
        public Branch {
            branches = List.copyOf(branches);
        }

        /** How many ends it has; 1 for an end itself. */
        public int ends() {
            return branches.isEmpty()
                    ? 1
                    : branches.stream().mapToInt(Branch::ends).sum();
        }
    }
}
