package org.pailbook.records.app;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;
import org.pailbook.records.keeping.KeptDatabase;
import org.pailbook.records.keeping.PackagedKind;
import org.pailbook.records.keeping.Refusal;

/**
 * Starts the service, after what must be right before a database is opened; or, with a word behind the jar, copies the database or puts a
 * copy back.
 */
@QuarkusMain
public final class PailbookMain {
    private static final int REFUSED = 1;
    private static final int NOT_UNDERSTOOD = 2;
    private static final String REPLACE = "--replace";
    private static final String USAGE = """
            Pailbook, records of a dairy herd
              java -jar quarkus-run.jar                           start the service
              java -jar quarkus-run.jar backup FILE               copy the whole database, also while the service runs
              java -jar quarkus-run.jar restore FILE [--replace]  put a copy in place, while the service is stopped
            """;

    private PailbookMain() {}

    public static void main(String... arguments) {
        List<String> words = List.of(arguments);
        Config settings = ConfigProvider.getConfig();
        try {
            if (words.isEmpty()) {
                requireStartable(settings);
                Quarkus.run(arguments);
            } else if (words.size() == 2 && words.get(0).equals("backup")) {
                KeptDatabase.of(settings).backup(Path.of(words.get(1)));
                System.out.println(
                        "The database was copied to " + Path.of(words.get(1)).toAbsolutePath());
            } else if (words.size() >= 2
                    && words.get(0).equals("restore")
                    && words.stream().skip(2).allMatch(REPLACE::equals)) {
                String fate = KeptDatabase.of(settings).restore(Path.of(words.get(1)), words.contains(REPLACE));
                System.out.println("The backup is in place. " + fate);
            } else {
                System.err.print(USAGE);
                System.exit(NOT_UNDERSTOOD);
            }
        } catch (Refusal refusal) {
            String what = words.isEmpty() ? "start" : words.get(0);
            System.err.println("Pailbook does not " + what.replace("backup", "back up") + ": " + refusal.getMessage());
            System.exit(REFUSED);
        }
    }

    /** Makes the data folder of the embedded database on the way. */
    private static void requireStartable(Config settings) throws Refusal {
        String builtFor = PackagedKind.of(settings);
        Optional<String> askedFor = settings.getOptionalValue("pailbook.database", String.class);
        if (askedFor.isPresent() && !askedFor.get().equals(builtFor)) {
            throw new Refusal("PAILBOOK_DATABASE is " + askedFor.get() + ", but this package is built for " + builtFor
                    + ". The package for postgresql is quarkus-app-postgresql/quarkus-run.jar, the one for sqlite"
                    + " quarkus-app/quarkus-run.jar.");
        }
        Optional<String> key = settings.getOptionalValue("pailbook.admin.key", String.class);
        if (key.isPresent() && !key.get().matches("[\\x21-\\x7e]{8,200}")) {
            throw new Refusal("PAILBOOK_ADMIN_KEY must be 8 to 200 printable characters without blanks.");
        }
        if (builtFor.equals("sqlite")) {
            requireFolder(
                    Path.of(settings.getValue("pailbook.data", String.class)).toAbsolutePath());
        }
        KeptDatabase.of(settings).check();
    }

    private static void requireFolder(Path folder) throws Refusal {
        try {
            Files.createDirectories(folder);
        } catch (IOException unusable) {
            throw new Refusal(
                    "the data folder " + folder + " (PAILBOOK_DATA) cannot be made: " + unusable.getMessage());
        }
        if (!Files.isWritable(folder)) {
            throw new Refusal("the data folder " + folder + " (PAILBOOK_DATA) cannot be written to.");
        }
    }
}
