/**
 * What the data lack or contradict, told as values instead of exceptions.
 *
 * <p>Entry: {@link Finding}, with a code from {@link FindingCode}. A finding says where it is, what was seen and what was
 * expected; text for people is made from these parts at the edge. {@link Severity} says only what happens next: no value, a
 * value to be read with care, or a note.
 */
package org.pailbook.lactation.finding;
