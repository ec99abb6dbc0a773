package org.scarfwright.week;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class WeekDockerPostgresTest extends WeekContract {}
