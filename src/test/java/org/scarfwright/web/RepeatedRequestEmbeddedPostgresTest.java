package org.scarfwright.web;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class RepeatedRequestEmbeddedPostgresTest extends RepeatedRequestContract {}
