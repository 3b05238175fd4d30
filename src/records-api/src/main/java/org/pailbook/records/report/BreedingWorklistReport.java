package org.pailbook.records.report;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.records.computed.BreedingLists;
import org.pailbook.records.computed.BreedingLists.BredLine;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.OrNull;

/** Who is to be served, watched, checked, dried off and expected to calve. */
@ApplicationScoped
class BreedingWorklistReport implements Report<BredLine> {
    private final BreedingLists lists;

    @Inject
    BreedingWorklistReport(BreedingLists lists) {
        this.lists = lists;
    }

    @Override
    public String name() {
        return "breeding-worklist";
    }

    @Override
    public String meaning() {
        return "One cow on one list of the breeding day, list by list; by the herd's settings, else 50 days waiting, checks"
                + " from day 35, 60 days dry. " + String.join(" ", BreedingWorklist.CAUTIONS);
    }

    @Override
    public List<Column<BredLine>> columns() {
        return List.of(
                Column.text(
                        "list",
                        "toBreed, notYetServedLate, watchForReturn, toCheck, recheck, repeatBreeder, dueToDryOff, dueToCalve",
                        line -> line.listed().list().wireName()),
                CowColumns.scheme(line -> line.record().shownIdentifier()),
                CowColumns.id(line -> line.record().shownIdentifier()),
                Column.text(
                        "name", "Name as entered", line -> line.record().name().orElse(null)),
                Column.count(
                        "parity",
                        "",
                        "Number of her calvings; 0 for a heifer",
                        line -> line.listed().cow().now().parity()),
                Column.count(
                        "days_since_calving",
                        "d",
                        "Dry days count on",
                        line -> OrNull.of(line.listed().cow().daysSinceCalving())),
                Column.text(
                        "state",
                        "pregnant, served, open",
                        line -> line.listed().cow().state().name().toLowerCase(Locale.ROOT)),
                Column.date(
                        "last_service_on",
                        "In this lactation",
                        line -> line.listed().cow().now().lastService().map(service -> service.date())),
                Column.date(
                        "date",
                        "Since when she is due for it, or the day it is due",
                        line -> Optional.of(line.listed().day())),
                Column.text(
                        "why",
                        "What on her record put her there",
                        line -> line.listed().why()),
                Column.date(
                        "expected_calving_on",
                        "If it is known since when she is pregnant",
                        line -> line.listed().cow().expectedCalving().map(expected -> expected.due())),
                Column.date(
                        "dry_off_on",
                        "By the days dry of the settings",
                        line -> line.listed()
                                .cow()
                                .expectedCalving()
                                .map(expected -> expected.dryOff(line.settings().dryDays()))),
                Column.text(
                        "caution", "Goes wherever the row goes", line -> String.join(" ", BreedingWorklist.CAUTIONS)),
                Column.text("currency", "ISO 4217, of the value; nothing without prices", BredLine::currency),
                Column.computed(
                        "pregnancy_value",
                        "money",
                        0,
                        "Of her pregnancy over being open; if she took, where she is not checked; of an open cow, of a conception"
                                + " in this month",
                        line -> line.pregnancyValue().map(Figure::value).orElse(OptionalDouble.empty())));
    }

    @Override
    public void rows(HerdRow herd, AsOf asOf, Consumer<BredLine> each) {
        lists.on(herd, asOf.day()).lines().forEach(each);
    }

    @Override
    public List<Finding> findings(BredLine line) {
        return line.listed().cow().findings();
    }
}
