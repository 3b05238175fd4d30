package org.pailbook.records.store;

import java.util.Collections;
import java.util.List;
import org.hibernate.StatelessSession;
import org.hibernate.query.NativeQuery;

/** Finds the stored records of the animals and days of posted ones, each pair looked up in the index of the natural key by itself. */
public final class SameDays {
    private SameDays() {}

    /** Withdrawn ones included. @param posted with animal and day */
    public static <E extends AnimalEvent> List<E> find(
            StatelessSession session, Class<E> kind, HerdRow herd, List<E> posted) {
        // "cross join" keeps SQLite from turning the order round; both databases call the columns of a list of values
        // column1 and column2
        NativeQuery<E> query = session.createNativeQuery(
                "select stored.* from (values "
                        + String.join(", ", Collections.nCopies(posted.size(), "(?, ?)"))
                        + ") as asked cross join "
                        + TableStatistics.tableOf(kind) + " as stored"
                        + " where stored.herd_id = ? and stored.animal_id = asked.column1 and stored.event_date = asked.column2",
                kind);
        int place = 0;
        for (E record : posted) {
            query.setParameter(++place, record.animalId);
            query.setParameter(++place, record.date.toString());
        }
        return query.setParameter(++place, herd.id).getResultList();
    }
}
