/** Whose milk must stay out of the tank. */
package org.pailbook.records.withheld;
