package org.pailbook.lactation.culling;

import java.time.LocalDate;
import org.pailbook.lactation.figure.Figure;

/**
 * The other way of keeping an open cow: do not breed her again, and replace her later.
 *
 * @param payoff what that is worth over replacing her now
 * @param untilMonthInMilk she goes at the start of this month
 * @param until the day on which it starts
 * @param isBetter worth more than keeping and breeding her
 */
public record Alternative(Figure payoff, int untilMonthInMilk, LocalDate until, boolean isBetter) {}
