package org.pailbook.records.keeping;

import java.io.File;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** One of the programs that come with PostgreSQL's client. */
final class PostgresqlProgram {
    private final Path path;

    private PostgresqlProgram(Path path) {
        this.path = path;
    }

    /** @throws Refusal if it is in no folder of the PATH */
    static PostgresqlProgram find(String name) throws Refusal {
        String folders = System.getenv().getOrDefault("PATH", "");
        for (String folder : folders.split(File.pathSeparator)) {
            Path candidate = Path.of(folder, name);
            if (!folder.isEmpty() && Files.isExecutable(candidate)) {
                return new PostgresqlProgram(candidate);
            }
        }
        throw new Refusal(
                name + " is not on the PATH; install the PostgreSQL client of the server's version or a later one.");
    }

    /**
     * Runs it to its end.
     *
     * @param password handed over in the environment, where other users of the machine do not see it
     * @throws Refusal with what it said last, if it failed
     */
    void run(String password, List<String> arguments) throws Refusal, IOException {
        List<String> command = new ArrayList<>(List.of(path.toString()));
        command.addAll(arguments);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("PGPASSWORD", password);
        Process process = builder.start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), Charset.defaultCharset());
        try {
            if (process.waitFor() != 0) {
                throw new Refusal(path.getFileName() + " failed: " + lastLine(said));
            }
        } catch (InterruptedException stopped) {
            process.destroy();
            Thread.currentThread().interrupt();
            throw new Refusal(path.getFileName() + " was interrupted.");
        }
    }

    private static String lastLine(String said) {
        List<String> lines = said.lines().filter(line -> !line.isBlank()).toList();
        return lines.isEmpty() ? "it gave no reason." : lines.get(lines.size() - 1);
    }
}
