package org.scarfwright.rack;

import org.scarfwright.database.OnH2;

@OnH2
class ReadingTrendH2Test extends ReadingTrendContract {}
