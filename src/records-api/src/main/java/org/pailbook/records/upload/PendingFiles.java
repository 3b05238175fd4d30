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
import java.util.Comparator;
import java.util.List;
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
    /** Of one key: somebody who goes through a folder of files need not wait for the first ones to be forgotten. */
    private static final int MOST_OF_ONE_KEY = 8;

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
        forgetFirstOf(keyId);
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
        files.values().stream()
                .filter(file -> file.since().isBefore(old))
                .filter(PendingFiles::isIdle)
                .forEach(this::forget);
    }

    /** Makes room for one more file of a key. */
    private void forgetFirstOf(String keyId) {
        List<PendingFile> own = files.values().stream()
                .filter(file -> file.isOfKey(keyId))
                .sorted(Comparator.comparing(PendingFile::since))
                .toList();
        own.subList(0, Math.max(0, own.size() - MOST_OF_ONE_KEY + 1)).stream()
                .filter(PendingFiles::isIdle)
                .forEach(this::forget);
    }

    private static boolean isIdle(PendingFile file) {
        return file.job().filter(FileJob::isRunning).isEmpty();
    }

    private void forget(PendingFile file) {
        files.remove(file.id());
        delete(file);
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
