package org.pailbook.records.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.Table;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Tells PostgreSQL how much a table holds while a large request fills it.
 *
 * <p>Its planner looks after that by itself only once a minute. Until then it takes a new table for empty and compares each row with each key
 * asked for: a resend of 20,000 animals took 58 s so, and 5 s once the planner knew. SQLite plans by its indexes alone.
 */
@ApplicationScoped
public class TableStatistics {
    private final WriteGate gate;
    private final boolean plansByStatistics;

    @Inject
    TableStatistics(WriteGate gate, @ConfigProperty(name = "quarkus.datasource.db-kind") String databaseKind) {
        this.gate = gate;
        this.plansByStatistics = databaseKind.equals("postgresql");
    }

    /**
     * Counts the table of that kind of record anew, and those in which its animals are looked up, unless the planner knows of as many rows.
     *
     * @param rows that the table has at least
     */
    public void refresh(Class<? extends StoredRecord> entity, int rows) {
        if (!plansByStatistics) {
            return;
        }
        Set<String> tables = new TreeSet<>(Set.of(tableOf(AnimalRow.class), tableOf(AnimalIdentifierRow.class)));
        tables.add(tableOf(entity));
        gate.write(session -> {
            double known = session.createNativeQuery(
                            "select cast(reltuples as double precision) from pg_class where oid = cast(:name as regclass)",
                            Double.class)
                    .setParameter("name", tableOf(entity))
                    .getSingleResult();
            if (known >= rows) {
                return null;
            }
            tables.forEach(table ->
                    session.createNativeMutationQuery("analyze " + table).executeUpdate());
            return null;
        });
    }

    static String tableOf(Class<?> entity) {
        return entity.getAnnotation(Table.class).name();
    }
}
