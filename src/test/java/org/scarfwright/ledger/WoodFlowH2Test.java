package org.scarfwright.ledger;

import org.scarfwright.database.OnH2;

@OnH2
class WoodFlowH2Test extends WoodFlowContract {}
