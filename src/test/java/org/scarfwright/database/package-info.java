/**
 * The databases the tests run on. A contract test is an abstract class; each engine is a subclass that carries one of
 * {@link org.scarfwright.database.OnH2}, {@link org.scarfwright.database.OnEmbeddedPostgres} and {@link
 * org.scarfwright.database.OnDockerPostgres}. Classes that add nothing to the context share one context and so one database
 * per engine; a test that commits must leave the database as it found it, or start from {@link
 * org.scarfwright.database.EmptyDatabase}.
 */
@NullMarked
package org.scarfwright.database;

import org.jspecify.annotations.NullMarked;
