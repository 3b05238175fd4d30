package org.pailbook.records.event;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.DryOffRow;
import org.pailbook.records.wire.FindingView;

/** How dry-offs are read, checked and shown. */
@Singleton
public final class DryOffKind extends EventKind<DryOffRow> {
    @Override
    public String name() {
        return "dry-offs";
    }

    @Override
    public Class<DryOffRow> entity() {
        return DryOffRow.class;
    }

    @Override
    protected List<Member<DryOffRow>> members() {
        return List.of();
    }

    @Override
    protected DryOffRow newRecord() {
        return new DryOffRow();
    }

    @Override
    protected void checkDetails(Posted<DryOffRow> posted, DryOffRow replaced, Surroundings surroundings) {
        DryOffRow record = posted.record();
        surroundings
                .departureBefore(record.animalId, record.date)
                .ifPresent(left -> posted.add(FindingView.error(
                                "after-departure", posted.pointer("date"), "lies after the animal left the herd")
                        .seen(record.date.toString())
                        .expecting("at most " + left)));
        if (surroundings.calvingOnOrBefore(record.animalId, record.date).isEmpty()) {
            posted.add(FindingView.warning(
                    "no-calving-before",
                    posted.pointer("date"),
                    "no calving on or before this day is recorded; it ends no lactation"));
        }
        // files of dry-offs often come after those of calvings
        surroundings
                .calvingAfter(record.animalId, record.date)
                .ifPresent(calved -> DryPeriod.check(posted, dayMember(), record.date, calved, null, surroundings));
    }
}
