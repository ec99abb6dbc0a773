package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class EarlierActsDockerPostgresTest extends EarlierActsContract {}
