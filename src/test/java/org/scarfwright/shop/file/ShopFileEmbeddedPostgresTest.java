package org.scarfwright.shop.file;

import org.scarfwright.database.OnEmbeddedPostgres;

@OnEmbeddedPostgres
class ShopFileEmbeddedPostgresTest extends ShopFileContract {}
