package org.pailbook.records.keeping;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** What the migrations have noted in a database. */
final class SchemaHistory {
    private static final String TABLE = "flyway_schema_history";

    private SchemaHistory() {}

    /**
     * Number of the newest migration that was done, 0 if none.
     *
     * @param catalogue table in which the database lists its tables
     * @param column that names them there
     */
    static int newest(Connection database, String catalogue, String column) throws SQLException {
        try (PreparedStatement exists =
                database.prepareStatement("select 1 from " + catalogue + " where " + column + " = ?")) {
            exists.setString(1, TABLE);
            try (ResultSet found = exists.executeQuery()) {
                if (!found.next()) {
                    return 0;
                }
            }
        }
        try (PreparedStatement versions = database.prepareStatement(
                        "select max(cast(version as integer)) from " + TABLE + " where version is not null");
                ResultSet newest = versions.executeQuery()) {
            return newest.next() ? newest.getInt(1) : 0;
        }
    }
}
