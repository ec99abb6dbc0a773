package org.scarfwright.shop;

import org.scarfwright.database.OnH2;

@OnH2
class ShopH2Test extends ShopContract {}
