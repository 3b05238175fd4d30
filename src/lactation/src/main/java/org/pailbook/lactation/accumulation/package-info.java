/**
 * Yield to date from test days: what she gave from the day after calving to her last test, her dry-off or day 305.
 *
 * <p>Entry: {@link org.pailbook.lactation.accumulation.YieldAccumulations} lists the methods; {@link
 * org.pailbook.lactation.accumulation.TestIntervalMethod} is ICAR's reference. Milk, fat and protein in kg, day 0 the calving day. A cow
 * in milk accumulates to her last test day: days after it are a projection and bear another name. Each method names the tests it left
 * out and why, and its explanation is one part an interval with the arithmetic, adding up to the figure.
 */
package org.pailbook.lactation.accumulation;
