/** Prices from a day on. */
package org.pailbook.records.price;
