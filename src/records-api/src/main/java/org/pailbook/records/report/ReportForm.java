package org.pailbook.records.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.Optional;

/** The forms a report comes in, by the end of its address. */
enum ReportForm {
    CSV("csv", "text/csv; charset=utf-8; header=present"),
    JSON("json", "application/json"),
    WORKBOOK("xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final String extension;
    private final String mediaType;

    ReportForm(String extension, String mediaType) {
        this.extension = extension;
        this.mediaType = mediaType;
    }

    static Optional<ReportForm> ofExtension(String extension) {
        return Arrays.stream(values())
                .filter(form -> form.extension.equals(extension))
                .findFirst();
    }

    String extension() {
        return extension;
    }

    String mediaType() {
        return mediaType;
    }

    /** Writes the report; the stream is flushed and left open. */
    void write(ReportRun<?> run, boolean isDecimalComma, OutputStream out) throws IOException {
        switch (this) {
            case CSV -> run.writeTo(new CsvForm(out, isDecimalComma));
            case JSON ->
                run.writeTo(
                        new JsonTable(MAPPER.createGenerator(out), run.report().name(), run.herd(), run.asOf()));
            case WORKBOOK -> run.writeTo(new WorkbookTable(out, run.report(), run.herd(), run.asOf()));
        }
    }
}
