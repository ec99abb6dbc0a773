package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class VerificationDockerPostgresTest extends VerificationContract {}
