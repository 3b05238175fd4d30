package org.pailbook.records.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.hibernate.StatelessSession;
import org.hibernate.engine.spi.SessionFactoryImplementor;
import org.hibernate.metamodel.mapping.BasicEntityIdentifierMapping;
import org.hibernate.metamodel.mapping.BasicValuedModelPart;
import org.hibernate.metamodel.mapping.JdbcMapping;
import org.hibernate.persister.entity.EntityPersister;
import org.hibernate.property.access.spi.Getter;
import org.hibernate.type.descriptor.ValueBinder;
import org.hibernate.type.descriptor.WrapperOptions;

/**
 * Writes many new records of one kind by one batched statement. Columns, conversions and binding are those Hibernate has for the entity, so the
 * rows are the ones {@code insertMultiple} would write; only its bookkeeping for each single row is left out, half the time of a large
 * table. {@code src/benchmarks/bulk.sh} measures it.
 */
public final class NewRows {
    private static final Map<Class<?>, NewRows> BY_KIND = new ConcurrentHashMap<>();

    /** One column: where its value is, and how Hibernate turns it into what the database takes. */
    private record Column(String name, Getter getter, JdbcMapping mapping, ValueBinder<Object> binder) {
        @SuppressWarnings("unchecked") // the binder of a mapping takes what the mapping converts to
        static Column of(BasicValuedModelPart part, Getter getter) {
            JdbcMapping mapping = part.getJdbcMapping();
            return new Column(
                    part.getSelectionExpression(), getter, mapping, (ValueBinder<Object>) mapping.getJdbcValueBinder());
        }
    }

    private final SessionFactoryImplementor factory;
    private final Column[] columns;
    private final String sql;

    private NewRows(SessionFactoryImplementor factory, Class<?> kind) {
        this.factory = factory;
        EntityPersister entity = factory.getMappingMetamodel().getEntityDescriptor(kind);
        List<Column> all = new ArrayList<>();
        BasicEntityIdentifierMapping id = (BasicEntityIdentifierMapping) entity.getIdentifierMapping();
        all.add(Column.of(id, id.getPropertyAccess().getGetter()));
        entity.getAttributeMappings()
                .forEach(attribute -> all.add(Column.of(
                        (BasicValuedModelPart) attribute,
                        attribute.getPropertyAccess().getGetter())));
        this.columns = all.toArray(Column[]::new);
        this.sql = "insert into " + entity.getMappedTableDetails().getTableName() + " ("
                + String.join(", ", all.stream().map(Column::name).toList()) + ") values ("
                + String.join(", ", Collections.nCopies(columns.length, "?")) + ")";
    }

    /** Inserts records that are complete, their ids included, in order. */
    public static <E extends StoredRecord> void insert(StatelessSession session, Class<E> kind, List<E> records) {
        if (records.isEmpty()) {
            return;
        }
        SessionFactoryImplementor factory = session.getFactory().unwrap(SessionFactoryImplementor.class);
        // a test starts the service again, with another factory
        NewRows rows = BY_KIND.compute(
                kind, (any, known) -> known != null && known.factory == factory ? known : new NewRows(factory, kind));
        session.doWork(connection -> {
            try (PreparedStatement statement = connection.prepareStatement(rows.sql)) {
                rows.insert(statement, records);
            }
        });
    }

    private void insert(PreparedStatement statement, List<?> records) throws SQLException {
        WrapperOptions options = factory.getWrapperOptions();
        // a chunk has one instant, one herd and few days: what was converted last is mostly wanted again
        Object[] last = new Object[columns.length];
        Object[] converted = new Object[columns.length];
        for (Object record : records) {
            for (int i = 0; i < columns.length; i++) {
                Object value = columns[i].getter.get(record);
                if (!Objects.equals(value, last[i])) {
                    last[i] = value;
                    converted[i] = columns[i].mapping.convertToRelationalValue(value);
                }
                columns[i].binder.bind(statement, converted[i], i + 1, options);
            }
            statement.addBatch();
        }
        statement.executeBatch();
    }
}
