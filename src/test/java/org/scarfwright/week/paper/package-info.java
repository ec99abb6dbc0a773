@NullMarked
package org.scarfwright.week.paper;

import org.jspecify.annotations.NullMarked;
