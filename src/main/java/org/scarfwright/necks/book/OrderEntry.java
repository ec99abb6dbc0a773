package org.scarfwright.necks.book;

import org.scarfwright.necks.NeckOrder;

/**
 * An order as the book keeps it.
 *
 * @param cancelled called off; it can be taken up again
 */
public record OrderEntry(NeckOrder order, boolean cancelled) {}
