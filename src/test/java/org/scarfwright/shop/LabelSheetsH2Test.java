package org.scarfwright.shop;

import org.scarfwright.database.OnH2;

@OnH2
class LabelSheetsH2Test extends LabelSheetsContract {}
