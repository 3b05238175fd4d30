package org.pailbook.records.breeding;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.BreedingDecisionRow;
import org.pailbook.records.wire.Fields;

/** How the farm's choices whether to serve a cow are read, checked and shown. */
@Singleton
public final class BreedingDecisionKind extends EventKind<BreedingDecisionRow> {
    private static final List<String> DECISIONS = List.of("doNotBreed", "breedAgain");
    private static final int LONGEST_REASON = 200;

    @Override
    public String name() {
        return "breeding-decisions";
    }

    @Override
    public Class<BreedingDecisionRow> entity() {
        return BreedingDecisionRow.class;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("decision", "decision"), Column.text("reason", "reason"), Column.text("note", "note"));
    }

    @Override
    protected BreedingDecisionRow newRecord() {
        return new BreedingDecisionRow();
    }

    @Override
    protected void readDetails(Fields fields, BreedingDecisionRow record) {
        fields.require("decision");
        record.decision = fields.code("decision", DECISIONS);
        record.reason = fields.text("reason", LONGEST_REASON);
        record.note = fields.text("note", 4000);
    }

    @Override
    protected void writeDetails(BreedingDecisionRow record, ObjectNode content) {
        put(content, "decision", record.decision);
        put(content, "reason", record.reason);
        put(content, "note", record.note);
    }

    @Override
    protected void checkDetails(
            Posted<BreedingDecisionRow> posted, BreedingDecisionRow replaced, Surroundings surroundings) {
        checkPresent(posted, surroundings);
    }
}
