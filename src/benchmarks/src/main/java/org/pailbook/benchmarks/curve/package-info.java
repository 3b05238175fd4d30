/** How fast lactation curves are fitted, against Commons Math here and against R and SciPy by {@code compare-fitters.sh}. */
package org.pailbook.benchmarks.curve;
