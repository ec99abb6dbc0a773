package org.scarfwright.week;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class WeekEmbeddedPostgresTest extends WeekContract {}
