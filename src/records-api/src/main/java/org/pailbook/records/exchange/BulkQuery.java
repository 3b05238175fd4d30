package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** How many records at once are to be taken. */
public class BulkQuery {
    @QueryParam("dryRun")
    @Parameter(description = "true: judge all rows, store nothing", example = "false")
    String dryRun;

    @QueryParam("atomic")
    @Parameter(description = "true: store all rows or none; at most 20,000 rows", example = "false")
    String atomic;

    @QueryParam("report")
    @Parameter(
            description = "problems: report rows refused or with a warning; all: every row, up to 10,000",
            example = "problems")
    String report;

    BulkOptions options() {
        return BulkOptions.of(dryRun, atomic, report);
    }
}
