package org.pailbook.records.computed;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * The settings an answer was made with, and who gave each.
 *
 * @param validFrom first day of the herd's set that holds on the day of the answer; null if there is none
 */
@Schema(
        name = "UsedSettings",
        description = "The settings an answer was made with. The herd's are those that hold on its asOf day: a set of a"
                + " later day changes no answer for an earlier one")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record UsedSettingsView(
        @Schema(description = "First day of the herd's set that holds; absent if there is none, then all is usual")
        String validFrom,

        List<UsedSettingView> used) {

    /** One of them. */
    @Schema(name = "UsedSetting")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record UsedSettingView(
            @Schema(
                    enumeration = {
                        "waitingDays",
                        "checkDays",
                        "dryDays",
                        "colostrumDays",
                        "highFrom",
                        "tankLimit",
                        "closeCall"
                    })
            String setting,

            @Schema(description = "Its value, if it is a number")
            Double value,

            @Schema(description = "Its value, if it is one of a list")
            String choice,

            @Schema(
                    description =
                            "With the request, by the herd's settings, or nobody: what is usual stood in, of common practice or ours",
                    enumeration = {"asked", "herd", "usual"})
            String givenBy) {}
}
