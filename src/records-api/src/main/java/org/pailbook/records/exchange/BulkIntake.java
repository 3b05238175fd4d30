package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.TableStatistics;
import org.pailbook.records.wire.LimitedBody;
import org.pailbook.records.wire.StrictJson;

/** Reads a body of many records and takes them chunk by chunk. */
@ApplicationScoped
public class BulkIntake {
    public static final String JSON = "application/json";
    public static final String NDJSON = "application/x-ndjson";
    public static final String CSV = "text/csv";

    private static final int MOST_ROWS = 200_000;
    private static final int MOST_ROWS_ATOMIC = 20_000;
    private static final long MOST_BYTES = 32L * 1024 * 1024;

    private final RecordIntake intake;
    private final TableStatistics statistics;
    private final ObjectMapper json;
    /** Chunks are stored there; as many threads as there are bodies being taken. */
    private final ExecutorService beside = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "bulk-store");
        thread.setDaemon(true);
        return thread;
    });

    @Inject
    BulkIntake(RecordIntake intake, TableStatistics statistics, ObjectMapper json) {
        this.intake = intake;
        this.statistics = statistics;
        this.json = json;
    }

    @PreDestroy
    void end() {
        beside.shutdown();
    }

    /**
     * Takes all rows of the body.
     *
     * @return counts and row results, ended; to be closed after it was written out
     */
    <E extends StoredRecord> BulkReport take(
            RecordKind<E> kind, HerdRow herd, String writtenBy, String mediaType, InputStream body, BulkOptions options)
            throws IOException {
        boolean table = mediaType.equals(CSV);
        BulkReport report = new BulkReport(
                json, options.everyRow(), table ? CsvRows.columnNamesByPointer(kind.columns()) : Map.of());
        try {
            int mostRows = options.atomic() ? MOST_ROWS_ATOMIC : MOST_ROWS;
            new BulkRun<>(intake, statistics, kind, herd, writtenBy, options, mostRows, report)
                    .take(reader(kind, mediaType, new LimitedBody(body, MOST_BYTES)), beside);
            report.end();
            return report;
        } catch (IOException unreadable) {
            report.close();
            throw brokenOff(StrictJson.unreadable(unreadable), options, report);
        } catch (Problem problem) {
            report.close();
            throw brokenOff(problem, options, report);
        } catch (RuntimeException failure) {
            report.close();
            throw failure;
        }
    }

    /** How many rows were taken and how many refused. */
    public record Counts(int received, int refused) {}

    /** Takes a file that is at hand, storing every good row. */
    public <E extends StoredRecord> Counts takeFile(
            RecordKind<E> kind, HerdRow herd, String writtenBy, String mediaType, InputStream body) throws IOException {
        try (BulkReport report = take(kind, herd, writtenBy, mediaType, body, new BulkOptions(false, false, false))) {
            return new Counts(report.received(), report.count(Outcome.REFUSED));
        }
    }

    private static RowReader reader(RecordKind<?> kind, String mediaType, InputStream body) throws IOException {
        return switch (mediaType) {
            case JSON -> new JsonRows(body);
            case NDJSON -> new NdjsonRows(body);
            case CSV -> new CsvRows(body, kind.columns());
            default ->
                throw new Problem(
                                ProblemCode.UNSUPPORTED_MEDIA_TYPE, "Send " + JSON + ", " + NDJSON + " or " + CSV + ".")
                        .withHeader(HttpHeaders.ACCEPT, JSON + ", " + NDJSON + ", " + CSV + ", " + FormFile.MEDIA_TYPE);
        };
    }

    /** The media type of a Content-Type header, its charset checked: only UTF-8 is read. */
    static String mediaType(String contentType) {
        String[] parts = (contentType == null ? "" : contentType).split(";");
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].strip().toLowerCase(Locale.ROOT).replace("\"", "");
            if (parameter.startsWith("charset=") && !parameter.equals("charset=utf-8")) {
                throw new Problem(ProblemCode.UNSUPPORTED_MEDIA_TYPE, "The charset must be UTF-8.");
            }
        }
        return parts[0].strip().toLowerCase(Locale.ROOT);
    }

    /** A body that could not be read to its end: what was stored before stays, and a resend does no harm. */
    private static Problem brokenOff(Problem problem, BulkOptions options, BulkReport report) {
        boolean stored = !options.atomic()
                && !options.dryRun()
                && report.count(Outcome.CREATED) + report.count(Outcome.UPDATED) > 0;
        String fate = stored
                ? report.soFar() + "; those stay stored, and sending the whole body again does no harm."
                : "Nothing was stored.";
        String why = problem.getMessage();
        Problem told = new Problem(problem.code(), why + (why.endsWith(".") ? " " : ". ") + fate, problem.faults());
        problem.headers().forEach(told::withHeader);
        return told;
    }
}
