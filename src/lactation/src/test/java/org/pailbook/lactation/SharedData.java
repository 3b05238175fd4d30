package org.pailbook.lactation;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Finds the folder of open milk-recording data, which is kept beside a checkout and never inside it. */
public final class SharedData {
    private SharedData() {}

    /** The folder, from PAILBOOK_SHARED_DATA or as {@code shared/data} beside the checkout or one of its parents. */
    public static Optional<Path> folder() {
        String named = System.getenv("PAILBOOK_SHARED_DATA");
        if (named != null && Files.isDirectory(Path.of(named))) {
            return Optional.of(Path.of(named));
        }
        return Stream.iterate(Path.of("").toAbsolutePath(), parent -> parent != null, Path::getParent)
                .map(parent -> parent.resolve("shared").resolve("data"))
                .filter(Files::isDirectory)
                .findFirst();
    }

    /** The folder; without it the test is skipped with a sentence. */
    public static Path orSkip() {
        Optional<Path> folder = folder();
        Assumptions.assumeTrue(
                folder.isPresent(),
                "The open milk-recording data are not beside this checkout (shared/data); set PAILBOOK_SHARED_DATA to run this test.");
        return folder.get();
    }
}
