package org.pailbook.records.keeping;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** The one file of the embedded database, and the two that SQLite keeps beside it while it is in use. */
final class SqliteFile implements KeptDatabase {
    private static final String PREFIX = "jdbc:sqlite:";
    private static final List<String> BESIDE = List.of("-wal", "-shm");
    /** Up to this size its pages are looked through at each start, which takes about a second for each 200 MB. */
    private static final long MOST_LOOKED_THROUGH_BYTES = 200L * 1024 * 1024;

    private final Path file;

    SqliteFile(String url) {
        int mark = url.indexOf('?');
        this.file = Path.of(url.substring(PREFIX.length(), mark < 0 ? url.length() : mark))
                .toAbsolutePath();
    }

    @Override
    public void check() throws Refusal {
        if (Files.exists(file)) {
            checkFile(file, sizeOf(file) <= MOST_LOOKED_THROUGH_BYTES ? "quick_check(1)" : null);
        }
    }

    @Override
    public void backup(Path copy) throws Refusal {
        if (!Files.exists(file)) {
            throw new Refusal("there is no database at " + file + " (PAILBOOK_DATA).");
        }
        Path target = copy.toAbsolutePath();
        if (Files.exists(target)) {
            throw new Refusal(target + " is there already; a backup overwrites nothing.");
        }
        Path unfinished = null;
        try {
            unfinished = Files.createTempFile(target.getParent(), target.getFileName() + ".", ".unfinished");
            try (Connection database = open(file);
                    PreparedStatement vacuum = database.prepareStatement("vacuum into ?")) {
                vacuum.setString(1, unfinished.toString());
                vacuum.execute();
            }
            checkFile(unfinished, "integrity_check(1)");
            force(unfinished);
            Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
            force(target.getParent());
        } catch (SQLException failed) {
            throw new Refusal("the backup failed: " + failed.getMessage());
        } catch (IOException failed) {
            throw new Refusal("the backup could not be written: " + failed);
        } finally {
            deleteQuietly(unfinished);
        }
    }

    @Override
    public String restore(Path copy, boolean replace) throws Refusal {
        if (!Files.isRegularFile(copy)) {
            throw new Refusal("there is no file " + copy.toAbsolutePath() + ".");
        }
        checkFile(copy, "integrity_check(1)");
        boolean isThere = Files.exists(file);
        if (isThere && !replace) {
            throw new Refusal("there is a database at " + file
                    + " already. With --replace it is set aside and the backup put in its place.");
        }
        Path unfinished = null;
        try {
            Files.createDirectories(file.getParent());
            unfinished = Files.createTempFile(file.getParent(), file.getFileName() + ".", ".unfinished");
            Files.copy(copy, unfinished, StandardCopyOption.REPLACE_EXISTING);
            force(unfinished);
            String fate = isThere ? "The database that was there is now " + setAside() + "." : "";
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
            force(file.getParent());
            return fate;
        } catch (IOException failed) {
            throw new Refusal("the backup could not be put in place: " + failed);
        } finally {
            deleteQuietly(unfinished);
        }
    }

    /** Moves the database that is there to another name, with what belongs to it. */
    private Path setAside() throws Refusal, IOException {
        requireUnused();
        Path aside = file.resolveSibling(file.getFileName() + ".replaced");
        for (int number = 2; Files.exists(aside); number++) {
            aside = file.resolveSibling(file.getFileName() + ".replaced-" + number);
        }
        for (String beside : BESIDE) {
            Path log = file.resolveSibling(file.getFileName() + beside);
            if (Files.exists(log)) {
                Files.move(log, aside.resolveSibling(aside.getFileName() + beside));
            }
        }
        Files.move(file, aside);
        return aside;
    }

    /** SQLite gives up its log only while nobody else has the file open. A file that is damaged cannot be asked. */
    private void requireUnused() throws Refusal {
        try (Connection database = DriverManager.getConnection(PREFIX + file + "?busy_timeout=0");
                Statement statement = database.createStatement();
                ResultSet mode = statement.executeQuery("pragma journal_mode=delete")) {
            if (mode.next() && mode.getString(1).equals("delete")) {
                return;
            }
        } catch (SQLException failed) {
            if (isDamage(failed)) {
                return;
            }
        }
        throw new Refusal("the database at " + file + " is in use; stop the service first.");
    }

    private static void checkFile(Path checked, String thorough) throws Refusal {
        try (Connection database = open(checked);
                Statement statement = database.createStatement()) {
            if (thorough != null) {
                try (ResultSet result = statement.executeQuery("pragma " + thorough)) {
                    if (result.next() && !result.getString(1).equals("ok")) {
                        throw damaged(checked);
                    }
                }
            }
            KeptDatabase.requireKnown(SchemaHistory.newest(database, "sqlite_master", "name"), checked.toString());
        } catch (SQLException failed) {
            if (isDamage(failed)) {
                throw damaged(checked);
            }
            throw new Refusal("the database file " + checked + " cannot be used: " + failed.getMessage());
        }
    }

    private static Refusal damaged(Path checked) {
        return new Refusal(checked + " is damaged or no SQLite database. Put it aside and restore a backup:"
                + " java -jar quarkus-run.jar restore FILE --replace");
    }

    /** Result codes CORRUPT and NOTADB of SQLite. */
    private static boolean isDamage(SQLException failed) {
        int code = failed.getErrorCode() & 0xff;
        return code == 11 || code == 26;
    }

    private static Connection open(Path opened) throws SQLException {
        return DriverManager.getConnection(PREFIX + opened + "?busy_timeout=10000");
    }

    private static long sizeOf(Path sized) throws Refusal {
        try {
            return Files.size(sized);
        } catch (IOException unreadable) {
            throw new Refusal("the database file " + sized + " cannot be read: " + unreadable);
        }
    }

    /** Sees to it that a power cut now would not undo it; folders count too, since they hold the names. */
    private static void force(Path written) throws IOException {
        try (FileChannel channel = FileChannel.open(written, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static void deleteQuietly(Path unfinished) throws Refusal {
        try {
            if (unfinished != null) {
                Files.deleteIfExists(unfinished);
            }
        } catch (IOException failed) {
            throw new Refusal("the unfinished file " + unfinished + " could not be deleted: " + failed);
        }
    }
}
