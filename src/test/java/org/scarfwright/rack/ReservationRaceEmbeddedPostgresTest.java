package org.scarfwright.rack;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class ReservationRaceEmbeddedPostgresTest extends ReservationRaceContract {}
