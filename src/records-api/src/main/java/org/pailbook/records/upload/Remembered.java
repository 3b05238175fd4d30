package org.pailbook.records.upload;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.records.store.FileMappingRow;
import org.pailbook.records.store.FileMappings;
import org.pailbook.records.store.HerdRow;

/** What was said of files with the same headings before, kept for the herd. */
@ApplicationScoped
public class Remembered {
    private final FileMappings kept;
    private final Clock clock;

    @Inject
    Remembered(FileMappings kept, Clock clock) {
        this.kept = kept;
        this.clock = clock;
    }

    /** What is said of a table of refused rows is not kept: it goes on being what was said of the file they came from. */
    public void keep(HerdRow herd, List<String> headings, FileMapping mapping, String keyId) {
        if (RefusedRows.isOne(headings, mapping)) {
            return;
        }
        kept.keep(herd, hash(headings), mapping.kind(), mapping.toJson(headings), keyId, clock.instant());
    }

    /** For that kind of record. */
    public Optional<FileMapping> of(HerdRow herd, List<String> headings, String kind) {
        return find(headings, hash -> kept.of(herd, hash, kind));
    }

    /** The last, for whichever kind. */
    public Optional<FileMapping> latest(HerdRow herd, List<String> headings) {
        return find(headings, hash -> kept.latest(herd, hash));
    }

    /** What was said of the file; of a table of refused rows, what was said of the file they were refused of. */
    private static Optional<FileMapping> find(List<String> headings, Function<String, Optional<FileMappingRow>> find) {
        Optional<FileMapping> own = find.apply(hash(headings)).map(row -> FileMapping.ofJson(row.content, headings));
        return own.isPresent() || !RefusedRows.areHeadingsOfOne(headings)
                ? own
                : find.apply(hash(RefusedRows.headingsOfFile(headings)))
                        .map(row -> FileMapping.ofJson(row.content, headings).withHeading());
    }

    /** The same for the same names in any order. */
    private static String hash(List<String> headings) {
        String names = headings.stream().sorted().collect(Collectors.joining("\n"));
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(names.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
