package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.records.computed.HerdCows;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** What the records of the cows lack or contradict. */
@ApplicationScoped
class FindingsReport implements Report<FindingsReport.Row> {
    private final HerdCows cows;

    @Inject
    FindingsReport(HerdCows cows) {
        this.cows = cows;
    }

    record Row(KnownCow cow, Finding finding) {}

    @Override
    public String name() {
        return "findings";
    }

    @Override
    public String meaning() {
        return "One thing found in the records of one cow; cow by cow";
    }

    @Override
    public List<Column<Row>> columns() {
        return List.of(
                CowColumns.scheme(row -> row.cow().identifier()),
                CowColumns.id(row -> row.cow().identifier()),
                CowColumns.name(Row::cow),
                Column.date(
                        "date",
                        "The day it is about, if it is about one",
                        row -> row.finding().date()),
                Column.text(
                        "code",
                        "What was found; never changes its meaning",
                        row -> row.finding().code().code()),
                Column.text(
                        "effect",
                        "blocks: no figure; weakens: a figure, but read this; notes: good to know",
                        row -> row.finding().severity().name().toLowerCase(Locale.ROOT)),
                Column.text(
                        "meaning",
                        "The same in words",
                        row -> row.finding().code().meaning()),
                Column.text("field", "Which entry", row -> row.finding().field().orElse(null)),
                Column.text(
                        "seen", "What stands there", row -> row.finding().seen().orElse(null)),
                Column.text(
                        "expected",
                        "What was expected",
                        row -> row.finding().expected().orElse(null)));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<Row> each) {
        List<KnownCow> all = new ArrayList<>();
        cows.each(herd, asOf.day(), cow -> {
            cow.findings().forEach(finding -> each.accept(new Row(cow, finding)));
            all.add(cow);
        });
        // what only shows beside other cows, after the rest
        HerdOnDay.of(all.stream().map(KnownCow::onDay).toList(), asOf.day())
                .lastTestDay()
                .ifPresent(test -> all.forEach(
                        cow -> test.ofCow(cow.record().id()).ifPresent(finding -> each.accept(new Row(cow, finding)))));
    }
}
