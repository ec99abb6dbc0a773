package org.scarfwright.rack;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class ReadingTrendDockerPostgresTest extends ReadingTrendContract {}
