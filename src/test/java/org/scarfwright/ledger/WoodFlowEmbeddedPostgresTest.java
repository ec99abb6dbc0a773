package org.scarfwright.ledger;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class WoodFlowEmbeddedPostgresTest extends WoodFlowContract {}
