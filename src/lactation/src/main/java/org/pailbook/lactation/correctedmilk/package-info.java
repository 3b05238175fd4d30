/**
 * Milk brought to a common composition: fat-, energy-, fat-and-protein- and solids-corrected milk, and the energy in milk.
 *
 * <p>Entry: {@link org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas}, which lists every published variant under its own
 * name. No two variants share a name and none is assumed: the caller chooses, and every figure says which it was. All of them are
 * weighted sums of masses in kg once percents are turned into kg, so a variant may be used on one day or on a whole lactation.
 *
 * <p>A component that was not measured leaves the figure without a value; no breed mean stands in. Only where the published
 * formula itself names a standard lactose is that used, with a finding. Nothing here is a ration or a feeding advice.
 */
package org.pailbook.lactation.correctedmilk;
