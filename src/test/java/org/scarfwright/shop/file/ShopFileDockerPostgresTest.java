package org.scarfwright.shop.file;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class ShopFileDockerPostgresTest extends ShopFileContract {}
