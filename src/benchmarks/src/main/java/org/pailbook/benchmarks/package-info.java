/** Measurements of speed, each against a named peer in the same run. One package below this one for each subject of the library. */
package org.pailbook.benchmarks;
