package org.scarfwright.matching;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class HandsEmbeddedPostgresTest extends HandsContract {}
