package org.pailbook.records.key;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.Scope;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.Herds;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** What a new key is to be. */
@Schema(
        name = "NewKey",
        requiredProperties = {"label", "scopes", "herds"},
        examples =
                "{\"label\":\"parlour scale\",\"scopes\":[\"read\",\"write\"],\"herds\":[\"ash-lane\"],\"expiresOn\":\"2027-12-31\"}")
record NewKey(
        @Schema(description = "Who holds it") String label,

        @Schema(description = "read, write, calculate, admin")
        List<String> scopes,

        @Schema(description = "Codes of herds, or * alone") List<String> herds,
        @Schema(description = "Last day it works, UTC") LocalDate expiresOn) {

    private static final int MOST_HERDS = 90;

    static NewKey read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        String label = fields.requiredText("label", 200);
        fields.require("scopes");
        List<String> scopes = fields.texts("scopes", Scope.values().length, 20);
        fields.require("herds");
        List<String> herds = fields.texts("herds", MOST_HERDS, 40);
        LocalDate expiresOn = fields.date("expiresOn");
        fields.finish();
        if (scopes != null) {
            for (String scope : scopes) {
                if (EnumSet.allOf(Scope.class).stream()
                        .noneMatch(known -> known.onWire().equals(scope))) {
                    fields.findings()
                            .add(FindingView.error(
                                            "unknown-code", "/scopes", "must be of read, write, calculate, admin")
                                    .seen(scope));
                }
            }
            if (scopes.isEmpty()) {
                fields.findings().add(FindingView.error("required", "/scopes", "must hold at least one scope"));
            }
        }
        if (herds != null) {
            boolean all = herds.equals(List.of(Caller.ALL_HERDS));
            if (herds.isEmpty() || (!all && !herds.stream().allMatch(Herds::isCode))) {
                fields.findings()
                        .add(FindingView.error("bad-code", "/herds", "must be codes of herds, or * alone")
                                .seen(herds.toString()));
            }
        }
        if (!fields.findings().isEmpty()) {
            throw Problem.validation(
                    fields.findings().stream().map(FindingView::asFault).toList());
        }
        return new NewKey(label, scopes, herds, expiresOn);
    }

    Set<Scope> scopeSet() {
        EnumSet<Scope> set = EnumSet.noneOf(Scope.class);
        scopes.forEach(name -> set.add(Scope.valueOf(name.toUpperCase(Locale.ROOT))));
        return set;
    }
}
