/** Services and pregnancy checks. */
package org.pailbook.records.breeding;
