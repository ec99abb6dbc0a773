package org.scarfwright.matching;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class ChoicesDockerPostgresTest extends ChoicesContract {}
