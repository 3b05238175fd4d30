package org.pailbook.records.store;

import org.hibernate.engine.spi.SharedSessionContractImplementor;
import org.hibernate.id.uuid.UuidVersion7Strategy;

/** Ids of our own records: UUID version 7 (RFC 9562), so that new rows go to the end of every index. */
public final class RecordIds {
    private RecordIds() {}

    public static String next() {
        return UuidVersion7Strategy.INSTANCE
                .generateUuid((SharedSessionContractImplementor) null)
                .toString();
    }
}
