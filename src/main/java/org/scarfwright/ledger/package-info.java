/**
 * What happened to every piece, append-only, with volumes that close.
 *
 * <p><b>Entries.</b> One entry is one doing of a person. It has an act for each piece it touched, with the piece's whole state
 * afterwards, and outcomes that say what became of the wood it took away. Entries are numbered without gaps and each holds the
 * hash of the one before, so that nothing in the chain can be changed, left out or put in unseen.
 *
 * <p><b>What follows.</b> The state of a piece is the document of its last act; taking an entry back puts the documents before
 * it back, as an entry of its own. {@link org.scarfwright.ledger.Verification} holds all of it against the rack.
 */
@ApplicationModule(allowedDependencies = {"measure", "joint", "shop", "rack", "matching", "web"})
@NullMarked
package org.scarfwright.ledger;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
