/**
 * What will she give in 305 days, on the next test day, on any day, and how sure is that?
 *
 * <p>Entry: {@link BestPrediction#project}, which needs a lactation, a standard from the {@code reference} package and the day as of which
 * it is made; it answers a {@link Projection305}. Works from no test at all (the expectation of the group) to a weight every
 * day. All yields are kg; a total runs over days 1 to 305, the calving day being day 0. Every total is the yield if she is milked
 * to that day; that she may leave or be dried off before is another question. Intervals are prediction intervals and hold the uncertain level
 * of the herd; the lower end is never below what she has already given, as far as that is known.
 *
 * <p>The same kernel adds up yields to date along the group's curve: {@link StandardCurveAccumulations}. ICAR's worked example lactation (10 tests,
 * 284 days; rows from memory) by the four methods, the last three with the shipped Danish Red standard for parity 2 or more:
 *
 * <table>
 * <caption>One lactation by four methods</caption>
 * <tr><th>method</th><th>milk, kg</th><th>fat, kg</th><th>fat, %</th></tr>
 * <tr><td>test interval (published: 4973.2, 190.2, 3.82)</td><td>4973.2</td><td>190.2</td><td>3.82</td></tr>
 * <tr><td>interpolation with standard curves</td><td>5022.9</td><td>200.4</td><td>3.99</td></tr>
 * <tr><td>best prediction (80 % interval 4766 to 5279)</td><td>5022.3</td><td>195.8</td><td>3.90</td></tr>
 * <tr><td>multiple-trait procedure</td><td>5061.5</td><td>196.5</td><td>3.88</td></tr>
 * </table>
 *
 * <p>Source: VanRaden 1997, J. Dairy Sci. 80:3015-3022 (abstract read), with correlations of Cole, Null and VanRaden 2009.
 */
package org.pailbook.lactation.projection;
