/**
 * Keep a cow or replace her: what keeping is worth in money, why, and how sure that is.
 *
 * <p>Entry: {@link KeepOrReplace}, made once from {@link CullingPrices} and {@link HerdParameters}, answers for single cows ({@link
 * CowOutlook}); {@link CullingRanking} sets a herd in order. Underneath lies {@link CowValueTable}: a slot in the herd followed month by month over
 * parity, month in milk, months pregnant and milk class, kept or replaced by a heifer that calves today, so that the expected discounted net revenue is
 * highest.
 *
 * <p>Money is in currency units (cu) of the user. A month is 30.4375 days. Prices are the user's; where the reference set stands in, figures say
 * so: it is invented, of realistic size, and nobody's herd. Exits are called unplanned and chosen, as a model must; recorded exits are never
 * split that way (Fetrow, Nordlund and Norman 2006).
 *
 * <p>Nothing here orders a cow to be culled. It does not see lameness, welfare or family lines; {@link CullingCaution} goes with every
 * answer.
 */
package org.pailbook.lactation.culling;
