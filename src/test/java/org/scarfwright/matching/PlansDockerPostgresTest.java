package org.scarfwright.matching;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class PlansDockerPostgresTest extends PlansContract {}
