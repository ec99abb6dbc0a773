package org.scarfwright.matching;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;

/**
 * Why a piece is not cut for an order: one answer for each part in each way the order may be made.
 *
 * @param order code of the order
 * @param piece code of the piece
 */
public record WhyNot(String order, String piece, List<Answer> answers) {
    public WhyNot {
        answers = List.copyOf(answers);
    }

    /**
     * What the rules and the plan say.
     *
     * @param part neck or head
     * @param rule name of the first rule that refuses; empty when it fits
     * @param shortBy by how much, when that rule is about a length
     * @param text the answer as a sentence
     */
    public record Answer(
            String part,
            Arrangement arrangement,
            Angle angle,
            @Nullable String rule,
            @Nullable Length shortBy,
            String text) {}
}
