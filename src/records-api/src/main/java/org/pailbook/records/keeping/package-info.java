/**
 * The database as a whole: whether the service can work with it, a copy of it, and a copy put back.
 *
 * <p>Entry: {@link KeptDatabase#of}. Works without the service, beside a running one or before it starts, with the database's own
 * means: {@code VACUUM INTO} of SQLite, {@code pg_dump} and {@code pg_restore} of PostgreSQL. Whatever cannot be done is said in one
 * sentence, a {@link Refusal}.
 */
package org.pailbook.records.keeping;
