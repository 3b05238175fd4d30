package org.pailbook.records.app;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;

/** Starts the service, after what must be right before a database is opened. */
@QuarkusMain
public final class PailbookMain {
    private PailbookMain() {}

    public static void main(String... arguments) {
        Optional<String> objection = objection(ConfigProvider.getConfig());
        if (objection.isPresent()) {
            System.err.println("Pailbook does not start: " + objection.get());
            System.exit(1);
        }
        Quarkus.run(arguments);
    }

    /** Why the service cannot start with these settings; makes the data folder of the embedded database on the way. */
    static Optional<String> objection(Config settings) {
        String builtFor = settings.getValue("quarkus.datasource.db-kind", String.class);
        Optional<String> askedFor = settings.getOptionalValue("pailbook.database", String.class);
        if (askedFor.isPresent() && !askedFor.get().equals(builtFor)) {
            return Optional.of("PAILBOOK_DATABASE is " + askedFor.get() + ", but this package is built for " + builtFor
                    + ". The package for postgresql is quarkus-app-postgresql/quarkus-run.jar, the one for sqlite"
                    + " quarkus-app/quarkus-run.jar.");
        }
        Optional<String> key = settings.getOptionalValue("pailbook.admin.key", String.class);
        if (key.isPresent() && !key.get().matches("[\\x21-\\x7e]{8,200}")) {
            return Optional.of("PAILBOOK_ADMIN_KEY must be 8 to 200 printable characters without blanks.");
        }
        if (builtFor.equals("sqlite")) {
            Path folder =
                    Path.of(settings.getValue("pailbook.data", String.class)).toAbsolutePath();
            try {
                Files.createDirectories(folder);
            } catch (IOException unusable) {
                return Optional.of(
                        "the data folder " + folder + " (PAILBOOK_DATA) cannot be made: " + unusable.getMessage());
            }
            if (!Files.isWritable(folder)) {
                return Optional.of("the data folder " + folder + " (PAILBOOK_DATA) cannot be written to.");
            }
        }
        return Optional.empty();
    }
}
