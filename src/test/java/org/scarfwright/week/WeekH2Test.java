package org.scarfwright.week;

import org.scarfwright.database.OnH2;

@OnH2
class WeekH2Test extends WeekContract {}
