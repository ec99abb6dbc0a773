package org.scarfwright.ledger;

import org.scarfwright.database.OnH2;

@OnH2
class OffcutsH2Test extends OffcutsContract {}
