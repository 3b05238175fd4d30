package org.pailbook.records.store;

import java.util.UUID;
import org.hibernate.engine.spi.SharedSessionContractImplementor;
import org.hibernate.id.uuid.UuidVersion7Strategy;

/** Ids of our own records: UUID version 7 (RFC 9562), so that new rows go to the end of every index. */
public final class RecordIds {
    private RecordIds() {}

    /** Whether a text could be such an id; nothing else is worth a query. */
    public static boolean isId(String text) {
        try {
            return UUID.fromString(text).toString().equals(text);
        } catch (IllegalArgumentException no) {
            return false;
        }
    }

    public static String next() {
        return UuidVersion7Strategy.INSTANCE
                .generateUuid((SharedSessionContractImplementor) null)
                .toString();
    }
}
