/**
 * Days in milk, intervals between tests and the conventions for counting them.
 *
 * <p>Entry: {@link DaysInMilk}. The calving day is day 0, so a lactation's yield starts with day 1, the day after calving, and a
 * standard lactation is days 1 to 305. Published tables differ; {@link DayCounting} names the other convention.
 */
package org.pailbook.lactation.day;
