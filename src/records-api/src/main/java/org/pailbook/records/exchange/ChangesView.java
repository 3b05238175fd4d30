package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.wire.Action;

/**
 * Changes of a herd in the order in which they were made.
 *
 * @param nextAfter what to ask for next; the same as was asked for when there is nothing new
 * @param more whether there are further changes already
 */
@Schema(
        name = "Changes",
        description = "Every change of every kind, each once; who keeps nextAfter and asks again misses nothing",
        examples =
                "{\"changes\":[{\"seq\":4182,\"kind\":\"test-day\",\"id\":\"0198f3c2-5b1e-7c11-9d2a-3f1d6a7b0c55\",\"action\":\"updated\",\"version\":2,\"recordedAt\":\"2025-11-12T20:11:04Z\",\"record\":{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-11-12\",\"milkKg\":27.4}}],\"nextAfter\":4182,\"more\":false}")
public record ChangesView(
        List<ChangeView> changes,

        @Schema(description = "Ask with this as after for what comes next")
        long nextAfter,

        @Schema(description = "Whether there are further changes already")
        boolean more) {

    /**
     * One change.
     *
     * @param record as it was posted in that version; a withdrawal shows what was withdrawn
     */
    @Schema(name = "Change", description = "One version of one record")
    public record ChangeView(
            @Schema(description = "Number of the change, gap-free within the herd")
            long seq,

            @Schema(examples = "test-day") String kind,
            @Schema(description = "Our id of the record") String id,
            Action action,
            int version,
            @Schema(description = "UTC") String recordedAt,

            @Schema(type = SchemaType.OBJECT, implementation = Object.class, description = "As in that version")
            JsonNode record) {}
}
