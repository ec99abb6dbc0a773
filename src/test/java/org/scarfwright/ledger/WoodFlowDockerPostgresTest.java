package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class WoodFlowDockerPostgresTest extends WoodFlowContract {}
