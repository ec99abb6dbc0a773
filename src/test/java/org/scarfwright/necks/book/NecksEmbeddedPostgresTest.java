package org.scarfwright.necks.book;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class NecksEmbeddedPostgresTest extends NecksContract {}
