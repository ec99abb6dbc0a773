package org.scarfwright.shop;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class LabelSheetsEmbeddedPostgresTest extends LabelSheetsContract {}
