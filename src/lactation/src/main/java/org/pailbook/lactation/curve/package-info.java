/**
 * Lactation curves: daily milk as a function of days in milk, and their fitting to test days.
 *
 * <p>Entry: {@link LactationCurves} lists every model with its paper. A {@link CurveModel} fits one lactation and answers with a
 * {@link CurveFit}: the curve, its parameters with standard errors, the peak if one may be claimed, and what was found. The same
 * model takes plain arrays and gives the bare arithmetic, a {@link CurveEstimate}. {@link LactationCurve} is a curve with known
 * parameters, fitted or given.
 *
 * <p>All yields are kg of milk per day; day 0 is the calving day. A total is the sum of daily values, never the integral. Curves
 * may be negative far outside the days they were fitted on; nothing here floors them, callers that sum do.
 *
 * <p><b>No curve of a cow's own few points is ever used to project.</b> It sums up the shape of what was measured. Over the first
 * five tests of 606 heifers Wood's curve on logarithms missed the 305-day yield by 1,042 kg on average, empirical Bayes by 373,
 * best prediction by 590, the test interval method by 917 (Pereira, Suzuki and Hagiya 2001, Asian-Australas. J. Anim. Sci.
 * 14:1511-1515, abstract). Projections with intervals are in the projection package.
 */
package org.pailbook.lactation.curve;
