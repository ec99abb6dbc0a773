package org.scarfwright.necks.book;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.CsvTable.Columns;
import org.scarfwright.web.CsvTable.Limits;
import org.scarfwright.web.FieldError;

/** The CSV files of designs and orders. Their columns are those of {@link DesignField} and {@link OrderField}. */
public final class NeckFiles {
    /** Rows and sizes that one file may have. */
    public static final Limits LIMITS = new Limits(8 * 1024 * 1024, 20_000, 2_000);

    private static final String UNIT = "unit";
    private static final Columns DESIGN_COLUMNS = new Columns(
            columns(List.of(
                    DesignField.CODE,
                    DesignField.NAME,
                    DesignField.NECK_LENGTH,
                    DesignField.NUT_WIDTH,
                    DesignField.HEEL_WIDTH,
                    DesignField.NECK_THICKNESS,
                    DesignField.HEAD_LENGTH,
                    DesignField.HEAD_WIDTH,
                    DesignField.HEAD_THICKNESS,
                    DesignField.ANGLE,
                    DesignField.ARRANGEMENTS,
                    DesignField.FINISH)),
            columns(
                    List.of(
                            DesignField.NECK_WOODS,
                            DesignField.HEAD_WOODS,
                            DesignField.MATCH,
                            DesignField.LINES_MEET,
                            DesignField.WINGS,
                            DesignField.END_ALLOWANCE,
                            DesignField.SIDE_ALLOWANCE),
                    UNIT));
    private static final Columns ORDER_COLUMNS = new Columns(
            columns(List.of(OrderField.DESIGN, OrderField.QUANTITY, OrderField.DUE)),
            columns(List.of(OrderField.CODE, OrderField.PRIORITY, OrderField.WEEK, OrderField.NOTE)));

    private NeckFiles() {}

    /** Columns of a file of designs: first the required ones. */
    public static Columns designColumns() {
        return DESIGN_COLUMNS;
    }

    /** Columns of a file of orders: first the required ones. */
    public static Columns orderColumns() {
        return ORDER_COLUMNS;
    }

    public static List<Entry> designs(CsvTable table) {
        return entries(table, List.of(DesignField.values()));
    }

    public static List<Entry> orders(CsvTable table) {
        return entries(table, List.of(OrderField.values()));
    }

    private static List<Entry> entries(CsvTable table, List<? extends Field> fields) {
        List<Entry> entries = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            Map<Field, String> texts = new HashMap<>();
            for (Field field : fields) {
                if (row.has(field.column())) {
                    texts.put(field, row.cell(field.column()));
                }
            }
            List<FieldError> faults = new ArrayList<>();
            LengthUnit unit = unit(row, faults);
            entries.add(Entry.ofRow(new Draft(texts, unit), row, faults));
        }
        return entries;
    }

    /** What a bare number means in this row; millimetres when the row does not say. */
    private static LengthUnit unit(CsvTable.Row row, List<FieldError> faults) {
        String text = row.cell(UNIT).toLowerCase(Locale.ROOT);
        for (LengthUnit unit : LengthUnit.values()) {
            if (unit.symbol().equals(text)) {
                return unit;
            }
        }
        if (!text.isEmpty()) {
            faults.add(row.error(UNIT, DraftReader.quote(row.cell(UNIT)) + " is no unit; write mm, cm, m or in"));
        }
        return LengthUnit.MM;
    }

    private static List<String> columns(List<? extends Field> fields, String... more) {
        List<String> columns = new ArrayList<>();
        fields.forEach(f -> columns.add(f.column()));
        columns.addAll(List.of(more));
        return columns;
    }
}
