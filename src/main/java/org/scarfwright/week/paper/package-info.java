/**
 * What is printed: cut sheets, jig templates and labels as PDF. Everything is laid out in millimetres of paper, x to the right
 * and y downward from the top left corner of what a printer can reach; the PDF's own points are met in one class only.
 *
 * <p>A dimension is written between a begin and an end of marked content named {@code Measure}: its line first, then its figure.
 * Whoever reads the file back finds every printed length beside the length it claims.
 */
@NullMarked
package org.scarfwright.week.paper;

import org.jspecify.annotations.NullMarked;
