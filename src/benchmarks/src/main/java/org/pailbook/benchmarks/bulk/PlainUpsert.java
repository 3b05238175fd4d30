package org.pailbook.benchmarks.bulk;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;

/**
 * Test days of CSV files into a table like the service's, with its columns, keys, indexes and references, by one batched upsert: no checks, no
 * look-ups, no history, no numbered changes of others. Commits as often as the service does. A file is taken whenever a line on the
 * standard input names a herd and a file; the answer is how many rows and seconds that were.
 */
public final class PlainUpsert {
    private static final String TABLE = "plain_test_day";

    private final Connection database;
    private final int rowsACommit;
    private long lastId;

    private PlainUpsert(Connection database, int rowsACommit) {
        this.database = database;
        this.rowsACommit = rowsACommit;
    }

    /** @param arguments JDBC address, rows a commit, whether the table refers to herds and animals (true or false) */
    public static void main(String[] arguments) throws SQLException, IOException {
        try (Connection database = DriverManager.getConnection(arguments[0]);
                BufferedReader asked = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
            PlainUpsert plain = new PlainUpsert(database, Integer.parseInt(arguments[1]));
            plain.makeTable(Boolean.parseBoolean(arguments[2]));
            for (String line = asked.readLine(); line != null; line = asked.readLine()) {
                String[] herdAndFile = line.split(" ", 2);
                System.out.println(plain.upsert(herdAndFile[0], Path.of(herdAndFile[1])));
            }
        }
    }

    private void makeTable(boolean refers) throws SQLException {
        try (Statement statement = database.createStatement()) {
            statement.executeUpdate("create table " + TABLE + " (id varchar(36) not null primary key,"
                    + " herd_id varchar(36) not null" + (refers ? " references herd (id)" : "") + ","
                    + " animal_id varchar(36) not null" + (refers ? " references animal (id)" : "") + ","
                    + " event_date varchar(10) not null, milk_kg double precision, fat_pct double precision,"
                    + " protein_pct double precision, lactose_pct double precision, scc_thousand_per_ml double precision,"
                    + " version integer not null, change_seq bigint not null,"
                    + " recorded_at varchar(24) not null, recorded_by varchar(36) not null, source varchar(200),"
                    + " source_id varchar(200), withdrawn boolean not null)");
            statement.executeUpdate("create unique index plain_once on " + TABLE + " (herd_id, animal_id, event_date)");
            statement.executeUpdate("create unique index plain_source on " + TABLE + " (herd_id, source, source_id)");
            statement.executeUpdate("create index plain_date on " + TABLE + " (herd_id, event_date, id)");
            statement.executeUpdate("create index plain_change on " + TABLE + " (herd_id, change_seq)");
        }
    }

    private String upsert(String herdCode, Path file) throws SQLException, IOException {
        String herd = herdId(herdCode);
        Map<String, String> animals = animalIds(herd);
        int rows = 0;
        long began = System.nanoTime();
        database.setAutoCommit(false);
        try (BufferedReader lines = Files.newBufferedReader(file);
                PreparedStatement upsert = database.prepareStatement("insert into " + TABLE
                        + " (id, herd_id, animal_id, event_date, milk_kg, fat_pct, protein_pct, scc_thousand_per_ml,"
                        + " version, change_seq, recorded_at, recorded_by, withdrawn)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, 1, ?, '2026-01-01T00:00:00.000Z', ?, false)"
                        + " on conflict (herd_id, animal_id, event_date) do update set milk_kg = excluded.milk_kg,"
                        + " fat_pct = excluded.fat_pct, protein_pct = excluded.protein_pct,"
                        + " scc_thousand_per_ml = excluded.scc_thousand_per_ml")) {
            lines.readLine();
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] cells = line.split(",");
                upsert.setString(1, nextId());
                upsert.setString(2, herd);
                upsert.setString(3, animals.get(cells[1]));
                upsert.setString(4, cells[2]);
                for (int value = 3; value <= 6; value++) {
                    upsert.setDouble(value + 2, Double.parseDouble(cells[value]));
                }
                upsert.setLong(9, lastId);
                upsert.setString(10, herd);
                upsert.addBatch();
                if (++rows % rowsACommit == 0) {
                    upsert.executeBatch();
                    database.commit();
                }
            }
            upsert.executeBatch();
            database.commit();
        }
        // the only writer of a SQLite file lets others have their turn
        database.setAutoCommit(true);
        return rows + " " + (System.nanoTime() - began) / 1e9;
    }

    /** New rows go to the end of the index, as the service's ids do. */
    private String nextId() {
        return "01980000-0000-7000-8000-" + Long.toString(100_000_000_000L + ++lastId);
    }

    private String herdId(String code) throws SQLException {
        try (PreparedStatement query = database.prepareStatement("select id from herd where code = ?")) {
            query.setString(1, code);
            try (ResultSet found = query.executeQuery()) {
                found.next();
                return found.getString(1);
            }
        }
    }

    private Map<String, String> animalIds(String herd) throws SQLException {
        Map<String, String> ids = new HashMap<>();
        try (PreparedStatement query =
                database.prepareStatement("select identifier, animal_id from animal_identifier where herd_id = ?")) {
            query.setString(1, herd);
            try (ResultSet found = query.executeQuery()) {
                while (found.next()) {
                    ids.put(found.getString(1), found.getString(2));
                }
            }
        }
        return ids;
    }
}
