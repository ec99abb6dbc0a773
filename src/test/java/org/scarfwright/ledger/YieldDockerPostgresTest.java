package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class YieldDockerPostgresTest extends YieldContract {}
