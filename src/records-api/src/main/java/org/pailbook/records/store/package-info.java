/**
 * What is kept: entities, the queries over them, and the one gate through which anything is written.
 *
 * <p>A record table holds the version in force of each record; versions that were replaced are in {@link SupersededVersionRow}.
 * Entities carry a record between intake and database and are never bound to JSON. Computations read through
 * {@link CowRecords}, which hands out the library's own types.
 */
package org.pailbook.records.store;
