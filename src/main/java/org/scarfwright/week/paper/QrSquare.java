package org.scarfwright.week.paper;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.ArrayList;
import java.util.List;

/**
 * A QR code of level Q: about a quarter of its codewords may be lost and it still reads. Source: ISO/IEC 18004, which also asks
 * for a quiet zone of four modules around it.
 */
final class QrSquare {
    /** Modules left white on every side. */
    static final int QUIET = 4;

    /** A dot of a printer with 203 dots to the inch, as most label printers have; in millimetres. */
    static final double DOT = 25.4 / 203;

    private final ByteMatrix modules;

    private QrSquare(ByteMatrix modules) {
        this.modules = modules;
    }

    /** @throws IllegalArgumentException when the text is longer than any QR code holds */
    static QrSquare of(String text) {
        try {
            return new QrSquare(Encoder.encode(text, ErrorCorrectionLevel.Q).getMatrix());
        } catch (WriterException e) {
            throw new IllegalArgumentException(text.length() + " characters are too many for a QR code", e);
        }
    }

    /** Modules along a side, without the quiet zone. */
    int modules() {
        return modules.getWidth();
    }

    /** Of a side with its quiet zone, in millimetres. */
    double side(int dots) {
        return (modules() + 2 * QUIET) * dots * DOT;
    }

    /**
     * The dark modules, those that touch in a row as one box.
     *
     * @param corner of the quiet zone
     */
    List<Box> dark(Spot corner, int dots) {
        double module = dots * DOT;
        List<Box> boxes = new ArrayList<>();
        for (int y = 0; y < modules(); y++) {
            int x = 0;
            while (x < modules()) {
                int from = x;
                while (x < modules() && modules.get(x, y) == 1) {
                    x++;
                }
                if (x > from) {
                    boxes.add(new Box(
                            corner.x() + (QUIET + from) * module,
                            corner.y() + (QUIET + y) * module,
                            (x - from) * module,
                            module));
                }
                x++;
            }
        }
        return boxes;
    }
}
