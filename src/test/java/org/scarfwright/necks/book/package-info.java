@NullMarked
package org.scarfwright.necks.book;

import org.jspecify.annotations.NullMarked;
