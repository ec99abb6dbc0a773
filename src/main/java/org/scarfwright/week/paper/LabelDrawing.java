package org.scarfwright.week.paper;

import java.util.List;

/**
 * A label laid out, in millimetres from its own top left corner.
 *
 * @param square where the quiet zone of the QR code begins
 * @param dots of a module
 */
record LabelDrawing(QrSquare qr, Spot square, int dots, List<Words> words) {
    LabelDrawing {
        words = List.copyOf(words);
    }

    /**
     * One line of text.
     *
     * @param at where it stands, on its base line
     * @param size of the type
     * @param width of the line in the type of the PDF
     */
    record Words(Spot at, double size, String text, double width) {}

    /**
     * The dark modules of the QR code on the sheet, moved right and down to the next whole dot of the printer so that every edge
     * falls on one.
     *
     * @param corner of the label on its sheet
     */
    List<Box> dark(Spot corner) {
        return qr.dark(new Spot(onDot(corner.x() + square.x()), onDot(corner.y() + square.y())), dots);
    }

    private static double onDot(double mm) {
        return Math.ceil(mm / QrSquare.DOT - 1e-6) * QrSquare.DOT;
    }
}
