package org.scarfwright.necks.book;

/** One thing a person writes, and how the page, the API and a file call it. */
public sealed interface Field permits DesignField, OrderField {
    /** What the page writes before the field. */
    String label();

    /** The field's name in a page's form and in an address. */
    String form();

    /** The key in JSON. */
    String json();

    /** The column in a CSV file. */
    String column();

    /** Whether a bare number is a length in the unit of the page or file. */
    boolean isLength();
}
