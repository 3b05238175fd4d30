/**
 * Whose milk must stay out of the tank at a moment, why, since when, until when, and who said so.
 *
 * <p>Entry: {@link WithheldMilk}. It only compares dates that were entered: no withholding period is ever worked out, no product is known here.
 * What is not recorded is not recorded: no cow's milk is called safe by this package.
 */
package org.pailbook.lactation.withheld;
