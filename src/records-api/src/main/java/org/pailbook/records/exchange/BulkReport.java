package org.pailbook.records.exchange;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.io.output.DeferredFileOutputStream;
import org.jboss.logging.Logger;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.Grade;

/** Counts and row results of a bulk request while it runs; results beyond a megabyte wait in a temporary file. */
final class BulkReport implements RowSink, AutoCloseable {
    private static final Logger LOG = Logger.getLogger(BulkReport.class);
    private static final int MOST_IN_MEMORY = 1024 * 1024;
    /** With every row reported, so many at most; the counts go on. */
    private static final int MOST_ROWS_OF_ALL = 10_000;

    private final ObjectMapper json;
    private final boolean everyRow;
    private final Map<String, String> columnNames;
    private final Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
    private final DeferredFileOutputStream spool;
    private final JsonGenerator rows;
    private int received;
    private int reported;

    /**
     * @param everyRow whether to report rows without findings too
     * @param columnNames pointer within a record to column name; empty if the body is no table
     */
    BulkReport(ObjectMapper json, boolean everyRow, Map<String, String> columnNames) throws IOException {
        this.json = json;
        this.everyRow = everyRow;
        this.columnNames = columnNames;
        this.spool = DeferredFileOutputStream.builder()
                .setThreshold(MOST_IN_MEMORY)
                .setPrefix("pailbook-rows")
                .setSuffix(".json")
                .get();
        this.rows = json.createGenerator(spool);
        rows.writeStartArray();
    }

    @Override
    public <E extends StoredRecord> void add(RowOutcome<E> outcome) {
        received++;
        counts.merge(outcome.outcome(), 1, Integer::sum);
        boolean report = everyRow
                ? reported < MOST_ROWS_OF_ALL
                : outcome.outcome() == Outcome.REFUSED || hasWarning(outcome.findings());
        if (report) {
            reported++;
            try {
                write(outcome);
            } catch (IOException full) {
                throw spoolFailed(full);
            }
        }
    }

    /** The temporary folder is full or cannot be written to; that is nothing the sender did. */
    static Problem spoolFailed(IOException failure) {
        LOG.errorf("storage unavailable: row results could not be put by: %s", failure.getMessage());
        return new Problem(
                        ProblemCode.STORAGE_UNAVAILABLE,
                        "The results of the rows could not be put by until the answer goes out.")
                .withHeader("Retry-After", "30");
    }

    int received() {
        return received;
    }

    @Override
    public int count(Outcome outcome) {
        return counts.getOrDefault(outcome, 0);
    }

    /** What has been stored so far, in words, for a body that broke off. */
    String soFar() {
        return received + " rows were read before: " + count(Outcome.CREATED) + " created, " + count(Outcome.UPDATED)
                + " updated, " + count(Outcome.UNCHANGED) + " unchanged, " + count(Outcome.REFUSED) + " refused";
    }

    private static boolean hasWarning(List<FindingView> findings) {
        return !findings.isEmpty() && findings.stream().anyMatch(finding -> finding.grade() != Grade.INFO);
    }

    private <E extends StoredRecord> void write(RowOutcome<E> outcome) throws IOException {
        rows.writeStartObject();
        rows.writeNumberField("row", outcome.posted().row());
        if (outcome.posted().line() > 0) {
            rows.writeNumberField("line", outcome.posted().line());
        }
        rows.writeStringField("outcome", outcome.outcome().onWire());
        if (outcome.record() != null && outcome.record().id != null) {
            rows.writeStringField("id", outcome.record().id);
            rows.writeNumberField("version", outcome.record().version);
        }
        if (!outcome.findings().isEmpty()) {
            rows.writeArrayFieldStart("findings");
            for (FindingView finding : outcome.findings()) {
                json.writeValue(rows, withColumn(finding, outcome.posted().pointer()));
            }
            rows.writeEndArray();
        }
        rows.writeEndObject();
    }

    private FindingView withColumn(FindingView finding, String rowPointer) {
        if (finding.pointer() == null || !finding.pointer().startsWith(rowPointer)) {
            return finding;
        }
        String column = columnNames.get(finding.pointer().substring(rowPointer.length()));
        return column == null ? finding : finding.inColumn(column);
    }

    /** Ends the rows; call once, before {@link #writeTo}. */
    void end() {
        try {
            rows.writeEndArray();
            rows.close();
        } catch (IOException full) {
            throw spoolFailed(full);
        }
    }

    /** Writes the members of the report into an object that is open. */
    void writeTo(OutputStream out, boolean dryRun, boolean atomic, Map<String, Object> first) throws IOException {
        try (JsonGenerator answer = json.createGenerator(out)) {
            answer.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            answer.writeStartObject();
            for (Map.Entry<String, Object> member : first.entrySet()) {
                answer.writeObjectField(member.getKey(), member.getValue());
            }
            answer.writeNumberField("received", received);
            for (Outcome outcome : Outcome.OF_ROWS) {
                answer.writeNumberField(outcome.onWire(), count(outcome));
            }
            answer.writeBooleanField("dryRun", dryRun);
            answer.writeBooleanField("atomic", atomic);
            answer.writeNumberField("rowsReported", reported);
            answer.writeFieldName("rows");
            answer.writeRawValue("");
            answer.flush();
            try (InputStream spooled = spool.toInputStream()) {
                spooled.transferTo(out);
            }
            answer.writeEndObject();
        }
    }

    @Override
    public void close() throws IOException {
        spool.close();
        if (spool.getFile() != null) {
            Files.deleteIfExists(spool.getFile().toPath());
        }
    }
}
