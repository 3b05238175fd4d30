package org.pailbook.records.tank;

import jakarta.inject.Singleton;
import java.util.List;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.Member;
import org.pailbook.records.intake.Members;
import org.pailbook.records.intake.Posted;
import org.pailbook.records.store.MilkUseRow;

/** How uses of milk are read, checked and shown. */
@Singleton
public final class MilkUseKind extends HerdRecordKind<MilkUseRow> {
    private static final List<String> PURPOSE_CODES =
            List.of("calves", "household", "cheese", "directSale", "discarded", "other");

    private static final List<Member<MilkUseRow>> MEMBERS = Members.of(MilkUseRow.class)
            .code("purpose", PURPOSE_CODES, record -> record.purpose, (record, value) -> record.purpose = value)
            .needed()
            .number("milkKg", record -> record.milkKg, (record, value) -> record.milkKg = value)
            .needed()
            .within("milkUse.milkKg")
            .note(record -> record.note, (record, value) -> record.note = value)
            .list();

    @Override
    public String name() {
        return "milk-uses";
    }

    @Override
    public Class<MilkUseRow> entity() {
        return MilkUseRow.class;
    }

    @Override
    protected Object keyBesides(MilkUseRow record) {
        return record.purpose;
    }

    @Override
    protected List<Member<MilkUseRow>> members() {
        return MEMBERS;
    }

    @Override
    protected MilkUseRow newRecord() {
        return new MilkUseRow();
    }

    @Override
    protected void checkDetails(Posted<MilkUseRow> posted, MilkUseRow replaced) {
        checkLimits(posted);
    }
}
