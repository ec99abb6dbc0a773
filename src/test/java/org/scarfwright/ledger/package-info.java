/** Claims about the ledger. */
@NullMarked
package org.scarfwright.ledger;

import org.jspecify.annotations.NullMarked;
