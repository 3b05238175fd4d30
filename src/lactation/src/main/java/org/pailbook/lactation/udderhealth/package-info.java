/**
 * Somatic cell counts brought to the scale on which they may be averaged.
 *
 * <p>Entry: {@link org.pailbook.lactation.udderhealth.SomaticCellScore}. Counts are in 1,000 cells per mL. A score suggests and never
 * proves an infection: culture and the veterinarian decide, and nothing here is a diagnosis, a treatment or a withholding period.
 */
package org.pailbook.lactation.udderhealth;
