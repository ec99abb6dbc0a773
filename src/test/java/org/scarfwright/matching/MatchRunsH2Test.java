package org.scarfwright.matching;

import org.scarfwright.database.OnH2;

@OnH2
class MatchRunsH2Test extends MatchRunsContract {}
