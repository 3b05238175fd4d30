package org.pailbook.records.computed;

import java.util.List;
import java.util.stream.Stream;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;

/**
 * An animal as recorded, and as she was on a day by what her herd teaches.
 *
 * @param animal as posted
 * @param record the same with her events up to the day
 * @param onDay what is computed of her
 */
public record KnownCow(AnimalRow animal, CowRecord record, CowOnDay onDay) {
    /** The identifier by which she is shown. */
    public AnimalIdentifier identifier() {
        return record.shownIdentifier();
    }

    /** Her name; empty text without one. */
    public String name() {
        return record.name().orElse("");
    }

    /** Everything found in her records: what concerns no single lactation first, then lactation by lactation. */
    public List<Finding> findings() {
        return Stream.concat(
                        onDay.lactations().findings().stream(),
                        onDay.lactations().lactations().stream().flatMap(assembled -> assembled.findings().stream()))
                .toList();
    }
}
