package org.pailbook.records.feed;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** What a new feed is to show. */
@Schema(
        name = "NewFeed",
        requiredProperties = {"herd", "report", "expiresOn"},
        examples = "{\"herd\":\"ash-lane\",\"report\":\"test-days\",\"expiresOn\":\"2026-12-31\"}")
record NewFeed(
        @Schema(description = "Code of the herd") String herd,

        @Schema(description = "Name of a report, as the list of the herd's reports has it: test-days")
        String report,

        @Schema(description = "Last day it works, UTC; at most 400 days from today")
        LocalDate expiresOn) {
    private static final int MOST_DAYS = 400;

    static NewFeed read(ObjectNode body, LocalDate today, FeedTables tables) {
        Fields fields = new Fields(body, "");
        String herd = fields.requiredText("herd", 40);
        String report = fields.requiredText("report", 40);
        LocalDate expiresOn = fields.requiredDate("expiresOn");
        fields.finish();
        if (report != null && tables.named(report).isEmpty()) {
            fields.findings()
                    .add(FindingView.error("unknown-code", "/report", "must be one of " + tables.names())
                            .seen(report));
        }
        if (expiresOn != null && (expiresOn.isBefore(today) || expiresOn.isAfter(today.plusDays(MOST_DAYS)))) {
            fields.findings()
                    .add(FindingView.error("out-of-range", "/expiresOn", "must be a day from today to 400 days on")
                            .seen(expiresOn.toString()));
        }
        if (!fields.findings().isEmpty()) {
            throw Problem.validation(
                    fields.findings().stream().map(FindingView::asFault).toList());
        }
        return new NewFeed(herd, report, expiresOn);
    }
}
