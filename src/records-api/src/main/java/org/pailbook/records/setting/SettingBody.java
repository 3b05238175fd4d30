package org.pailbook.records.setting;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.SettingRow;

/** A set of settings on the wire, in both directions. */
@Schema(
        name = "Setting",
        description =
                "How the farm decides, from a day on. A set holds as a whole until the next: what it leaves out is"
                        + " as usual, not as in the set before. Every answer names what it used",
        requiredProperties = {"validFrom"},
        examples =
                "{\"validFrom\":\"2025-11-01\",\"waitingDays\":60,\"checkDays\":28,\"dryDays\":55,\"tankLimit\":\"eu-853-2004\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SettingBody(
        @Schema(description = "First day; it holds until the next set")
        LocalDate validFrom,

        @Schema(
                description = "Voluntary waiting period, days after calving; 50 if left out, common practice",
                minimum = "0",
                maximum = "300")
        Integer waitingDays,

        @Schema(
                description =
                        "Days after a service from which a check is done; 35 if left out, common practice by hand",
                minimum = "18",
                maximum = "120")
        Integer checkDays,

        @Schema(
                description = "Days dry before calving; 60 if left out, a long-standing standard",
                minimum = "0",
                maximum = "120")
        Integer dryDays,

        @Schema(
                description =
                        "The calving day and so many days after it stay out of the tank; 4 if left out. Local rules differ: ask"
                                + " your buyer or authority",
                minimum = "0",
                maximum = "30")
        Integer colostrumDays,

        @Schema(
                description = "Count from which a test is high, thousand per mL; 200 if left out",
                minimum = "100",
                maximum = "400")
        Integer highFrom,

        @Schema(
                description =
                        "Limit to hold the tank against, one of those getUdderHealth lists; none if left out: ask your buyer or"
                                + " authority",
                examples = "eu-853-2004")
        String tankLimit,

        @Schema(
                description =
                        "Pay-offs nearer to zero than this are a close call, in the currency of your prices; 100 if left out, ours")
        Double closeCall,

        @Schema(
                description = "Unit of milk on pages; every other answer is in kg",
                enumeration = {"kg", "lb"})
        String milkUnit,

        @Schema(
                description =
                        "Usual ranges of what is measured, moved outwards for records of this day and later: those within are not"
                                + " warned of, and a warning names the limit it used. At most 10")
        List<WarningLimits.WarningLimitBody> warningLimits,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static SettingBody of(SettingRow row) {
        return new SettingBody(
                row.date,
                row.waitingDays,
                row.checkDays,
                row.dryDays,
                row.colostrumDays,
                row.highFrom,
                row.tankLimit,
                row.closeCall,
                row.milkUnit,
                WarningLimits.view(row.warningLimits),
                row.note,
                row.source,
                row.sourceId);
    }
}
