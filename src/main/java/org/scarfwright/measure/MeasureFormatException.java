package org.scarfwright.measure;

/** Text that is not the measure it should be. The message says what was wrong and what would be right. */
public class MeasureFormatException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    public MeasureFormatException(String message) {
        super(message);
    }
}
