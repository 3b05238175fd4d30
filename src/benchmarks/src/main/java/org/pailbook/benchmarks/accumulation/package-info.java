/** Yield to date from test days: the bare sum against the same trapezoid by an interpolated function of Commons Math. */
package org.pailbook.benchmarks.accumulation;
