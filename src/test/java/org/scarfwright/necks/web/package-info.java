@NullMarked
package org.scarfwright.necks.web;

import org.jspecify.annotations.NullMarked;
