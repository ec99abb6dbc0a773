package org.scarfwright.matching;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scarfwright.measure.Length;

/** What one piece must give for one part. Asked often: {@link #fits} does no more than it must, {@link #why} tells. */
sealed interface PartRule
        permits FreeRule,
                LotReadyRule,
                WoodRule,
                MoistureRangeRule,
                SetAsideRule,
                GrainSlopeRule,
                SawRule,
                LengthRule,
                DefectRule,
                WidthRule,
                StraightnessRule,
                ThicknessRule,
                ShortestMachinedRule {

    /** As the API and the pages call it. */
    String name();

    boolean fits(Trial trial);

    /** Why it does not fit; only asked where {@link #fits} is false. */
    Verdict.Refused why(Trial trial);

    /**
     * By how much it does not fit, when the rule is about a length; only asked where {@link #fits} is false. The same as
     * {@link #why} says, without its sentence, because a huge rack is asked piece by piece.
     */
    default @Nullable Length shortBy(Trial trial) {
        return null;
    }

    /** What a person should know although it fits, as a sentence. */
    default Optional<String> note(Trial trial) {
        return Optional.empty();
    }

    default Verdict judge(Trial trial) {
        return fits(trial) ? new Verdict.Fits(note(trial).orElse(null)) : why(trial);
    }
}
