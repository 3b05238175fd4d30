package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A kept record.
 *
 * @param recordedAt when this version was written, UTC
 * @param withdrawn true if this version took it out of force; else absent
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record StoredView<T>(
        @Schema(description = "Our id, UUID version 7") String id,
        int version,

        @Schema(description = "When this version was written, UTC", examples = "2025-11-12T20:11:04Z")
        String recordedAt,

        @Schema(description = "true if the record is not in force; absent otherwise")
        Boolean withdrawn,

        T record) {
    /** @param isWithdrawn whether this version took the record out of force */
    public static <T> StoredView<T> of(String id, int version, Instant recordedAt, boolean isWithdrawn, T record) {
        return new StoredView<>(id, version, recordedAt.toString(), isWithdrawn ? Boolean.TRUE : null, record);
    }
}
