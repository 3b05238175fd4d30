/**
 * Breeding: which cow is to be served, checked, dried off, and how well a herd gets in calf.
 *
 * <p>Entry: {@link BreedingRecord} puts one animal's events together, {@link BreedingWorklist} says who is on which list and why, {@link
 * BreedingSummary} has the herd's measures with what is counted over what. {@link PregnancyRate21} and {@link TimeToPregnancy} count
 * cows that are not pregnant yet, too; means over pregnant cows alone are too low.
 *
 * <p>What is not recorded is not known: a cow nobody checked is neither pregnant nor open. Nothing here proposes a treatment; hormones are
 * for the veterinarian to prescribe.
 */
package org.pailbook.lactation.breeding;
