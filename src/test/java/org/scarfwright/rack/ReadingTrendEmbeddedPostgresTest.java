package org.scarfwright.rack;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class ReadingTrendEmbeddedPostgresTest extends ReadingTrendContract {}
