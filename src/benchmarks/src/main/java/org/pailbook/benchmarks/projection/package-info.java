/**
 * Projections: how right they are on measured lactations, beside simple methods, and how fast.
 *
 * <p>{@link org.pailbook.benchmarks.projection.AccuracyHarness} prints the accuracy table of a folder of test days with their truth; {@link
 * org.pailbook.benchmarks.projection.ProjectionBenchmark} times projections against dense matrices of Commons Math.
 */
package org.pailbook.benchmarks.projection;
