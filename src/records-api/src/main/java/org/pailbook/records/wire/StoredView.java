package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A kept record.
 *
 * @param recordedAt when this version was written, UTC
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record StoredView<T>(
        @Schema(description = "Our id, UUID version 7") String id,
        int version,

        @Schema(description = "When this version was written, UTC", examples = "2025-11-12T20:11:04Z")
        String recordedAt,

        T record) {}
