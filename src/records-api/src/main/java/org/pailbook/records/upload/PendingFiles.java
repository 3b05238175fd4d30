package org.pailbook.records.upload;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;
import org.pailbook.records.exchange.FormFile;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.LimitedBody;

/** Chosen files, each for a while in the temporary folder of this machine; gone with the service, and then chosen again. */
@ApplicationScoped
public class PendingFiles {
    private static final Logger LOG = Logger.getLogger(PendingFiles.class);
    private static final Duration KEPT = Duration.ofHours(2);
    private static final int MOST_FILES = 20;
    private static final int LONGEST_NAME = 120;

    private final Clock clock;
    private final Map<String, PendingFile> files = new ConcurrentHashMap<>();

    @Inject
    PendingFiles(Clock clock) {
        this.clock = clock;
    }

    /**
     * Keeps the file of a form and looks at it.
     *
     * @throws FileFault.Unreadable if it is no table; nothing is kept then
     */
    public PendingFile take(HerdRow herd, String keyId, InputStream body, String contentType)
            throws IOException, FileFault.Unreadable {
        forgetOld();
        if (files.size() >= MOST_FILES) {
            throw new Problem(ProblemCode.BUSY, "Enough files are waiting already; try again in a while.")
                    .withHeader("Retry-After", "60");
        }
        FormFile sent = new FormFile(new LimitedBody(body, LimitedBody.MANY_RECORDS), contentType);
        Path path = Files.createTempFile("pailbook-import", ".csv");
        String name = sent.fileName().strip();
        PendingFile file = new PendingFile(
                RecordIds.next(),
                herd.id,
                keyId,
                name.substring(0, Math.min(name.length(), LONGEST_NAME)),
                path,
                clock.instant());
        boolean isKept = false;
        try {
            Files.copy(sent, path, StandardCopyOption.REPLACE_EXISTING);
            Optional<Charset> encoding = FileLook.encoding(path);
            if (encoding.isPresent()) {
                file.read(encoding.get());
            }
            files.put(file.id(), file);
            isKept = true;
            return file;
        } finally {
            if (!isKept) {
                Files.deleteIfExists(path);
            }
        }
    }

    /** One that the holder of the key chose for the herd. */
    public Optional<PendingFile> of(HerdRow herd, String keyId, String id) {
        return Optional.ofNullable(files.get(id)).filter(file -> file.isOf(herd.id, keyId));
    }

    private void forgetOld() {
        Instant old = clock.instant().minus(KEPT);
        files.values().removeIf(file -> {
            boolean isOld = file.since().isBefore(old)
                    && file.job().filter(FileJob::isRunning).isEmpty();
            if (isOld) {
                delete(file);
            }
            return isOld;
        });
    }

    private static void delete(PendingFile file) {
        try {
            Files.deleteIfExists(file.path());
        } catch (IOException held) {
            LOG.warnf("a temporary file could not be deleted: %s", held.getMessage());
        }
    }

    @PreDestroy
    void deleteAll() {
        files.values().forEach(PendingFiles::delete);
    }
}
