package org.pailbook.records.event;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.intake.Surroundings;
import org.pailbook.records.store.DepartureRow;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How departures are read, checked and shown. */
@Singleton
public final class DepartureKind extends EventKind<DepartureRow> {
    static final List<String> KINDS = List.of("sale", "slaughter", "death", "cullOnFarm", "transfer", "other");
    private static final int LONGEST_REASON = 60;
    private static final int LONGEST_NOTE = 4000;

    @Override
    public String name() {
        return "departures";
    }

    @Override
    public Class<DepartureRow> entity() {
        return DepartureRow.class;
    }

    @Override
    protected List<Column> detailColumns() {
        return List.of(
                Column.text("kind", "kind"),
                Column.text("reason", "reason"),
                Column.text("note", "note"),
                Column.text("returned_on", "returnedOn"));
    }

    @Override
    protected DepartureRow newRecord() {
        return new DepartureRow();
    }

    @Override
    protected void readDetails(Fields fields, DepartureRow record) {
        fields.require("kind");
        record.kind = fields.code("kind", KINDS);
        record.reason = fields.text("reason", LONGEST_REASON);
        record.note = fields.text("note", LONGEST_NOTE);
        record.returnedOn = fields.date("returnedOn");
    }

    @Override
    protected void writeDetails(DepartureRow record, ObjectNode content) {
        content.put("kind", record.kind);
        if (record.reason != null) {
            content.put("reason", record.reason);
        }
        if (record.note != null) {
            content.put("note", record.note);
        }
        put(content, "returnedOn", record.returnedOn);
    }

    @Override
    protected void checkDetails(Posted<DepartureRow> posted, DepartureRow replaced, Surroundings surroundings) {
        DepartureRow record = posted.record();
        String replacedId = replaced == null ? null : replaced.id;
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
        surroundings.noteReturn(record.animalId, record.date, record.returnedOn);
        surroundings.noteDeparture(record.animalId, record.date, replacedId);
    }
}
