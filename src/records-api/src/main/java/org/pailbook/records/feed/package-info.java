/**
 * Feeds: addresses that a spreadsheet can open without sending a key, each for one table of one herd: any {@link org.pailbook.records.exchange.HerdTable} there is.
 *
 * <p>The secret stands in the address, so a feed only reads, expires, can be revoked, is limited by itself, and stops when the key that
 * made it does. Its path is written to no log and no answer.
 */
package org.pailbook.records.feed;
