/** Herds: made, listed, fetched. */
package org.pailbook.records.herd;
