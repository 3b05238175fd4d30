/**
 * How a lactation holds up, how high it rose, and what a cow gives over a year and a life: one class for each published measure.
 *
 * <p>Entry: {@link org.pailbook.lactation.persistency.PersistencyMeasures} lists the measures read off a fitted curve; the others are
 * classes of their own, such as {@link org.pailbook.lactation.persistency.PeakTest} and {@link
 * org.pailbook.lactation.persistency.LifetimeYield}. Milk in kg, days in milk with the calving day 0, percent where a ratio is shown.
 *
 * <p>Persistency is told only from four tests on that span enough of the lactation, and never for days the tests do not reach. It goes
 * beside yield and not in its place: high yield and ratio measures go together. Age factors are learned from the herd or given by the
 * user; none are shipped.
 */
package org.pailbook.lactation.persistency;
