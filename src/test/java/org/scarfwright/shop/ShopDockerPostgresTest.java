package org.scarfwright.shop;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class ShopDockerPostgresTest extends ShopContract {}
