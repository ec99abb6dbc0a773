package org.scarfwright.matching.search;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LinearProgramTest {
    /** 1 <= x + 2y <= 3 with x whole in 0..2 and y in 0..1. */
    private static LinearProgram program() {
        LinearProgram p = new LinearProgram();
        int x = p.addColumn(0, 2, 0, true);
        int y = p.addColumn(0, 1, 0, false);
        int row = p.addRow(1, 3);
        p.put(row, x, 1);
        p.put(row, y, 2);
        return p;
    }

    @Test
    void holdsForValuesInsideEveryBound() {
        assertThat(program().holds(new double[] {2, 0.5}, 1e-6)).isTrue();
        assertThat(program().holds(new double[] {1, 0}, 1e-6)).isTrue();
    }

    @Test
    void doesNotHoldWhereARowIsBroken() {
        assertThat(program().holds(new double[] {2, 0.6}, 1e-6)).isFalse();
        assertThat(program().holds(new double[] {0, 0.4}, 1e-6)).isFalse();
    }

    @Test
    void doesNotHoldOutsideAColumnsBounds() {
        assertThat(program().holds(new double[] {-1, 1}, 1e-6)).isFalse();
        assertThat(program().holds(new double[] {1, 1.1}, 1e-6)).isFalse();
    }

    @Test
    void roundsWholeColumnsBeforeItLooks() {
        assertThat(program().holds(new double[] {0.6, 0}, 1e-6)).isTrue();
        assertThat(program().holds(new double[] {0.4, 0}, 1e-6)).isFalse();
    }
}
