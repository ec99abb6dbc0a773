/** Plans over the API and on their pages. */
@NullMarked
package org.scarfwright.matching.web;

import org.jspecify.annotations.NullMarked;
