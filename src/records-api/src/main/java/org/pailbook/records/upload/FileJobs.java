package org.pailbook.records.upload;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.pailbook.records.exchange.BulkOptions;
import org.pailbook.records.exchange.BulkRun;
import org.pailbook.records.exchange.CsvRows;
import org.pailbook.records.exchange.RowSink;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.TableStatistics;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.Grade;

/** Judges or takes the rows of a file beside the requests, chunk by chunk, through the intake of all records. */
@ApplicationScoped
public class FileJobs {
    private static final Logger LOG = Logger.getLogger(FileJobs.class);
    private static final int AT_ONCE = 2;
    private static final long LONGEST_END_SECONDS = 60;

    private final Worker worker;
    private final ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);

    @Inject
    FileJobs(Worker worker) {
        this.worker = worker;
    }

    /**
     * Begins; a file that is being judged or taken already goes on as it is.
     *
     * @param isTrial whether nothing is to be stored
     */
    public void begin(PendingFile file, RecordKind<?> kind, HerdRow herd, String keyId, boolean isTrial) {
        FileMapping mapping = file.mapping().orElseThrow();
        FileJob job = new FileJob(isTrial, file.view().orElseThrow().rowsToTake(mapping.hasHeader()));
        if (file.begin(job)) {
            threads.execute(() -> worker.run(file, mapping, kind, herd, keyId, job));
        }
    }

    @PreDestroy
    void end() throws InterruptedException {
        threads.shutdown();
        threads.awaitTermination(LONGEST_END_SECONDS, TimeUnit.SECONDS);
    }

    /** Does one job in its thread. */
    @ApplicationScoped
    static class Worker {
        private static final String REFUSED_WITHOUT_A_WORD = "was refused";

        private final RecordIntake intake;
        private final TableStatistics statistics;

        @Inject
        Worker(RecordIntake intake, TableStatistics statistics) {
            this.intake = intake;
            this.statistics = statistics;
        }

        @ActivateRequestContext
        void run(PendingFile file, FileMapping mapping, RecordKind<?> kind, HerdRow herd, String keyId, FileJob job) {
            try {
                take(file, mapping, kind, herd, keyId, job);
            } catch (IOException | RuntimeException failed) {
                // there is no request to answer: it is told where the job is looked at
                LOG.errorf(failed, "a file could not be taken to its end");
                job.breakOff();
            }
        }

        private <E extends StoredRecord> void take(
                PendingFile file, FileMapping mapping, RecordKind<E> kind, HerdRow herd, String keyId, FileJob job)
                throws IOException {
            FileView view = file.view().orElseThrow();
            List<String> headings = view.headings(mapping.hasHeader());
            try (TextTable table = TextTable.open(file.path(), view.charset(), view.separator())) {
                if (mapping.hasHeader()) {
                    readHeading(table);
                }
                MappedTable mapped =
                        new MappedTable(table, mapping, kind.columns(), herd.zone(), ragged -> tell(job, ragged));
                CsvRows rows = new CsvRows(mapped, kind.columns());
                Map<String, String> columns = namesByPointer(kind, mapping, headings);
                RowSink sink = new Rows(job, mapped, columns);
                new BulkRun<>(intake, statistics, kind, herd, keyId, options(job), Integer.MAX_VALUE, sink)
                        .take(rows, Runnable::run);
                job.end(mapped.fault());
            }
        }

        private static void readHeading(TextTable table) {
            try {
                table.next();
            } catch (FileFault.Unreadable looked) {
                throw new IllegalStateException("the heading was read before", looked);
            }
        }

        private static BulkOptions options(FileJob job) {
            return new BulkOptions(job.isTrial(), false, false);
        }

        /** Tells the job of rows by their lines in the file. */
        private record Rows(FileJob job, MappedTable mapped, Map<String, String> columns) implements RowSink {
            @Override
            public <E extends StoredRecord> void add(RowOutcome<E> outcome) {
                int line = mapped.lineOf(outcome.posted().row());
                boolean isRefused = outcome.outcome() == Outcome.REFUSED;
                List<FindingView> findings = outcome.findings().stream()
                        .filter(finding -> finding.grade() != Grade.INFO)
                        .toList();
                job.count(outcome.outcome(), !findings.isEmpty() && !isRefused);
                findings.forEach(finding ->
                        job.tell(told(line, isRefused, finding, outcome.posted().pointer(), columns)));
                if (isRefused && findings.isEmpty()) {
                    job.tell(new FileJob.Told(line, true, "", "", REFUSED_WITHOUT_A_WORD));
                }
            }

            @Override
            public int count(Outcome outcome) {
                return job.count(outcome);
            }
        }

        private static FileJob.Told told(
                int line, boolean isRefused, FindingView finding, String rowPointer, Map<String, String> columns) {
            String place = finding.pointer() != null && finding.pointer().startsWith(rowPointer)
                    ? finding.pointer().substring(rowPointer.length())
                    : "";
            return new FileJob.Told(
                    line,
                    isRefused,
                    columns.getOrDefault(place, place.replace("/", " ").strip()),
                    finding.value() == null ? "" : finding.value(),
                    finding.expected() == null
                            ? finding.message()
                            : finding.message() + " (expected " + finding.expected() + ")");
        }

        private static void tell(FileJob job, MappedTable.Ragged ragged) {
            job.count(Outcome.REFUSED, false);
            job.tell(new FileJob.Told(
                    ragged.line(),
                    true,
                    "",
                    "",
                    "has " + ragged.cells() + " cells (expected " + ragged.expected() + ")"));
        }

        /** What the file calls each member of the record. */
        private static Map<String, String> namesByPointer(
                RecordKind<?> kind, FileMapping mapping, List<String> headings) {
            return kind.columns().stream()
                    .filter(column -> mapping.placeOf(column.name()) >= 0)
                    .collect(Collectors.toMap(Column::pointer, column -> headings.get(mapping.placeOf(column.name()))));
        }
    }
}
