package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * One version of a record.
 *
 * @param recordedBy id of the key that wrote it
 * @param record as it was in that version
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record VersionView<T>(
        int version,

        @Schema(description = "When this version was written, UTC", examples = "2025-11-12T20:11:04Z")
        String recordedAt,

        @Schema(description = "Id of the key that wrote it") String recordedBy,
        @Schema(description = "Tool that sent it") String source,
        Action action,
        T record) {}
