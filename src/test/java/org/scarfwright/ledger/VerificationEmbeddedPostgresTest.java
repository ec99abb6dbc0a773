package org.scarfwright.ledger;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class VerificationEmbeddedPostgresTest extends VerificationContract {}
