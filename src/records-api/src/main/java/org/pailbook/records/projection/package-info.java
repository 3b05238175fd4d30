/** Lactations of one cow, computed from what is recorded of her: yield so far, corrected milk, curve and 305-day projection. */
package org.pailbook.records.projection;
