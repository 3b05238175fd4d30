/**
 * Many records in one request: JSON, NDJSON and CSV read as a stream of rows, taken in chunks, answered row by row.
 *
 * <p>Entry: {@link BulkIntake}. Memory does not grow with the file: rows are read one after the other, each chunk is a transaction
 * of its own, and row results beyond a megabyte go to a temporary file.
 *
 * <p>Besides: {@link RecordResource} and {@link VersionDesk} for one known record and its history, {@link ChangeFeed} for what changed,
 * {@link ComputedDesk} for whatever is read or computed by the two clocks, {@link Cursors} for places in lists, {@link OnceOnly} for
 * requests with an idempotency key. None of it knows a kind.
 */
package org.pailbook.records.exchange;
