package org.scarfwright.necks.book;

import org.scarfwright.database.OnH2;

@OnH2
class NecksH2Test extends NecksContract {}
