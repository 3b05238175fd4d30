package org.pailbook.records.key;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.Scope;

/** What the key of a request may do. */
@Schema(name = "Me", description = "What the key of this request may do")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MeView(
        @Schema(description = "Id of the key; it stands in the history of what the key writes")
        String keyId,

        String label,

        @Schema(description = "read, write, calculate, admin")
        List<String> scopes,

        @Schema(description = "Codes of the herds it reaches, or *")
        List<String> herds,

        @Schema(description = "Last day the key works, UTC; absent if it does not expire")
        String expiresOn) {

    static MeView of(Caller caller) {
        return new MeView(
                caller.keyId(),
                caller.label(),
                caller.scopes().stream().map(Scope::onWire).toList(),
                caller.reachesEveryHerd()
                        ? List.of(Caller.ALL_HERDS)
                        : caller.herdCodes().stream().sorted().toList(),
                caller.key().map(key -> key.expiresOn).map(LocalDate::toString).orElse(null));
    }
}
