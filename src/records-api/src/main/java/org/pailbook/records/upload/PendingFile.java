package org.pailbook.records.upload;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A file somebody chose, while its columns are being given a meaning and its rows are being taken. */
public final class PendingFile {
    private final String id;
    private final String herdId;
    private final String keyId;
    private final String name;
    private final Path path;
    private final Instant since;
    private volatile FileView view;
    private volatile FileMapping mapping;
    private volatile FileJob job;

    PendingFile(String id, String herdId, String keyId, String name, Path path, Instant since) {
        this.id = id;
        this.herdId = herdId;
        this.keyId = keyId;
        this.name = name;
        this.path = path;
        this.since = since;
    }

    public String id() {
        return id;
    }

    /** As the sender's machine calls it. */
    public String name() {
        return name;
    }

    boolean isOf(String herd, String key) {
        return herdId.equals(herd) && keyId.equals(key);
    }

    boolean isOfKey(String key) {
        return keyId.equals(key);
    }

    Path path() {
        return path;
    }

    Instant since() {
        return since;
    }

    /** What it shows; empty while its encoding is not known. */
    public Optional<FileView> view() {
        return Optional.ofNullable(view);
    }

    /** Reads it in that encoding. */
    public void read(Charset charset) throws IOException, FileFault.Unreadable {
        this.view = FileView.of(path, charset);
    }

    /** The first line with a letter that is not the same in all encodings, as one encoding would have it. */
    public String lineToJudge(Charset charset) throws IOException {
        try (var lines = java.nio.file.Files.lines(path, charset)) {
            return lines.filter(line -> line.chars().anyMatch(one -> one > 127))
                    .findFirst()
                    .map(line -> line.substring(0, Math.min(line.length(), 120)))
                    .orElse("");
        }
    }

    /** Encodings to choose from. */
    public static List<String> encodings() {
        return FileLook.ASKED;
    }

    public Optional<FileMapping> mapping() {
        return Optional.ofNullable(mapping);
    }

    public void say(FileMapping said) {
        this.mapping = said;
        this.job = null;
    }

    /** What was last begun with it. */
    public Optional<FileJob> job() {
        return Optional.ofNullable(job);
    }

    /** Begins another; only if none is running. @return whether it was begun */
    synchronized boolean begin(FileJob next) {
        if (job != null && job.isRunning()) {
            return false;
        }
        job = next;
        return true;
    }
}
