/**
 * What will she give in 305 days, on the next test day, on any day, and how sure is that?
 *
 * <p>Entry: {@link BestPrediction#project}, which needs a lactation, a standard from the {@code reference} package and the day as of which
 * it is made; it answers a {@link Projection305}. Works from no test at all (the expectation of the group) to a weight every
 * day. All yields are kg; a total runs over days 1 to 305, the calving day being day 0. Every total is the yield if she is milked
 * to that day; that she may leave or be dried off before is another question. Intervals are prediction intervals and hold the uncertain level
 * of the herd; the lower end is never below what she has already given, as far as that is known.
 *
 * <p>Source: VanRaden 1997, J. Dairy Sci. 80:3015-3022 (abstract read), with correlations of Cole, Null and VanRaden 2009.
 */
package org.pailbook.lactation.projection;
