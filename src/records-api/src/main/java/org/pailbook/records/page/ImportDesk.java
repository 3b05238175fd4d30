package org.pailbook.records.page;

import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.upload.FileJob;
import org.pailbook.records.upload.FileJobs;
import org.pailbook.records.upload.FileMapping;
import org.pailbook.records.upload.PendingFile;
import org.pailbook.records.upload.PendingFiles;

/** What every step of bringing in a file needs: the herd, the file of who asks, and the way from step to step. */
@ApplicationScoped
public class ImportDesk {
    /** A short file is through before the page is shown; nobody need look twice then. */
    private static final int LOOKS_BEFORE_ANSWER = 40;

    private static final long BETWEEN_LOOKS_NANOS = 50_000_000;

    private final HerdAccess access;
    private final Caller caller;
    private final PendingFiles files;
    private final FileJobs jobs;
    private final ImportForm form;
    private final PageDesk desk;

    @Inject
    ImportDesk(HerdAccess access, Caller caller, PendingFiles files, FileJobs jobs, ImportForm form, PageDesk desk) {
        this.access = access;
        this.caller = caller;
        this.files = files;
        this.jobs = jobs;
        this.form = form;
        this.desk = desk;
    }

    HerdRow toRead(String herdCode) {
        return access.toRead(herdCode);
    }

    HerdRow toWrite(String herdCode) {
        return access.toWrite(herdCode);
    }

    String keyId() {
        return caller.keyId();
    }

    Shown shown(HerdRow herd, PageQuery query) {
        return desk.shown(herd, query);
    }

    /** A file the same key chose before; empty if it is gone. */
    Optional<PendingFile> file(HerdRow herd, String fileId) {
        return files.of(herd, caller.keyId(), fileId);
    }

    /** The page to choose a file. @param fault why the last one could not be read; empty text without one */
    TemplateInstance chooser(HerdRow herd, PageQuery query, String fault) {
        return Templates.importFile(new ImportPages.ChoosePage(desk.shown(herd, query), fault));
    }

    /** The same when the file asked for is no longer kept. */
    TemplateInstance gone(HerdRow herd) {
        return chooser(herd, new PageQuery(), PageWords.word("import.gone"));
    }

    /** Where a step of bringing in that file is. */
    static String address(HerdRow herd, PendingFile file, String rest) {
        return "/pages/herds/" + herd.code + "/import/" + file.id() + rest;
    }

    /** Begins to judge or take the rows; tells where to look on. */
    String begin(HerdRow herd, PendingFile file, FileMapping mapping, boolean isTrial) {
        jobs.begin(file, form.kind(mapping.kind()), herd, caller.keyId(), isTrial);
        for (int look = 0;
                look < LOOKS_BEFORE_ANSWER
                        && file.job().filter(FileJob::isRunning).isPresent();
                look++) {
            LockSupport.parkNanos(BETWEEN_LOOKS_NANOS);
        }
        return address(herd, file, "/rows");
    }
}
