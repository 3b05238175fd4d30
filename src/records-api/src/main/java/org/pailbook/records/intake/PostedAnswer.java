package org.pailbook.records.intake;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.wire.FindingView;

/**
 * Answer to one posted record.
 *
 * @param daysInMilk of the record's day, where it lies in a lactation; the calving day is 0
 * @param record the record as it now stands
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PostedAnswer<T>(
        @Schema(description = "Our id, UUID version 7") String id,
        Outcome outcome,

        @Schema(description = "1 for a new record, one more with every change")
        int version,

        @Schema(description = "Days in milk; the calving day is 0")
        Integer daysInMilk,

        T record,
        List<FindingView> findings) {}
