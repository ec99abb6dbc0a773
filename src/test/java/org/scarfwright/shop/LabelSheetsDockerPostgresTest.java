package org.scarfwright.shop;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class LabelSheetsDockerPostgresTest extends LabelSheetsContract {}
