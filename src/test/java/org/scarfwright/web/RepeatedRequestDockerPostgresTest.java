package org.scarfwright.web;

import org.scarfwright.database.OnDockerPostgres;

@OnDockerPostgres
class RepeatedRequestDockerPostgresTest extends RepeatedRequestContract {}
