/**
 * How right projections are: any rule, on a folder of test days and of what the daily weights came to, each cow projected from the other cows alone.
 *
 * <p>Entry: {@link org.pailbook.benchmarks.accuracy.AccuracyTable}; a new rule implements {@link
 * org.pailbook.benchmarks.accuracy.ProjectionRule} and gets a line in {@link org.pailbook.benchmarks.accuracy.ProjectionRules}.
 */
package org.pailbook.benchmarks.accuracy;
