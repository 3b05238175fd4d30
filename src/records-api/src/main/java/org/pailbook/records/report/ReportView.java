package org.pailbook.records.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A report that can be had, and what its columns are. */
@Schema(name = "Report")
record ReportView(
        @Schema(examples = "test-days") String name,
        @Schema(description = "What one row is") String meaning,
        List<String> addresses,
        List<ColumnView> columns) {

    /** One column. */
    @Schema(name = "ReportColumn")
    record ColumnView(
            @Schema(description = "In CSV and workbook", examples = "milk_kg")
            String name,

            @Schema(description = "In JSON", examples = "milkKg")
            String member,

            @Schema(enumeration = {"text", "date", "number", "boolean"})
            String kind,

            @Schema(description = "Empty for what has none") String unit,
            String meaning) {}

    static ReportView of(Report<?> report, String herdCode, LocalDate day) {
        String address = "/v1/herds/" + herdCode + "/reports/" + report.name();
        return new ReportView(
                report.name(),
                report.meaning(),
                List.of(address + ".csv", address + ".json", address + ".xlsx"),
                ReportRun.columns(report, day).stream()
                        .map(column -> new ColumnView(
                                column.name(),
                                column.member(),
                                column.kind().name().toLowerCase(Locale.ROOT),
                                column.unit(),
                                column.meaning()))
                        .toList());
    }
}
