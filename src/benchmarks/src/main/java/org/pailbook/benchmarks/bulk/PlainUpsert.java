package org.pailbook.benchmarks.bulk;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;

/**
 * Test days of a CSV file into a table like the service's, with its columns and unique keys, by one batched upsert: no checks, no look-ups, no
 * history. Commits as often as the service does.
 */
public final class PlainUpsert {
    private static final int ROWS_A_COMMIT = 1_000;
    private static final String TABLE = "plain_test_day";

    private PlainUpsert() {}

    /** @param arguments JDBC address, CSV file */
    public static void main(String[] arguments) throws SQLException, IOException {
        try (Connection database = DriverManager.getConnection(arguments[0])) {
            database.setAutoCommit(false);
            makeTable(database);
            long began = System.nanoTime();
            int rows = upsert(database, Path.of(arguments[1]));
            double seconds = (System.nanoTime() - began) / 1e9;
            System.out.printf("%d %.3f%n", rows, seconds);
        }
    }

    private static void makeTable(Connection database) throws SQLException {
        try (Statement statement = database.createStatement()) {
            statement.executeUpdate("create table " + TABLE + " (id varchar(36) not null primary key,"
                    + " herd_id varchar(36) not null, animal_id varchar(36) not null, event_date varchar(10) not null,"
                    + " milk_kg double precision, fat_pct double precision, protein_pct double precision,"
                    + " scc_thousand_per_ml double precision, version integer not null, change_seq bigint not null,"
                    + " recorded_at varchar(24) not null, recorded_by varchar(36) not null, source varchar(200),"
                    + " source_id varchar(200), withdrawn boolean not null)");
            statement.executeUpdate("create unique index plain_once on " + TABLE + " (herd_id, animal_id, event_date)");
            statement.executeUpdate("create unique index plain_source on " + TABLE + " (herd_id, source, source_id)");
            statement.executeUpdate("create index plain_date on " + TABLE + " (herd_id, event_date, id)");
            statement.executeUpdate("create index plain_change on " + TABLE + " (herd_id, change_seq)");
        }
        database.commit();
    }

    private static int upsert(Connection database, Path file) throws SQLException, IOException {
        String herd = UUID.randomUUID().toString();
        int row = 0;
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
                // new rows go to the end of the index, as the service's ids do
                upsert.setString(1, String.format("01980000-0000-7000-8000-%012d", ++row));
                upsert.setString(2, herd);
                upsert.setString(3, "01970000-0000-7000-8000-" + cells[1]);
                upsert.setString(4, cells[2]);
                for (int value = 3; value <= 6; value++) {
                    upsert.setDouble(value + 2, Double.parseDouble(cells[value]));
                }
                upsert.setLong(9, row);
                upsert.setString(10, herd);
                upsert.addBatch();
                if (row % ROWS_A_COMMIT == 0) {
                    upsert.executeBatch();
                    database.commit();
                }
            }
            upsert.executeBatch();
            database.commit();
        }
        return row;
    }
}
