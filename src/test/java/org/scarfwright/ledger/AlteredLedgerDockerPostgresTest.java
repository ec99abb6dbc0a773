package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class AlteredLedgerDockerPostgresTest extends AlteredLedgerContract {}
