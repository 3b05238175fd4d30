/**
 * A computed value together with what it was made from.
 *
 * <p>Entry: {@link Figure}. It holds the value or nothing, its unit, prediction intervals or the reason why there are none, the
 * as-of date, the published method, the inputs used, the findings, and an {@link Explanation} whose parts add up to the value.
 * The explanation is made by the pass that makes the value, so the two cannot drift apart.
 */
package org.pailbook.lactation.figure;
