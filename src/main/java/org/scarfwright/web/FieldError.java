package org.scarfwright.web;

import java.nio.charset.StandardCharsets;

/**
 * What is wrong with one thing a person gave.
 *
 * @param pointer JSON pointer to it (RFC 6901), such as /length or /rows/3/length; on a page the field's name after the slash
 * @param label the field as the page calls it, such as Length
 * @param value what was given, cut short
 * @param message what is wrong and what would be right; reads on from the label: "is negative; write for example 640"
 */
public record FieldError(String pointer, String label, String value, String message) {
    private static final int SHOWN = 80;

    public FieldError {
        value = whole(value.length() > SHOWN ? value.substring(0, SHOWN) + "…" : value);
        message = whole(message);
    }

    /** Half a surrogate pair cannot be written as UTF-8; it becomes a question mark instead of failing the answer. */
    private static String whole(String text) {
        return new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }

    /** The field's name as the page's form has it. */
    public String field() {
        return pointer.substring(pointer.lastIndexOf('/') + 1);
    }

    /** The whole sentence. */
    public String sentence() {
        boolean ends = message.endsWith(".") || message.endsWith("?");
        return label + " " + message + (ends ? "" : ".");
    }
}
