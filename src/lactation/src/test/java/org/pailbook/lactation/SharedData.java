package org.pailbook.lactation;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Where the open milk-recording data lie, which are not part of the project: the folder named by the environment variable
 * {@code PAILBOOK_SHARED_DATA}, else {@code shared/data} next to the checkout or to one of the folders above it.
 */
public final class SharedData {
    private static final String VARIABLE = "PAILBOOK_SHARED_DATA";

    private SharedData() {}

    /** The folder, if it is there. */
    public static Optional<Path> folder() {
        String named = System.getenv(VARIABLE);
        if (named != null && !named.isBlank()) {
            return Optional.of(Path.of(named)).filter(Files::isDirectory);
        }
        return Stream.iterate(Path.of("").toAbsolutePath(), above -> above != null, Path::getParent)
                .map(above -> above.resolve("shared").resolve("data"))
                .filter(Files::isDirectory)
                .findFirst();
    }

    /** The folder; without it the test that asks is skipped with a sentence. */
    public static Path orSkip() {
        Optional<Path> folder = folder();
        Assumptions.assumeTrue(
                folder.isPresent(),
                "the open milk-recording data are not here: set " + VARIABLE
                        + " or put them in shared/data above the checkout");
        return folder.orElseThrow();
    }
}
