package org.scarfwright.shop;

import java.util.Map;

/** Implemented by the room that records how long steps really took. */
public interface StepRecords {
    /** By kind of step; a kind of which nobody recorded any minutes is not there. */
    Map<StepKind, LearnedMinutes> learned();
}
