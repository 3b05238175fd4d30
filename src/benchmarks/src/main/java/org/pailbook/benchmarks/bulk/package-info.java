/** The peer of the bulk benchmark: the same rows by plain JDBC. */
package org.pailbook.benchmarks.bulk;
