package org.pailbook.records.event;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Objects;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.wire.FindingView;

/** How departures are read, checked and shown. */
@Singleton
public final class DepartureKind extends EventKind<DepartureRow> {
    static final List<String> KINDS = List.of("sale", "slaughter", "death", "cullOnFarm", "transfer", "other");
    private static final int LONGEST_REASON = 60;

    private static final List<Member<DepartureRow>> MEMBERS = Members.of(DepartureRow.class)
            .code("kind", KINDS, record -> record.kind, (record, value) -> record.kind = value)
            .needed()
            .text("reason", LONGEST_REASON, record -> record.reason, (record, value) -> record.reason = value)
            .text(
                    "secondReason",
                    LONGEST_REASON,
                    record -> record.secondReason,
                    (record, value) -> record.secondReason = value)
            .text(
                    "thirdReason",
                    LONGEST_REASON,
                    record -> record.thirdReason,
                    (record, value) -> record.thirdReason = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .date("returnedOn", record -> record.returnedOn, (record, value) -> record.returnedOn = value)
            .list();

    @Override
    public String name() {
        return "departures";
    }

    @Override
    public Class<DepartureRow> entity() {
        return DepartureRow.class;
    }

    @Override
    protected List<Member<DepartureRow>> members() {
        return MEMBERS;
    }

    @Override
    protected DepartureRow newRecord() {
        return new DepartureRow();
    }

    @Override
    protected void checkDetails(Posted<DepartureRow> posted, DepartureRow replaced, Surroundings surroundings) {
        DepartureRow record = posted.record();
        surroundings
                .departureBefore(record.animalId, record.date)
                .filter(left -> replaced == null || !left.equals(replaced.date))
                .ifPresent(left -> posted.add(FindingView.error(
                                "departed-already",
                                posted.pointer("date"),
                                "the animal left before and did not come back")
                        .seen(record.date.toString())
                        .expecting("one departure for each stay; the earlier one is on " + left)));
        if (record.returnedOn != null && record.returnedOn.isBefore(record.date)) {
            posted.add(FindingView.error(
                            "return-before-departure", posted.pointer("returnedOn"), "lies before the day she left")
                    .seen(record.returnedOn.toString())
                    .expecting("at least " + record.date));
        }
        checkReasons(posted);
    }

    @Override
    protected void noteTaken(DepartureRow taken, DepartureRow replaced, Surroundings surroundings) {
        surroundings.noteReturn(taken.animalId, taken.date, taken.returnedOn);
        surroundings.noteDeparture(taken.animalId, taken.date, replaced == null ? null : replaced.id);
    }

    /** One after the other, and each once. */
    private static void checkReasons(Posted<DepartureRow> posted) {
        DepartureRow record = posted.record();
        if (record.reason == null && record.secondReason != null
                || record.secondReason == null && record.thirdReason != null) {
            posted.add(FindingView.error(
                    "reason-missing",
                    posted.pointer(
                            record.thirdReason != null && record.secondReason == null ? "thirdReason" : "secondReason"),
                    "is given without the reason before it; the first one is the one that counts"));
        }
        if (record.reasons().stream().distinct().count() < record.reasons().size()) {
            posted.add(FindingView.error(
                            "reason-repeated",
                            posted.pointer(
                                    Objects.equals(record.reason, record.secondReason)
                                            ? "secondReason"
                                            : "thirdReason"),
                            "is given twice")
                    .expecting("each reason once"));
        }
    }

    @Override
    protected boolean isOfFemales() {
        return false;
    }
}
