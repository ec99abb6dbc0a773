package org.scarfwright.matching;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class RackUsesEmbeddedPostgresTest extends RackUsesContract {}
