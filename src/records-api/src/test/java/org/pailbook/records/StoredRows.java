package org.pailbook.records;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;

/** What the database holds, seen past the service: rows of each table, and the number of changes made to all herds. */
record StoredRows(Map<String, Long> counts) {
    private static final String[] TABLES = {
        "herd",
        "api_key",
        "feed",
        "animal",
        "animal_identifier",
        "test_day",
        "calving",
        "dry_off",
        "departure",
        "milking",
        "service",
        "pregnancy_check",
        "breeding_decision",
        "treatment",
        "foremilk_check",
        "tank_reading",
        "tank_pickup",
        "milk_use",
        "price",
        "setting",
        "superseded_version",
        "herd_change",
        "idempotent_answer",
        "idempotent_answer_part"
    };

    static StoredRows in(DataSource database) {
        Map<String, Long> counts = new TreeMap<>();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            for (String table : TABLES) {
                counts.put(table, number(statement, "select count(*) from " + table));
            }
            counts.put("changes", number(statement, "select coalesce(sum(change_seq), 0) from herd"));
        } catch (SQLException failed) {
            throw new AssertionError(failed);
        }
        return new StoredRows(counts);
    }

    private static long number(Statement statement, String query) throws SQLException {
        try (ResultSet result = statement.executeQuery(query)) {
            result.next();
            return result.getLong(1);
        }
    }
}
