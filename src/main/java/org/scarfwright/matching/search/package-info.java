/** The search for the best plan: whole numbers in, layouts and pairs out. Pure: knows neither the rack nor the database. */
@NullMarked
package org.scarfwright.matching.search;

import org.jspecify.annotations.NullMarked;
