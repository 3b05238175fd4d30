package org.pailbook.records.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.lactation.testday.ValueLimits;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.StoredRecord;
import org.pailbook.records.wire.FindingView;

/** A posted row on its way in: its record, the animal it names, and what was found so far. */
public final class Posted<E extends StoredRecord> {
    final PostedRow row;
    final E record;
    final AnimalReference animal;
    final String pointer;
    private final List<FindingView> findings;
    private Supplier<DatedLimits> limits = () -> DatedLimits.PUBLISHED;
    private Integer daysInMilk;
    private boolean whole;
    private boolean refused;

    Posted(PostedRow row, E record, AnimalReference animal, List<FindingView> findings) {
        this.row = row;
        this.record = record;
        this.animal = animal;
        this.pointer = row.pointer();
        this.findings = new ArrayList<>();
        findings.forEach(this::add);
    }

    /** The record as posted, not stored yet. */
    public E record() {
        return record;
    }

    /** Pointer to the record itself; empty, as RFC 6901 has it, for a body that is one record. */
    public String pointer() {
        return pointer;
    }

    /** Pointer to one of its members. */
    public String pointer(String member) {
        return pointer + "/" + member;
    }

    public void add(FindingView finding) {
        findings.add(finding);
        refused |= finding.isError();
    }

    /** The limits that hold on the record's day, the herd's own where it set any; asked for only where those shipped would warn. */
    public ValueLimits limits() {
        return record instanceof DatedRecord dated && dated.date != null
                ? limits.get().on(dated.date)
                : ValueLimits.PUBLISHED;
    }

    void heldAgainst(Supplier<DatedLimits> herdLimits) {
        limits = herdLimits;
    }

    /** Notes in which day of a lactation the record lies. */
    public void inLactationDay(int day) {
        daysInMilk = day;
    }

    /** Whether the record replaces a known one as a whole, so that what it does not name is thereby taken away. */
    public boolean isWhole() {
        return whole;
    }

    Posted<E> asWhole() {
        whole = true;
        return this;
    }

    Integer daysInMilk() {
        return daysInMilk;
    }

    List<FindingView> findings() {
        return findings;
    }

    boolean isRefused() {
        return refused;
    }
}
