package org.pailbook.records.computed;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.records.wire.Fields;

/** Prices as posted; what was left out is taken from the invented reference set and noted. */
public final class PostedPrices {
    /** Beyond this no farm's price lies, in whatever currency. Ours. */
    private static final double MOST_CU = 1e9;

    private static final double LEAST_INTEREST_PCT = 0.1;
    private static final double MOST_INTEREST_PCT = 50;

    private PostedPrices() {}

    /** The members as they stand in the description of the API. */
    @Schema(
            name = "CullingPrices",
            description =
                    "Money in your currency units; a member left out takes the value of an invented reference set,"
                            + " and the answer names it",
            examples = "{\"milkCuPerKg\":0.48,\"heiferCu\":1900,\"saleCuPerKgLive\":1.45}")
    public record Members(
            @Schema(description = "Paid for a kg of milk, after what is taken off it")
            Double milkCuPerKg,

            @Schema(description = "Feed of cows in milk, per kg of dry matter")
            Double lactatingFeedCuPerKgDryMatter,

            @Schema(description = "Feed of dry cows, per kg of dry matter")
            Double dryFeedCuPerKgDryMatter,

            @Schema(description = "Every other cost of a cow, per month")
            Double otherCostCuPerMonth,

            @Schema(description = "Inseminations and checks, per month in which an open cow is bred")
            Double breedingCuPerOpenMonth,

            Double calfCu,

            @Schema(description = "The replacement, a heifer that calves today; above what she would be sold for")
            Double heiferCu,

            @Schema(description = "A cow sold by choice, per kg live weight")
            Double saleCuPerKgLive,

            @Schema(description = "Share of that received on an unplanned exit, 0 to 1")
            Double unplannedSaleShare,

            @Schema(description = "What money costs, percent a year", minimum = "0.1", maximum = "50")
            Double interestPctPerYear) {}

    /**
     * @param prices the object of prices; null if there is none
     * @param at its pointer
     * @param assumed takes what stood in
     */
    public static CullingPrices read(Fields prices, String at, List<AssumedView> assumed) {
        CullingPrices read = new CullingPrices(
                money(prices, at, "milkCuPerKg", CullingPrices::milkCuPerKg, assumed),
                money(
                        prices,
                        at,
                        "lactatingFeedCuPerKgDryMatter",
                        CullingPrices::lactatingFeedCuPerKgDryMatter,
                        assumed),
                money(prices, at, "dryFeedCuPerKgDryMatter", CullingPrices::dryFeedCuPerKgDryMatter, assumed),
                money(prices, at, "otherCostCuPerMonth", CullingPrices::otherCostCuPerMonth, assumed),
                money(prices, at, "breedingCuPerOpenMonth", CullingPrices::breedingCuPerOpenMonth, assumed),
                money(prices, at, "calfCu", CullingPrices::calfCu, assumed),
                money(prices, at, "heiferCu", CullingPrices::heiferCu, assumed),
                money(prices, at, "saleCuPerKgLive", CullingPrices::saleCuPerKgLive, assumed),
                number(prices, at, "unplannedSaleShare", 0, 1, CullingPrices::unplannedSaleShare, assumed),
                number(
                        prices,
                        at,
                        "interestPctPerYear",
                        LEAST_INTEREST_PCT,
                        MOST_INTEREST_PCT,
                        CullingPrices::interestPctPerYear,
                        assumed));
        if (prices != null) {
            prices.finish();
        }
        return read;
    }

    private static double money(
            Fields prices,
            String at,
            String name,
            ToDoubleFunction<CullingPrices> reference,
            List<AssumedView> assumed) {
        return number(prices, at, name, 0, MOST_CU, reference, assumed);
    }

    private static double number(
            Fields prices,
            String at,
            String name,
            double least,
            double most,
            ToDoubleFunction<CullingPrices> reference,
            List<AssumedView> assumed) {
        Double posted = prices == null ? null : prices.measure(name, least, most);
        if (posted != null) {
            return posted;
        }
        double value = reference.applyAsDouble(CullingPrices.REFERENCE);
        if (prices == null || !prices.has(name)) {
            assumed.add(new AssumedView(at + "/" + name, value));
        }
        return value;
    }
}
