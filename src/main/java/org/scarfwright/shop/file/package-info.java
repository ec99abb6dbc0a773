/** The shop file: written from the rooms' lists and read back into an empty shop. */
@NullMarked
package org.scarfwright.shop.file;

import org.jspecify.annotations.NullMarked;
