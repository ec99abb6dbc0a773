/**
 * The book of designs and orders: how they are read from what people write, checked, and kept. A thing arrives as a {@link
 * org.scarfwright.necks.book.Draft}, the raw text whatever it came from (page, JSON or file); reading it gives either the
 * thing or every {@link org.scarfwright.necks.book.Flaw} at once.
 */
@NullMarked
package org.scarfwright.necks.book;

import org.jspecify.annotations.NullMarked;
