/**
 * Small numerics the other packages stand on: factoring, solving, fitting. There is no cow in it.
 *
 * <p>Not for use from outside the library: names and shapes may change with any version. Checked against Commons Math in tests.
 */
package org.pailbook.lactation.internal;
