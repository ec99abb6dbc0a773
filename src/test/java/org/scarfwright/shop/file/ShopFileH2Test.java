package org.scarfwright.shop.file;

import org.scarfwright.database.OnH2;

@OnH2
class ShopFileH2Test extends ShopFileContract {}
