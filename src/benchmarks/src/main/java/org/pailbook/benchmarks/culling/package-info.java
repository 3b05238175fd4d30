/** Keep or replace: the decision process solved exactly, beside plain value iteration. */
package org.pailbook.benchmarks.culling;
