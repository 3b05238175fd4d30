package org.pailbook.records.intake;

import java.util.function.Supplier;
import org.hibernate.StatelessSession;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.records.store.HerdLimits;
import org.pailbook.records.store.HerdRow;

/** A herd's limits, read when the first row of a chunk needs them: nearly none does. */
final class LimitsOnDemand implements Supplier<DatedLimits> {
    private final StatelessSession session;
    private final HerdRow herd;
    private DatedLimits read;

    LimitsOnDemand(StatelessSession session, HerdRow herd) {
        this.session = session;
        this.herd = herd;
    }

    @Override
    public DatedLimits get() {
        if (read == null) {
            read = HerdLimits.current(session, herd);
        }
        return read;
    }
}
