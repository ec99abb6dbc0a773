package org.scarfwright.web;

import java.util.ArrayList;
import java.util.List;

/**
 * Where one figure on a page comes from.
 *
 * @param anchor names it in addresses, such as joint-glue-face; unique in the program
 * @param what the figure, as pages call it
 * @param formula with the symbols of its section
 * @param source author, title and table or equation; or derived here, common practice, from memory
 * @param classes that compute it, as package and name below the base package: joint.ScarfJoint
 * @param proofs tests that fail when it is computed wrong
 */
public record ScienceRow(
        String anchor, String what, String formula, String source, List<String> classes, List<Proof> proofs) {
    public ScienceRow {
        classes = List.copyOf(classes);
        proofs = List.copyOf(proofs);
    }

    /**
     * One test.
     *
     * @param test its class, as package and name below the base package: joint.BevelTest
     * @param how what it is compared with; empty when the test's name says it
     */
    public record Proof(String test, String how) {
        public String shownTest() {
            return simple(test);
        }
    }

    /** A row that still wants its classes and tests. */
    public static ScienceRow of(String anchor, String what, String formula, String source) {
        return new ScienceRow(anchor, what, formula, source, List.of(), List.of());
    }

    public ScienceRow in(String... computedBy) {
        return new ScienceRow(anchor, what, formula, source, List.of(computedBy), proofs);
    }

    public ScienceRow provedBy(String test, String how) {
        List<Proof> more = new ArrayList<>(proofs);
        more.add(new Proof(test, how));
        return new ScienceRow(anchor, what, formula, source, classes, more);
    }

    /** Names without their packages. */
    public List<String> shownClasses() {
        return classes.stream().map(ScienceRow::simple).toList();
    }

    private static String simple(String name) {
        return name.substring(name.lastIndexOf('.') + 1);
    }
}
