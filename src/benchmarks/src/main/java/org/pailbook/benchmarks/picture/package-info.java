/** The picture of the README: one cow of the sample herd, drawn from the library's answers. */
package org.pailbook.benchmarks.picture;
