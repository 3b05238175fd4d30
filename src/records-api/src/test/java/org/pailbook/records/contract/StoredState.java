package org.pailbook.records.contract;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The database of a running service, seen past it. */
final class StoredState implements AutoCloseable {
    private final Connection connection;
    private final String lastWrite;
    private final List<String> tables = new ArrayList<>();

    static StoredState of(FreshService service, Path data) throws SQLException {
        if (service.server() == null) {
            return new StoredState(
                    DriverManager.getConnection("jdbc:sqlite:" + data.resolve("pailbook.db") + "?busy_timeout=10000"),
                    "select name from sqlite_master where type = 'table' and name not like 'sqlite_%'",
                    "pragma data_version");
        }
        return new StoredState(
                service.server().getPostgresDatabase().getConnection(),
                "select table_name from information_schema.tables where table_schema = 'public'",
                "select txid_snapshot_xmax(txid_current_snapshot())");
    }

    private StoredState(Connection connection, String tableNames, String lastWrite) throws SQLException {
        this.connection = connection;
        this.lastWrite = lastWrite;
        try (Statement statement = connection.createStatement();
                ResultSet names = statement.executeQuery(tableNames)) {
            while (names.next()) {
                tables.add(names.getString(1));
            }
        }
    }

    /** A number that is another one after anything was written. */
    long writes() throws SQLException {
        return number(lastWrite);
    }

    /** Rows of each table, and the number of changes made to all herds. */
    Map<String, Long> counts() throws SQLException {
        Map<String, Long> counts = new TreeMap<>();
        for (String table : tables) {
            counts.put(table, number("select count(*) from " + table));
        }
        counts.put("changes", number("select coalesce(sum(change_seq), 0) from herd"));
        return counts;
    }

    private long number(String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            result.next();
            return result.getLong(1);
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
