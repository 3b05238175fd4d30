/**
 * Which published method made a figure: the paper, the year, the equation, and the version of our implementation.
 *
 * <p>Entry: {@link PublishedMethod}, implemented by one final class for each published method and listed in the catalogue
 * class of its own package. {@link HowKnown} says whether the source itself was opened.
 */
package org.pailbook.lactation.method;
