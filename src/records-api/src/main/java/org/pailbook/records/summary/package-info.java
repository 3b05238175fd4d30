/** A cow and a herd at a glance. */
package org.pailbook.records.summary;
