/** Tests of plans over the API. */
@NullMarked
package org.scarfwright.matching.web;

import org.jspecify.annotations.NullMarked;
