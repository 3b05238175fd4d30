/** How many 305-day projections a second one core makes. */
package org.pailbook.benchmarks.projection;
