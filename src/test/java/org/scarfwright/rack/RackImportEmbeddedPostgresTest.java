package org.scarfwright.rack;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class RackImportEmbeddedPostgresTest extends RackImportContract {}
