package org.scarfwright.web;

import org.scarfwright.database.OnH2;

@OnH2
class RepeatedRequestH2Test extends RepeatedRequestContract {}
