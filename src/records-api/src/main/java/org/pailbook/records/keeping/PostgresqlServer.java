package org.pailbook.records.keeping;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** A database on a PostgreSQL server; copies are made and put back by PostgreSQL's own programs. */
final class PostgresqlServer implements KeptDatabase {
    private static final String NAMES = "pg_catalog.pg_tables";
    private static final int CONNECT_SECONDS = 10;
    private static final int USUAL_PORT = 5432;

    private final String url;
    private final String user;
    private final String password;

    PostgresqlServer(String url, String user, String password) {
        this.url = url;
        this.user = user;
        this.password = password;
    }

    @Override
    public void check() throws Refusal {
        try (Connection database = open()) {
            KeptDatabase.requireKnown(SchemaHistory.newest(database, NAMES, "tablename"), "the database " + shown());
        } catch (SQLException failed) {
            throw unreachable(failed);
        }
    }

    @Override
    public void backup(Path copy) throws Refusal {
        Path target = copy.toAbsolutePath();
        if (Files.exists(target)) {
            throw new Refusal(target + " is there already; a backup overwrites nothing.");
        }
        PostgresqlProgram dump = PostgresqlProgram.find("pg_dump");
        PostgresqlProgram read = PostgresqlProgram.find("pg_restore");
        check();
        Path unfinished = null;
        try {
            unfinished = Files.createTempFile(target.getParent(), target.getFileName() + ".", ".unfinished");
            dump.run(password, with("--format=custom", "--no-owner", "--no-privileges", "--file=" + unfinished));
            read.run(password, List.of("--list", unfinished.toString()));
            Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
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
        PostgresqlProgram read = PostgresqlProgram.find("pg_restore");
        PostgresqlProgram client = PostgresqlProgram.find("psql");
        boolean isEmpty = requireUnused();
        if (!isEmpty && !replace) {
            throw new Refusal(
                    "the database " + shown()
                            + " holds tables already. With --replace everything in its schema public goes and the backup comes.");
        }
        Path script = null;
        try {
            // as a script in one transaction: what was there goes and what comes is there, or nothing has happened
            script = Files.createTempFile("pailbook-restore", ".sql");
            read.run(password, List.of("--no-owner", "--no-privileges", "--file=" + script, copy.toString()));
            List<String> arguments = with(
                    "--no-psqlrc", "--quiet", "--single-transaction", "--set=ON_ERROR_STOP=1", "--output=/dev/null");
            if (!isEmpty) {
                arguments.add("--command=drop schema public cascade; create schema public");
            }
            arguments.add("--file=" + script);
            client.run(password, arguments);
        } catch (IOException failed) {
            throw new Refusal("the backup could not be put in place: " + failed);
        } finally {
            deleteQuietly(script);
        }
        check();
        return isEmpty ? "" : "What was in the database before is gone.";
    }

    /** Whether the database holds no tables; refuses if somebody else is connected to it. */
    private boolean requireUnused() throws Refusal {
        try (Connection database = open();
                Statement statement = database.createStatement()) {
            if (number(
                            statement,
                            "select count(*) from pg_stat_activity where datname = current_database()"
                                    + " and backend_type = 'client backend' and pid <> pg_backend_pid()")
                    > 0) {
                throw new Refusal("the database " + shown() + " is in use; stop the service first.");
            }
            return number(statement, "select count(*) from pg_catalog.pg_tables where schemaname = 'public'") == 0;
        } catch (SQLException failed) {
            throw unreachable(failed);
        }
    }

    private static long number(Statement statement, String query) throws SQLException {
        try (ResultSet result = statement.executeQuery(query)) {
            result.next();
            return result.getLong(1);
        }
    }

    private Connection open() throws SQLException {
        DriverManager.setLoginTimeout(CONNECT_SECONDS);
        return DriverManager.getConnection(url, user, password);
    }

    private Refusal unreachable(SQLException failed) {
        String why = failed.getMessage().lines().findFirst().orElse("no reason given");
        return new Refusal("the database " + shown() + " cannot be used: " + why);
    }

    /** Arguments that say which database, before others. */
    private List<String> with(String... more) {
        URI address = address();
        List<String> arguments = new ArrayList<>(List.of(
                "--host=" + (address.getHost() == null ? "localhost" : address.getHost()),
                "--port=" + (address.getPort() < 0 ? USUAL_PORT : address.getPort()),
                "--dbname=" + address.getPath().substring(1),
                "--no-password"));
        if (!user.isEmpty()) {
            arguments.add("--username=" + user);
        }
        arguments.addAll(List.of(more));
        return arguments;
    }

    private String shown() {
        URI address = address();
        return address.getHost() + (address.getPort() < 0 ? "" : ":" + address.getPort()) + address.getPath();
    }

    private URI address() {
        return URI.create(url.substring("jdbc:".length()));
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
