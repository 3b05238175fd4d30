/**
 * Many records in one request: JSON, NDJSON and CSV read as a stream of rows, taken in chunks, answered row by row.
 *
 * <p>Entry: {@link BulkIntake}. Memory does not grow with the file: rows are read one after the other, each chunk is a transaction
 * of its own, and row results beyond a megabyte go to a temporary file.
 */
package org.pailbook.records.exchange;
