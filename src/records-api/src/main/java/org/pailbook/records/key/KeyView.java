package org.pailbook.records.key;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.ApiKeyRow;

/**
 * A key as shown to administrators.
 *
 * @param key its text; only in the answer that made it
 */
@Schema(name = "Key", description = "A key; its text is shown once, in the answer that makes it")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record KeyView(
        String id,

        @Schema(description = "Text to send as X-API-Key; shown once")
        String key,

        String label,
        List<String> scopes,

        @Schema(description = "Codes of the herds it reaches, or *")
        List<String> herds,

        String createdAt,
        String expiresOn,
        String revokedAt,

        @Schema(description = "Until when the text before the last rotation works too")
        String previousWorksUntil,

        @Schema(description = "Last day it was used, UTC") String lastUsedOn) {

    static KeyView of(ApiKeyRow row, String text) {
        return new KeyView(
                row.id,
                text,
                row.label,
                List.of(row.scopes.split(" ")),
                List.of(row.herdCodes.split(" ")),
                row.createdAt.toString(),
                text(row.expiresOn),
                text(row.revokedAt),
                text(row.previousUntil),
                text(row.lastUsedOn));
    }

    KeyView withoutText() {
        return new KeyView(
                id, null, label, scopes, herds, createdAt, expiresOn, revokedAt, previousWorksUntil, lastUsedOn);
    }

    private static String text(Object value) {
        return value == null ? null : value.toString();
    }
}
