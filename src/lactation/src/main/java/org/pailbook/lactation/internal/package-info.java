/**
 * Least squares, searches and special functions. There is no cow in here.
 *
 * <p>For the other packages of this library only; nothing here is promised to users. Inputs are arrays of equal length in the
 * caller's units; nothing is copied unless said, and nothing is allocated inside an iteration. {@link LinearLeastSquares} solves
 * what is linear in its coefficients, {@link LinkedLeastSquares} three-column models behind a link such as {@code exp}, {@link
 * ProfileSearch} the one coefficient that is left when all others are linear, {@link PolicyIteration} the best actions of a {@link
 * DecisionProcess}. Commons Math is used for root finding and the
 * incomplete gamma function.
 */
package org.pailbook.lactation.internal;
