package org.scarfwright.matching;

import org.scarfwright.database.OnH2;

@OnH2
class HandsH2Test extends HandsContract {}
