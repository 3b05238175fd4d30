package org.pailbook.records.feed;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.FeedRow;

/**
 * A feed as shown to who made it.
 *
 * @param address only in the answer that made it
 */
@Schema(name = "Feed", description = "A feed; its address is shown once, in the answer that makes it")
@JsonInclude(JsonInclude.Include.NON_NULL)
record FeedView(
        String id,

        @Schema(description = "Path to open, with the secret in it; shown once")
        String address,

        String herd,
        String report,

        @Schema(description = "Id of the key that made it; the feed stops when that key does")
        String keyId,

        String createdAt,
        String expiresOn,
        String revokedAt,
        @Schema(description = "Last day it was used, UTC") String lastUsedOn) {

    /** @param token null where it is not to be shown */
    static FeedView of(FeedRow row, String herdCode, String token) {
        return new FeedView(
                row.id,
                token == null ? null : "/feeds/" + token + "/" + row.report + ".csv",
                herdCode,
                row.report,
                row.keyId,
                row.createdAt.toString(),
                row.expiresOn.toString(),
                row.revokedAt == null ? null : row.revokedAt.toString(),
                row.lastUsedOn == null ? null : row.lastUsedOn.toString());
    }

    FeedView withoutAddress() {
        return new FeedView(id, null, herd, report, keyId, createdAt, expiresOn, revokedAt, lastUsedOn);
    }
}
