package org.scarfwright.rack;

import org.scarfwright.database.OnH2;

@OnH2
class RackH2Test extends RackContract {}
