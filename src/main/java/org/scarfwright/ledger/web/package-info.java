/** The ledger's page and address. */
@NullMarked
package org.scarfwright.ledger.web;

import org.jspecify.annotations.NullMarked;
