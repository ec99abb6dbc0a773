package org.scarfwright.matching;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class RackUsesDockerPostgresTest extends RackUsesContract {}
