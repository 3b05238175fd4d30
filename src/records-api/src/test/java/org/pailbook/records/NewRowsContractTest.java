package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.Column;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import jakarta.persistence.metamodel.EntityType;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.sql.DatabaseMetaData;
import java.sql.ResultSet;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hibernate.StatelessSession;
import org.junit.jupiter.api.Test;
import org.pailbook.records.store.NewRows;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.store.WriteGate;

/** New records written by a plain batch are, column by column, what Hibernate writes. */
@QuarkusTest
class NewRowsContractTest {
    private static final String ID = "01980000-0000-7000-8000-00000000abcd";

    @Inject
    WriteGate gate;

    @Test
    void everyKindIsWrittenAsHibernateWritesItWithAllValuesAndWithNoneThatMayBeMissing() {
        TestHerd herd = TestHerd.make();
        herd.bulk("animals", TestHerd.NDJSON, "{\"identifiers\":[" + TestHerd.animal("C1") + "]}")
                .expecting(200);
        int kinds = gate.write(session -> {
            String herdId = text(session, "select id from herd where code = :value", herd.code());
            String animalId = text(session, "select id from animal where herd_id = :value", herdId);
            int compared = 0;
            for (EntityType<?> entity : session.getFactory().getMetamodel().getEntities()) {
                if (StoredRecord.class.isAssignableFrom(entity.getJavaType())) {
                    Class<? extends StoredRecord> kind = entity.getJavaType().asSubclass(StoredRecord.class);
                    compare(session, filled(kind, herdId, animalId, Set.of()), kind);
                    compare(session, filled(kind, herdId, animalId, columnsThatMayBeMissing(session, kind)), kind);
                    compared++;
                }
            }
            return compared;
        });
        assertThat(kinds).isGreaterThan(10);
    }

    private static <E extends StoredRecord> void compare(StatelessSession session, StoredRecord record, Class<E> kind) {
        session.insertMultiple(List.of(record));
        Object[] byHibernate = takeOut(session, kind);
        NewRows.insert(session, kind, List.of(kind.cast(record)));
        assertThat(takeOut(session, kind)).as(kind.getSimpleName()).containsExactly(byHibernate);
    }

    private static Object[] takeOut(StatelessSession session, Class<?> kind) {
        String table = kind.getAnnotation(Table.class).name();
        Object[] row = session.createNativeQuery("select * from " + table + " where id = :id", Object[].class)
                .setParameter("id", ID)
                .getSingleResult();
        session.createNativeMutationQuery("delete from " + table + " where id = :id")
                .setParameter("id", ID)
                .executeUpdate();
        return row;
    }

    private static <E> E filled(Class<E> kind, String herdId, String animalId, Set<String> leftOut) {
        Map<String, Object> known = Map.of("id", ID, "herdId", herdId, "animalId", animalId);
        try {
            E record = kind.getConstructor().newInstance();
            for (Class<?> type = kind; type != Object.class; type = type.getSuperclass()) {
                for (Field field : type.getDeclaredFields()) {
                    boolean kept = !Modifier.isStatic(field.getModifiers())
                            && !field.isSynthetic()
                            && !field.getName().startsWith("$$")
                            && !field.isAnnotationPresent(Transient.class);
                    if (kept && !leftOut.contains(columnOf(field))) {
                        field.setAccessible(true);
                        field.set(record, known.getOrDefault(field.getName(), valueOf(field.getType())));
                    }
                }
            }
            return record;
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    private static Set<String> columnsThatMayBeMissing(StatelessSession session, Class<?> kind) {
        String table = kind.getAnnotation(Table.class).name();
        return session.doReturningWork(connection -> {
            Set<String> names = new HashSet<>();
            try (ResultSet columns = connection.getMetaData().getColumns(null, null, table, null)) {
                while (columns.next()) {
                    if (columns.getInt("NULLABLE") == DatabaseMetaData.columnNullable) {
                        names.add(columns.getString("COLUMN_NAME"));
                    }
                }
            }
            return names;
        });
    }

    private static String columnOf(Field field) {
        Column column = field.getAnnotation(Column.class);
        return column == null || column.name().isEmpty() ? field.getName() : column.name();
    }

    private static Object valueOf(Class<?> type) {
        Map<Class<?>, Object> values = Map.of(
                String.class,
                "ab",
                Double.class,
                12.5,
                double.class,
                12.5,
                Integer.class,
                3,
                int.class,
                3,
                long.class,
                7L,
                boolean.class,
                true,
                Boolean.class,
                true,
                Instant.class,
                Instant.parse("2025-11-12T06:30:00.120Z"),
                LocalDate.class,
                LocalDate.of(2025, 11, 12));
        assertThat(values).containsKey(type);
        return values.get(type);
    }

    private static String text(StatelessSession session, String sql, String value) {
        return session.createNativeQuery(sql, String.class)
                .setParameter("value", value)
                .getSingleResult();
    }
}
