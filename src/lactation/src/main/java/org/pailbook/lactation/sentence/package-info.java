/**
 * What is said to people with values in it, kept as a code and its values, so that whoever shows it may say it in another language, with numbers
 * written otherwise or weights in another unit.
 *
 * <p>Entry: {@link Sentence}, with a code from {@link SentenceCode} that has the English. {@link Rounding} is how numbers are written. Not here:
 * findings, whose codes stand in the finding package, and titles of publications, which are not translated.
 */
package org.pailbook.lactation.sentence;
