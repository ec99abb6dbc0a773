package org.scarfwright.ledger;

import org.scarfwright.database.OnH2;

@OnH2
class YieldH2Test extends YieldContract {}
