package org.pailbook.records.keeping;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.JarFile;
import org.eclipse.microprofile.config.Config;

/**
 * The kind of database a package was built for.
 *
 * <p>Before the service starts, the settings answer with what the environment says, not with what was fixed at the build; so the build
 * writes it into the manifest of the jar that is run.
 */
public final class PackagedKind {
    private static final String ATTRIBUTE = "Pailbook-Database";

    private PackagedKind() {}

    /** From the jar that is run; where none is, from the settings. */
    public static String of(Config settings) {
        Path run = Path.of(System.getProperty("java.class.path").split(File.pathSeparator)[0]);
        if (Files.isRegularFile(run)) {
            try (JarFile jar = new JarFile(run.toFile())) {
                String kind = jar.getManifest().getMainAttributes().getValue(ATTRIBUTE);
                if (kind != null) {
                    return kind;
                }
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return settings.getValue("quarkus.datasource.db-kind", String.class);
    }
}
