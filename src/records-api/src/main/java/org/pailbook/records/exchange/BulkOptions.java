package org.pailbook.records.exchange;

import org.pailbook.records.intake.IntakeMode;
import org.pailbook.records.problem.Problem;

/**
 * What a bulk request asks for.
 *
 * @param dryRun judge all rows, store nothing
 * @param atomic store all rows or none
 * @param everyRow report rows without findings too
 */
public record BulkOptions(boolean dryRun, boolean atomic, boolean everyRow) {

    /** From the query parameters as they were sent. */
    static BulkOptions of(String dryRun, String atomic, String report) {
        if (report != null && !report.equals("all") && !report.equals("problems")) {
            throw Problem.badParameter("report", "expected all or problems", report);
        }
        return new BulkOptions(bool("dryRun", dryRun), bool("atomic", atomic), "all".equals(report));
    }

    IntakeMode mode() {
        if (dryRun) {
            return IntakeMode.DRY_RUN;
        }
        return atomic ? IntakeMode.ALL_OR_NOTHING : IntakeMode.STORE_GOOD_ROWS;
    }

    private static boolean bool(String name, String text) {
        if (text == null || text.equals("false")) {
            return false;
        }
        if (text.equals("true")) {
            return true;
        }
        throw Problem.badParameter(name, "expected true or false", text);
    }
}
