package org.pailbook.records.access;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** What the key of a request may do. */
@Schema(name = "Me", description = "What the key of this request may do")
public record MeView(
        String label,

        @Schema(description = "read, write, calculate, admin")
        List<String> scopes,

        @Schema(description = "Codes of the herds it reaches, or *")
        List<String> herds) {

    static MeView of(Caller caller) {
        return new MeView(
                caller.label(),
                caller.scopes().stream().map(Scope::onWire).toList(),
                caller.reachesEveryHerd()
                        ? List.of(KeyFilter.ALL_HERDS)
                        : caller.herdCodes().stream().sorted().toList());
    }
}
