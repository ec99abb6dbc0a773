package org.scarfwright.matching;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class HandsDockerPostgresTest extends HandsContract {}
