package org.pailbook.lactation.culling;

/**
 * What milk, feed, calves, cows and time are worth on a farm. Money in the user's currency units (cu).
 *
 * @param milkCuPerKg paid for a kg of milk, after what is taken off it
 * @param lactatingFeedCuPerKgDryMatter feed of cows in milk, cu per kg of dry matter
 * @param dryFeedCuPerKgDryMatter feed of dry cows, cu per kg of dry matter
 * @param otherCostCuPerMonth every other cost of a cow, cu per month of 30.4375 days
 * @param breedingCuPerOpenMonth inseminations and checks, cu per month in which an open cow is bred (months 3 to 12)
 * @param calfCu a calf at birth; below 0 where it costs
 * @param heiferCu a heifer that calves today, the replacement
 * @param saleCuPerKgLive a cow sold by choice, cu per kg live weight
 * @param unplannedSaleShare share of that received when she leaves unplanned, 0 to 1
 * @param interestPctPerYear what money costs a year; above 0
 */
public record CullingPrices(
        double milkCuPerKg,
        double lactatingFeedCuPerKgDryMatter,
        double dryFeedCuPerKgDryMatter,
        double otherCostCuPerMonth,
        double breedingCuPerOpenMonth,
        double calfCu,
        double heiferCu,
        double saleCuPerKgLive,
        double unplannedSaleShare,
        double interestPctPerYear) {

    /**
     * Invented, of realistic size (ours): for checking arithmetic, and to stand in, marked, where a user has not said. Interest of 5 % a
     * year is a default of ours.
     */
    public static final CullingPrices REFERENCE = new CullingPrices(0.45, 0.26, 0.18, 45, 25, 120, 1700, 1.30, 0.45, 5);

    private static final double MONTHS_PER_YEAR = 12;

    public CullingPrices {
        requireNotNegative("milkCuPerKg", milkCuPerKg);
        requireNotNegative("lactatingFeedCuPerKgDryMatter", lactatingFeedCuPerKgDryMatter);
        requireNotNegative("dryFeedCuPerKgDryMatter", dryFeedCuPerKgDryMatter);
        requireNotNegative("otherCostCuPerMonth", otherCostCuPerMonth);
        requireNotNegative("breedingCuPerOpenMonth", breedingCuPerOpenMonth);
        if (!Double.isFinite(calfCu)) {
            throw new IllegalArgumentException("calfCu (" + calfCu + ") must be finite");
        }
        requireNotNegative("heiferCu", heiferCu);
        requireNotNegative("saleCuPerKgLive", saleCuPerKgLive);
        if (!(unplannedSaleShare >= 0 && unplannedSaleShare <= 1)) {
            throw new IllegalArgumentException("unplannedSaleShare (" + unplannedSaleShare + ") must be 0 to 1");
        }
        if (!(interestPctPerYear > 0 && interestPctPerYear <= 100)) {
            throw new IllegalArgumentException(
                    "interestPctPerYear (" + interestPctPerYear + ") must be above 0 and at most 100");
        }
    }

    private static void requireNotNegative(String name, double cu) {
        if (!(cu >= 0 && cu < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " (" + cu + ") must be 0 or more");
        }
    }

    /** What a cu of the next month is worth today: {@code (1 + r)^(-1/12)}. */
    public double monthlyDiscountFactor() {
        return Math.pow(1 + interestPctPerYear / 100, -1 / MONTHS_PER_YEAR);
    }

    public CullingPrices withMilkCuPerKg(double cuPerKg) {
        return new CullingPrices(
                cuPerKg,
                lactatingFeedCuPerKgDryMatter,
                dryFeedCuPerKgDryMatter,
                otherCostCuPerMonth,
                breedingCuPerOpenMonth,
                calfCu,
                heiferCu,
                saleCuPerKgLive,
                unplannedSaleShare,
                interestPctPerYear);
    }

    public CullingPrices withHeiferCu(double cu) {
        return new CullingPrices(
                milkCuPerKg,
                lactatingFeedCuPerKgDryMatter,
                dryFeedCuPerKgDryMatter,
                otherCostCuPerMonth,
                breedingCuPerOpenMonth,
                calfCu,
                cu,
                saleCuPerKgLive,
                unplannedSaleShare,
                interestPctPerYear);
    }
}
