package org.scarfwright.ledger;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class DemoWeekCutDockerPostgresTest extends DemoWeekCutContract {}
