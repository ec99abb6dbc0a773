package org.scarfwright.necks.book;

import java.util.Locale;

/** What an order is written with, in the order people fill it in. */
public enum OrderField implements Field {
    CODE("Code"),
    DESIGN("Design"),
    QUANTITY("Quantity"),
    DUE("Due"),
    PRIORITY("Priority"),
    WEEK("Week"),
    NOTE("Note");

    private final String label;

    OrderField(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String form() {
        return column();
    }

    @Override
    public String json() {
        return column();
    }

    @Override
    public String column() {
        return name().toLowerCase(Locale.ROOT);
    }

    @Override
    public boolean isLength() {
        return false;
    }
}
