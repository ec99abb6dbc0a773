package org.scarfwright.matching.search;

import java.util.Arrays;

/**
 * A linear program with bounds on columns and rows, some columns whole numbers, always minimised. Plain arrays, so that only
 * {@link NativeSolver} knows which library solves it. All figures put in by the search are whole numbers below 2^53.
 */
final class LinearProgram {
    private int columns;
    private double[] columnLow = new double[64];
    private double[] columnHigh = new double[64];
    private double[] cost = new double[64];
    private boolean[] whole = new boolean[64];

    private int rows;
    private double[] rowLow = new double[64];
    private double[] rowHigh = new double[64];

    private int entries;
    private int[] entryRow = new int[256];
    private int[] entryColumn = new int[256];
    private double[] entryValue = new double[256];

    int addColumn(double low, double high, long columnCost, boolean isWhole) {
        if (columns == cost.length) {
            int size = columns * 2;
            columnLow = Arrays.copyOf(columnLow, size);
            columnHigh = Arrays.copyOf(columnHigh, size);
            cost = Arrays.copyOf(cost, size);
            whole = Arrays.copyOf(whole, size);
        }
        columnLow[columns] = low;
        columnHigh[columns] = high;
        cost[columns] = (double) columnCost;
        whole[columns] = isWhole;
        return columns++;
    }

    int addRow(double low, double high) {
        if (rows == rowLow.length) {
            rowLow = Arrays.copyOf(rowLow, rows * 2);
            rowHigh = Arrays.copyOf(rowHigh, rows * 2);
        }
        rowLow[rows] = low;
        rowHigh[rows] = high;
        return rows++;
    }

    /** Sets one coefficient; each (row, column) at most once. */
    void put(int row, int column, long value) {
        if (entries == entryRow.length) {
            int size = entries * 2;
            entryRow = Arrays.copyOf(entryRow, size);
            entryColumn = Arrays.copyOf(entryColumn, size);
            entryValue = Arrays.copyOf(entryValue, size);
        }
        entryRow[entries] = row;
        entryColumn[entries] = column;
        entryValue[entries] = (double) value;
        entries++;
    }

    /**
     * Whether values keep every bound and row, once those of whole columns are rounded to the nearest whole number.
     *
     * @param tolerance by which a row may be missed; where all columns are whole nothing but 0 and 1 differ
     */
    boolean holds(double[] values, double tolerance) {
        double[] rounded = new double[columns];
        for (int c = 0; c < columns; c++) {
            rounded[c] = whole[c] ? Math.rint(values[c]) : values[c];
            if (rounded[c] < columnLow[c] - tolerance || rounded[c] > columnHigh[c] + tolerance) {
                return false;
            }
        }
        double[] sum = new double[rows];
        for (int e = 0; e < entries; e++) {
            sum[entryRow[e]] += entryValue[e] * rounded[entryColumn[e]];
        }
        for (int r = 0; r < rows; r++) {
            if (sum[r] < rowLow[r] - tolerance || sum[r] > rowHigh[r] + tolerance) {
                return false;
            }
        }
        return true;
    }

    int columns() {
        return columns;
    }

    int rows() {
        return rows;
    }

    int entries() {
        return entries;
    }

    double columnLow(int column) {
        return columnLow[column];
    }

    double columnHigh(int column) {
        return columnHigh[column];
    }

    double cost(int column) {
        return cost[column];
    }

    boolean whole(int column) {
        return whole[column];
    }

    double rowLow(int row) {
        return rowLow[row];
    }

    double rowHigh(int row) {
        return rowHigh[row];
    }

    int entryRow(int entry) {
        return entryRow[entry];
    }

    int entryColumn(int entry) {
        return entryColumn[entry];
    }

    double entryValue(int entry) {
        return entryValue[entry];
    }
}
