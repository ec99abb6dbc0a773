package org.scarfwright.rack;

import org.scarfwright.database.OnH2;

@OnH2
class ReservationRaceH2Test extends ReservationRaceContract {}
