/**
 * One cow and one herd at a glance: what state each cow is in, and totals and means over many cows.
 *
 * <p>Entry: {@link CowOnDay} and {@link HerdOnDay}; {@link HerdKnowledge} is what a herd's own history tells of cows not yet tested. Every herd figure names its denominator in its explanation and findings. A sum over
 * cows adds what is independent between them in squares and what they share, the unsure level of the herd, linearly.
 */
package org.pailbook.lactation.summary;
