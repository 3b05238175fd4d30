package org.pailbook.records.page;

import java.util.List;
import java.util.Optional;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.upload.FileJob;
import org.pailbook.records.upload.PendingFile;

/** What the pages for bringing in a file show. */
final class ImportPages {
    private ImportPages() {}

    /** One of several to choose. */
    record Choice(String value, String word, boolean isChosen) {}

    /** Choosing a file. @param fault why the last one could not be read; empty text without one */
    record ChoosePage(Shown shown, String fault) {}

    /** Asking for the encoding. */
    record EncodingPage(Shown shown, String fileId, String fileName, List<Choice> encodings) {}

    /** One column of the file. */
    record ColumnLine(int place, String heading, String examples, List<Choice> choices) {}

    /**
     * Something to be said about the file.
     *
     * @param name of its field
     * @param text what is asked
     * @param evidence what the file shows
     */
    record Question(String name, String text, String evidence, List<Choice> choices) {
        public boolean isOpen() {
            return choices.stream().noneMatch(Choice::isChosen);
        }
    }

    /**
     * Giving the columns a meaning.
     *
     * @param isRemembered whether it is what was said of such a file before
     * @param isOfRefusedRows whether it is a table of refused rows, brought in again
     * @param problems what must be said before the rows can be judged
     */
    record MapPage(
            Shown shown,
            String fileId,
            String fileName,
            int rows,
            boolean isRemembered,
            boolean isOfRefusedRows,
            List<Choice> kinds,
            List<ColumnLine> columns,
            List<Question> questions,
            boolean asksScheme,
            String scheme,
            String source,
            List<String> problems,
            List<List<String>> first) {}

    /** How the rows fare. */
    record JobPage(
            Shown shown,
            String fileId,
            String fileName,
            String kind,
            boolean isTrial,
            boolean isRunning,
            boolean isBroken,
            String brokenOff,
            int done,
            int total,
            int created,
            int updated,
            int unchanged,
            int refused,
            int warnings,
            List<FileJob.Told> told,
            int notTold,
            List<String> previewHead,
            List<List<String>> preview) {
        static JobPage of(
                Shown shown,
                PendingFile file,
                FileJob job,
                String kind,
                List<String> previewHead,
                List<List<String>> preview) {
            return new JobPage(
                    shown,
                    file.id(),
                    file.name(),
                    kind,
                    job.isTrial(),
                    job.isRunning(),
                    job.isBroken(),
                    job.fault()
                            .map(fault -> PageWords.with(
                                    "import.brokenOff",
                                    fault.line(),
                                    PageWords.word(fault.fault().wordKey())))
                            .orElse(""),
                    job.done(),
                    job.total(),
                    job.count(Outcome.CREATED),
                    job.count(Outcome.UPDATED),
                    job.count(Outcome.UNCHANGED) + job.count(Outcome.SUPERSEDED),
                    job.count(Outcome.REFUSED),
                    job.warnings(),
                    job.told(),
                    job.notTold(),
                    previewHead,
                    preview);
        }

        public int good() {
            return created + updated;
        }

        public int mostRefused() {
            return FileJob.MOST_REFUSED;
        }

        public boolean isChangeable() {
            return isTrial && !isRunning && !isBroken && good() > 0;
        }

        public Optional<String> broken() {
            return brokenOff.isEmpty() ? Optional.empty() : Optional.of(brokenOff);
        }
    }
}
