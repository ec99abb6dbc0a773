package org.scarfwright.necks.book;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class NecksDockerPostgresTest extends NecksContract {}
