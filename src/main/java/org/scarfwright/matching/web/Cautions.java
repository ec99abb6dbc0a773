package org.scarfwright.matching.web;

import org.scarfwright.wood.Caution;
import org.springframework.stereotype.Component;

/** Cautions as the plan's templates print them. */
@Component("cautions")
class Cautions {
    public Caution atTheSaw() {
        return Caution.AT_THE_SAW;
    }
}
