package org.pailbook.records.price;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.PriceRow;

/** What milk on the wire, in both directions. */
@Schema(
        name = "Price",
        description = "What milk, cows and feed cost from a day on",
        requiredProperties = {"validFrom", "currency"},
        examples =
                "{\"validFrom\":\"2025-11-01\",\"currency\":\"EUR\",\"milkPricePerKg\":0.46,\"heiferPrice\":1900,\"cullPrice\":900,\"calfPrice\":150}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PriceBody(
        @Schema(description = "First day; it holds until the next set")
        LocalDate validFrom,

        @Schema(description = "ISO 4217") String currency,

        @Schema(description = "Milk, per kg, in the currency")
        Double milkPricePerKg,

        @Schema(description = "Fat, per kg of fat, in the currency")
        Double fatPricePerKg,

        @Schema(description = "Protein, per kg of protein, in the currency")
        Double proteinPricePerKg,

        @Schema(description = "A heifer about to calve, in the currency")
        Double heiferPrice,

        @Schema(description = "A cow that is culled, in the currency")
        Double cullPrice,

        @Schema(description = "A calf; below 0 where it costs, in the currency")
        Double calfPrice,

        @Schema(description = "Feed, per kg of dry matter, in the currency")
        Double feedPricePerKgDryMatter,

        @Schema(description = "One service, in the currency")
        Double servicePrice,

        @Schema(description = "What a cow costs a month besides feed, in the currency")
        Double fixedCostPerCowMonth,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static PriceBody of(PriceRow row) {
        return new PriceBody(
                row.date,
                row.currency,
                row.milkPricePerKg,
                row.fatPricePerKg,
                row.proteinPricePerKg,
                row.heiferPrice,
                row.cullPrice,
                row.calfPrice,
                row.feedPricePerKgDryMatter,
                row.servicePrice,
                row.fixedCostPerCowMonth,
                row.note,
                row.source,
                row.sourceId);
    }
}
