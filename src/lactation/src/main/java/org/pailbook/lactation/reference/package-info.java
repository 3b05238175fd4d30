/**
 * What a cow of a given breed and parity is expected to give day by day, and how cows of that group differ.
 *
 * <p>Entry: {@link LactationStandards#forCow}; a {@link LactationStandard} is a mean curve in kg per day, an uncertain herd level and
 * the {@link DailySpread} of single lactations around it. Day 1 is the day after calving. The shipped standards stand in the resource
 * {@code lactation-standards.csv} with their source and how they were made; they come from one small research herd and are meant
 * to be overlaid by the user's own. What a projection makes of a standard is in the {@code projection} package.
 */
package org.pailbook.lactation.reference;
