/**
 * A test day, the lactation it belongs to, and the checks on both.
 *
 * <p>Entry: {@link TestDay} and {@link Lactation}. A test day is 24 hours of one cow: milk in kg, composition in percent by mass,
 * somatic cells in 1,000 per mL. Parts that were not measured are absent, never zero.
 */
package org.pailbook.lactation.testday;
