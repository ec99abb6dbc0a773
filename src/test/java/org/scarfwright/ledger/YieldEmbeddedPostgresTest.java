package org.scarfwright.ledger;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class YieldEmbeddedPostgresTest extends YieldContract {}
