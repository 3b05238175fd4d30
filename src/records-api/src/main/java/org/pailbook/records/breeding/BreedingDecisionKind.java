package org.pailbook.records.breeding;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.BreedingDecisionRow;

/** How the farm's choices whether to serve a cow are read, checked and shown. */
@Singleton
public final class BreedingDecisionKind extends EventKind<BreedingDecisionRow> {
    private static final List<String> DECISIONS = List.of("doNotBreed", "breedAgain");
    private static final int LONGEST_REASON = 200;

    private static final List<Member<BreedingDecisionRow>> MEMBERS = Members.of(BreedingDecisionRow.class)
            .code("decision", DECISIONS, record -> record.decision, (record, value) -> record.decision = value)
            .needed()
            .text("reason", LONGEST_REASON, record -> record.reason, (record, value) -> record.reason = value)
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

    @Override
    public String name() {
        return "breeding-decisions";
    }

    @Override
    public Class<BreedingDecisionRow> entity() {
        return BreedingDecisionRow.class;
    }

    @Override
    protected List<Member<BreedingDecisionRow>> members() {
        return MEMBERS;
    }

    @Override
    protected BreedingDecisionRow newRecord() {
        return new BreedingDecisionRow();
    }

    @Override
    protected void checkDetails(
            Posted<BreedingDecisionRow> posted, BreedingDecisionRow replaced, Surroundings surroundings) {
        checkPresent(posted, surroundings);
    }
}
