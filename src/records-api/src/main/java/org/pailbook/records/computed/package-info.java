/**
 * What is computed of one lactation, in one shape whether it is stored or was only posted, and the choice of methods by name.
 *
 * <p>Entry: {@link HerdLearning}, what a herd knows; {@link CurvesView} and {@link YieldsView}, each made {@code of} a {@link Subject}; {@link MethodChoice} finds methods. They
 * belong to no slice, because the stored and the stateless addresses answer alike.
 */
package org.pailbook.records.computed;
