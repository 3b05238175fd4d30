package org.pailbook.records.computed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.ParityGroup;
import org.pailbook.records.store.PriceRow;

/**
 * A herd's recorded prices as the value of a cow needs them. Milk, heifer and cull price decide it and are never made up: without one of them there is
 * none. The others, if not recorded, are of the invented reference set, and named.
 *
 * @param prices in the herd's currency
 * @param assumed what was not recorded
 */
record HerdPrices(CullingPrices prices, String currency, List<AssumedView> assumed) {

    /** Empty without a price of milk, heifers and cull cows. */
    static Optional<HerdPrices> of(PriceRow row) {
        if (row.milkPricePerKg == null || row.heiferPrice == null || row.cullPrice == null) {
            return Optional.empty();
        }
        List<AssumedView> assumed = new ArrayList<>();
        CullingPrices reference = CullingPrices.REFERENCE;
        double feed = known(
                row.feedPricePerKgDryMatter,
                "feedPricePerKgDryMatter",
                reference.lactatingFeedCuPerKgDryMatter(),
                assumed);
        // dry cows eat cheaper feed; recorded is one price for all
        double dryFeed = feed * reference.dryFeedCuPerKgDryMatter() / reference.lactatingFeedCuPerKgDryMatter();
        assumed.add(new AssumedView("/prices/feed of dry cows per kg of dry matter", dryFeed));
        assumed.add(new AssumedView("/prices/unplannedSaleShare", reference.unplannedSaleShare()));
        assumed.add(new AssumedView("/prices/interestPctPerYear", reference.interestPctPerYear()));
        CullingPrices prices = new CullingPrices(
                row.milkPricePerKg,
                feed,
                dryFeed,
                known(row.fixedCostPerCowMonth, "fixedCostPerCowMonth", reference.otherCostCuPerMonth(), assumed),
                // about one service in a month in which an open cow is bred
                known(row.servicePrice, "servicePrice", reference.breedingCuPerOpenMonth(), assumed),
                known(row.calfPrice, "calfPrice", reference.calfCu(), assumed),
                row.heiferPrice,
                row.cullPrice / meanWeightKg(),
                reference.unplannedSaleShare(),
                reference.interestPctPerYear());
        return Optional.of(new HerdPrices(prices, row.currency, List.copyOf(assumed)));
    }

    private static double known(Double recorded, String name, double reference, List<AssumedView> assumed) {
        if (recorded != null) {
            return recorded;
        }
        assumed.add(new AssumedView("/prices/" + name, reference));
        return reference;
    }

    /** A cull price is of a cow of mean weight; single parities are worth it by their weight. */
    private static double meanWeightKg() {
        return HerdParameters.REFERENCE.groups().stream()
                .mapToDouble(ParityGroup::bodyWeightKg)
                .average()
                .orElseThrow();
    }
}
